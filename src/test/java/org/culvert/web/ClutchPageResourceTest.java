package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.hamcrest.Matchers.containsString;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import org.culvert.care.incubation.LoggerFiles;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A clutch on a page: the sum, the temperatures drawn, and what happened. */
@QuarkusTest
class ClutchPageResourceTest {
    private static final Instant SET = Instant.parse("2025-11-21T02:00:00Z");
    private static final Pattern POINT = Pattern.compile("[ML](-?\\d+(?:\\.\\d)?) (-?\\d+(?:\\.\\d)?)");

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private String clutch() {
        String incident = World.call("Chelodina longicollis", 150.03, "").getString("incidentId");
        String mother = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","foundAt":"2025-11-20T08:00:00Z",
                         "animal":{"scientificName":"Chelodina longicollis"},"holder":{"memberId":"%s"}}
                        """.formatted(incident, world.rescuer))
                .getString("id");
        return Api.make(COORDINATOR, "/api/clutches", """
                        {"motherCaseId":"%s","holder":{"memberId":"%s"},
                         "eggs":{"recovered":9,"setToIncubate":7,"broken":1,"discarded":1,"how":"surgery","at":"%s"}}
                        """.formatted(mother, world.incubatorKeeper, SET))
                .getString("id");
    }

    private static String page(String id) {
        return Api.as(CARER)
                .get("/clutches/" + id)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString()
                .replaceAll("\\s+", " ");
    }

    @Test
    void theSumTheDaysAndWhatHappenedAreSaid() {
        String id = clutch();
        Api.make(CARER, "/api/clutches/" + id + "/set-ups", """
                {"medium":"vermiculite","waterParts":1,"mediumParts":1.5,"box":"box 3","topMarked":"no","setUpBy":"A <b>Carer</b>",
                 "at":"2025-11-21T04:00:00Z"}
                """);
        Api.make(CARER, "/api/clutches/" + id + "/failed-eggs", """
                {"failed":2,"grounds":"collapsed","saidBy":"A Carer","words":"dented","at":"2026-01-05T04:00:00Z"}
                """);
        Api.make(CARER, "/api/clutches/" + id + "/hatchings", "{\"hatched\":4,\"at\":\"2026-01-28T02:00:00Z\"}");
        String page = page(id);
        assertThat(page)
                .contains(
                        "still incubating</th><td class=\"number\">1</td>",
                        "failed, as somebody said</th><td class=\"number\">2</td>",
                        "They may hatch from 20 Jan 2026 to 9 Feb 2026.",
                        "water to medium 1 : 1.5 by weight",
                        "the upper sides are not marked",
                        "Never turn an egg",
                        "Wash your hands",
                        "Check your local code; ask your licensed vet",
                        "2 failed, said A Carer: collapsed: “dented”",
                        "A &lt;b&gt;Carer&lt;/b&gt;",
                        "No temperature is recorded since the eggs were set.",
                        "Sex chromosomes")
                .doesNotContain("A <b>", "NaN", "Infinity", "NOT_FOUND");
    }

    /** The line lies inside of its frame, reaches as high and as low as the readings, and breaks where none were read. */
    @Test
    void theLineShowsTheHighestTheLowestAndTheGap() {
        String id = clutch();
        String warm = LoggerFiles.file(SET, 20_000, Duration.ofMinutes(1))
                + LoggerFiles.file(SET.plus(Duration.ofDays(20)), 100, Duration.ofMinutes(1))
                        .replaceFirst("^.*\\n", "")
                        .replaceFirst(",28.4\\n", ",33.3\n")
                        .replaceFirst(",28.6\\n", ",24.7\n");
        Api.as(CARER)
                .contentType("text/csv")
                .body(warm.getBytes(StandardCharsets.UTF_8))
                .post("/api/clutches/" + id + "/temperature-files?source=logger")
                .then()
                .statusCode(201);
        String page = page(id);
        String path = page.replaceAll("(?s).*<path d=\"([^\"]*)\" class=\"line\">.*", "$1");
        List<MatchResult> points = POINT.matcher(path).results().toList();
        assertThat(points.size()).as("at most a few points a column").isBetween(50, 1600);
        assertThat(points)
                .allSatisfy(
                        point -> assertThat(Double.parseDouble(point.group(1))).isBetween(33.0, 394.0))
                .allSatisfy(
                        point -> assertThat(Double.parseDouble(point.group(2))).isBetween(26.0, 196.0));
        assertThat(path.chars().filter(c -> c == 'M').count()).isEqualTo(2);
        // From 24 to 34 °C the frame is 170 high, so that a degree is 17 of its 170
        assertThat(heights(points).min().orElseThrow()).isCloseTo(196 - 17 * (33.3 - 24), within(0.06));
        assertThat(heights(points).max().orElseThrow()).isCloseTo(196 - 17 * (24.7 - 24), within(0.06));
        assertThat(page).contains("from 24.7 to 33.3 °C");
    }

    private static DoubleStream heights(List<MatchResult> points) {
        return points.stream().mapToDouble(point -> Double.parseDouble(point.group(2)));
    }

    private static Answer send(String role, String path, Map<String, String> fields) {
        String secret = Api.as(role).get("/account").cookie("culvert-form");
        return Api.as(role)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParam("key", UUID.randomUUID().toString())
                .formParams(fields)
                .post(path)
                .then();
    }

    @Test
    void whatIsDoneIsEnteredAndWhatIsWrongStandsBesideItsField() {
        String id = clutch();
        String path = "/clutches/" + id;
        assertThat(page(id)).contains("No temperature of the substrate is recorded: read one.");
        send(CARER, path, Map.of("what", "temperature", "celsius", "28,5", "source", "box thermometer, A"))
                .statusCode(303)
                .header("Location", containsString(path + "#due"));
        send(
                        CARER,
                        path,
                        Map.of(
                                "what",
                                "candling",
                                "developing",
                                "7",
                                "notDeveloping",
                                "1",
                                "cannotTell",
                                "0",
                                "candledBy",
                                "A"))
                .statusCode(400)
                .body(containsString("id=\"candling-developing-wrong\""))
                .body(containsString("<details class=\"act\" id=\"act-candling\" open>"));
        send(
                        CARER,
                        path,
                        Map.of(
                                "what",
                                "candling",
                                "developing",
                                "six",
                                "notDeveloping",
                                "1",
                                "cannotTell",
                                "0",
                                "candledBy",
                                "A"))
                .statusCode(400)
                .body(containsString("This cannot be read: six."))
                .body(containsString("value=\"six\""));
        send(
                        CARER,
                        path,
                        Map.of(
                                "what",
                                "candling",
                                "developing",
                                "6",
                                "notDeveloping",
                                "1",
                                "cannotTell",
                                "0",
                                "candledBy",
                                "A"))
                .statusCode(303);
        send(CARER, path, Map.of("what", "failedEggs", "failed", "2", "grounds", "mouldy", "saidBy", "A"))
                .statusCode(303);
        send(CARER, path, Map.of("what", "hatching", "hatched", "3")).statusCode(303);
        send(COORDINATOR, path, Map.of("what", "handOver", "callSign", "nobody at all"))
                .statusCode(400)
                .body(containsString("id=\"handOver-callSign-wrong\""));
        Json told = Api.get(CARER, "/api/clutches/" + id);
        assertThat(told.getInt("stillIncubating")).isEqualTo(2);
        assertThat(told.getDouble("temperatures[0].lowestCelsius")).isEqualTo(28.5);
        String failed = told.getString("failures[0].id");
        send(CARER, path, Map.of("what", "withdrawal", "entryId", failed, "reason", "they were only dusty"))
                .statusCode(303);
        assertThat(page(id))
                .contains("still incubating</th><td class=\"number\">4</td>", "Taken back: they were only dusty")
                .contains("6 developing, 1 without visible development");
        send(OFFICER, path, Map.of("what", "temperature", "celsius", "28")).statusCode(403);
        assertThat(Api.as(OFFICER).get(path).then().statusCode(200).extract().asString())
                .doesNotContain("<form method=\"post\" action=\"/clutches");
    }

    @Test
    void allThatIsWrongIsSaidAtOnce() {
        String path = "/clutches/" + clutch();
        String refused = send(
                        CARER,
                        path,
                        Map.of(
                                "what", "candling",
                                "developing", "six",
                                "notDeveloping", "2000",
                                "candledBy", "x".repeat(201),
                                "words", "x".repeat(2001),
                                "at", "yesterday"))
                .statusCode(400)
                .extract()
                .asString();
        for (String field : List.of("developing", "notDeveloping", "cannotTell", "candledBy", "words", "at")) {
            assertThat(refused).contains("id=\"candling-" + field + "-wrong\"", "<a href=\"#candling-" + field + "\">");
        }
        assertThat(refused).containsOnlyOnce("Never turn an egg while you hold a light to it.");
        assertThat(send(CARER, path, Map.of("what", "handOver", "callSign", "nobody at all", "at", "yesterday"))
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("id=\"handOver-callSign-wrong\"", "id=\"handOver-at-wrong\"");
        assertThat(send(CARER, path, Map.of("what", "withdrawal", "reason", "x".repeat(2001)))
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("id=\"withdrawal-entryId-wrong\"", "id=\"withdrawal-reason-wrong\"");
        String opening = send(
                        COORDINATOR,
                        "/clutches",
                        Map.of(
                                "motherCase", "999999999",
                                "eggs.recovered", "some",
                                "eggs.setToIncubate", "1",
                                "eggs.broken", "0",
                                "eggs.discarded", "0",
                                "callSign", "nobody at all"))
                .statusCode(400)
                .extract()
                .asString();
        for (String field : List.of("motherCase", "eggs-recovered", "eggs-how", "callSign")) {
            assertThat(opening).contains("id=\"new-" + field + "-wrong\"", "<a href=\"#new-" + field + "\">");
        }
    }

    @Test
    void aClutchIsOpenedFromTheCaseOfItsMotherAndListed() {
        String incident = World.call("Chelodina longicollis", 150.03, "").getString("incidentId");
        Json mother = Api.make(COORDINATOR, "/api/cases", """
                {"incidentId":"%s","foundAt":"2025-11-20T08:00:00Z",
                 "animal":{"scientificName":"Chelodina longicollis"},"holder":{"memberId":"%s"}}
                """.formatted(incident, world.rescuer));
        String keeper =
                Api.get(COORDINATOR, "/api/members/" + world.incubatorKeeper).getString("callSign");
        Map<String, String> fields = new HashMap<>(Map.of(
                "motherCase", mother.getString("number"),
                "eggs.recovered", "5",
                "eggs.setToIncubate", "4",
                "eggs.broken", "0",
                "eggs.discarded", "0",
                "eggs.how", "afterDeath",
                "callSign", keeper));
        String elsewhere = Api.make(ADMIN, "/api/organisations", """
                        {"kind":"clinic","name":"Clinic %s","xRay":false,"surgery":false}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        String visit = Api.make(COORDINATOR, "/api/visits", """
                        {"caseId":"%s","clinicId":"%s","arrivedAt":"2025-11-20T09:00:00Z"}
                        """.formatted(mother.getString("id"), elsewhere))
                .getString("id");
        String number = mother.getString("number");
        assertThat(Api.as(COORDINATOR).get("/cases/" + mother.getString("id")).asString())
                .contains("/clutches?case=" + number + "#act-new");
        assertThat(Api.as(COORDINATOR).get("/clutches").asString()).doesNotContain("name=\"visitId\"");
        assertThat(Api.as(COORDINATOR).get("/clutches?case=" + number).asString())
                .contains("At which visit they came", "<option value=\"" + visit + "\">");
        fields.put("visitId", visit);
        send(COORDINATOR, "/clutches", fields)
                .statusCode(400)
                .body(containsString("<option value=\"" + visit + "\" selected>"))
                .body(containsString("do not add up"))
                .body(containsString("id=\"new-eggs-recovered-wrong\""));
        fields.put("eggs.broken", "1");
        String to =
                send(COORDINATOR, "/clutches", fields).statusCode(303).extract().header("Location");
        String id = to.substring(to.lastIndexOf('/') + 1);
        assertThat(Api.get(COORDINATOR, "/api/clutches/" + id).getInt("setToIncubate"))
                .isEqualTo(4);
        assertThat(Api.get(COORDINATOR, "/api/clutches/" + id).getString("visitId"))
                .isEqualTo(visit);
        assertThat(Api.as(COORDINATOR)
                        .get("/clutches")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .contains("href=\"/clutches/" + id + "\"", "No temperature of the substrate is recorded");
        // The clinic of this world never had the mother
        assertThat(Api.as(CLINIC)
                        .get("/clutches")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .doesNotContain(id);
        send(CARER, "/clutches", fields).statusCode(403);
        Api.as(DISPATCHER).get("/clutches").then().statusCode(403);
        assertThat(Api.as(CARER)
                        .header("Accept-Language", "de")
                        .get("/clutches/" + id)
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .contains("noch im Brutschrank", "Durchleuchten");
    }

    @Test
    void whoSeesTheRecordSeesThePage() {
        String id = clutch();
        for (String role : List.of(COORDINATOR, CARER, OFFICER)) {
            Api.as(role).get("/clutches/" + id).then().statusCode(200);
        }
        Api.as(DISPATCHER).get("/clutches/" + id).then().statusCode(403);
        // The clinic of this world never had the mother
        Api.as(CLINIC).get("/clutches/" + id).then().statusCode(404);
        Api.as(CARER).get("/clutches/no-identifier").then().statusCode(400);
    }
}
