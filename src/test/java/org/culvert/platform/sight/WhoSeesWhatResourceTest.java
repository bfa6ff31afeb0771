package org.culvert.platform.sight;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Predicate;
import org.culvert.platform.Role;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Walks every operation of the contract in every role, and every field of what is answered. */
@QuarkusTest
class WhoSeesWhatResourceTest {
    private static final SightTable TABLE = SightTable.load();
    private static final ObjectMapper JSON = new ObjectMapper();

    /** Road evidence is for everybody only where the network opens it: without that nobody else gets it. */
    @BeforeAll
    static void openRoadEvidence() {
        disclose(true);
    }

    @AfterAll
    static void closeRoadEvidence() {
        disclose(false);
    }

    private static void disclose(boolean hotspots) {
        Api.as(Role.ADMIN)
                .header("If-Match", Api.tag(Role.ADMIN, "/api/disclosure-settings"))
                .body("{\"smallestCount\":5,\"publicDelayDays\":30,\"publicHotspots\":%s,\"source\":\"for a test\"}"
                        .formatted(hotspots))
                .put("/api/disclosure-settings")
                .then()
                .statusCode(200);
    }

    @Test
    void everyOperationAnswersEveryRoleAsTheTableSays() throws IOException {
        Map<String, Method> methods = Outgoing.operations();
        Map<String, String> known = WalkedWorld.identifiers();
        List<String> roles = new ArrayList<>(Role.ALL);
        roles.add(SightTable.PUBLIC);
        var walk = new FieldWalk(TABLE);
        List<String> wrong = new ArrayList<>();
        int asked = 0;
        JsonNode contract = JSON.readTree(Files.readString(Path.of("openapi/culvert.json")));
        List<String> operations = operations(contract, operation -> true);
        List<String> inParts = operations(
                contract,
                operation -> operation.path("requestBody").path("content").has("multipart/form-data"));
        List<String> inPages = operations(contract, WhoSeesWhatResourceTest::isInPages);
        for (String operation : operations) {
            if (!TABLE.operations().contains(operation)) {
                wrong.add(operation + " has no row");
                continue;
            }
            Method method = methods.get(operation);
            assertThat(method).as("a method behind %s", operation).isNotNull();
            boolean told = false;
            for (String role : roles) {
                // A file takes long to write, and its fields are those of the JSON beside it
                if (told && TABLE.rolesOf(operation).contains(role)) {
                    continue;
                }
                Answer response = ask(operation, role, known, inParts.contains(operation), inPages.contains(operation));
                asked++;
                wrong.addAll(judge(operation, role, response));
                String type = response.contentType();
                told |= response.statusCode() == 200 && !type.contains("json") && !type.contains("html");
                if (response.statusCode() == 200 && operation.startsWith("GET") && type.contains("json")) {
                    JsonNode body = JSON.readTree(response.asByteArray());
                    wrong.addAll(walk.walk(body, Outgoing.answer(method), role, operation));
                }
            }
        }
        System.getLogger(WhoSeesWhatResourceTest.class.getName())
                .log(
                        System.Logger.Level.INFO,
                        "walked {0} operations × {1} roles = {2} requests; {3} fields looked at, {4} kinds of field",
                        operations.size(),
                        roles.size(),
                        asked,
                        walk.looked(),
                        walk.kinds());
        assertThat(wrong).isEmpty();
        assertThat(walk.kinds()).as("kinds of field that were met").isGreaterThan(150);
    }

    private static List<String> judge(String operation, String role, Answer response) {
        int status = response.statusCode();
        boolean may = TABLE.rolesOf(operation).contains(role);
        // A form that was not on a page of ours is refused to everybody, whoever may send it.
        boolean forged = status == 403 && response.asString().contains("/problems/forged");
        boolean refused = (status == 401 || status == 403) && !forged;
        if (may == refused) {
            return List.of(operation + " as " + role + ": " + status + ", but the table says " + (may ? "yes" : "–"));
        }
        if (!may && status != (role.equals(SightTable.PUBLIC) ? 401 : 403)) {
            return List.of(operation + " as " + role + ": " + status);
        }
        return status >= 500 ? List.of(operation + " as " + role + ": " + status) : List.of();
    }

    private static List<String> operations(JsonNode contract, Predicate<JsonNode> which) {
        List<String> operations = new ArrayList<>();
        contract.get("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(verb -> {
                    if (which.test(verb.getValue())) {
                        operations.add(verb.getKey().toUpperCase(Locale.ROOT) + " " + path.getKey());
                    }
                }));
        return operations;
    }

    private static boolean isInPages(JsonNode operation) {
        return operation.path("parameters").findValuesAsText("name").contains("limit");
    }

    /** A body that no operation can read: who may not call it must be told so before anybody reads it. */
    private static Answer ask(
            String operation, String role, Map<String, String> known, boolean inParts, boolean inPages) {
        String verb = operation.substring(0, operation.indexOf(' '));
        String path = filled(operation.substring(operation.indexOf(' ') + 1), known);
        Request request = role.equals(SightTable.PUBLIC) ? Request.given() : Api.as(role);
        request.withoutRedirects();
        if (verb.equals("GET")) {
            return request.get(inPages ? path + "?limit=20" : path);
        }
        request.header("Idempotency-Key", UUID.randomUUID().toString()).header("If-Match", "\"none\"");
        if (inParts) {
            return request.contentType("multipart/form-data; boundary=none")
                    .body("--none--\r\n")
                    .request(verb, path);
        }
        return path.startsWith("/api")
                ? request.contentType(
                                path.endsWith("/temperature-files") || path.endsWith("/record-files")
                                        ? "text/csv"
                                        : "application/json")
                        .body("[")
                        .request(verb, path)
                : request.contentType("application/x-www-form-urlencoded").request(verb, path);
    }

    private static String filled(String path, Map<String, String> known) {
        String filled = path;
        for (Map.Entry<String, String> entry :
                new TreeMap<>(known).descendingMap().entrySet()) {
            if (path.startsWith(entry.getKey())) {
                filled = filled.replaceFirst("\\{\\w+}", entry.getValue());
                break;
            }
        }
        return filled.replaceAll("\\{\\w+}", UUID.randomUUID().toString());
    }
}
