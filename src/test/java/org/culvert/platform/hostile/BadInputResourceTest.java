package org.culvert.platform.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Pattern;
import org.culvert.platform.Role;
import org.culvert.platform.hostile.Contract.Operation;
import org.culvert.platform.sight.SightTable;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Sends every operation of the contract parameters and bodies that were right but for one thing. Nothing may be answered with
 * 5xx, each refusal has the one shape, and a refusal stores nothing: the rows of every table of {@code public} and
 * {@code personal} are counted before and after it, and since each UPDATE leaves a revision, a count tells of changes too.
 * Words that are taken come back as they went in.
 *
 * <p>More rounds with {@code -Dculvert.hostile.rounds}, another seed with {@code -Dculvert.hostile.seed}, every third operation
 * with {@code -Dculvert.hostile.every=3}.
 */
@QuarkusTest
@Tag("bad-input")
@Order(Integer.MAX_VALUE)
class BadInputResourceTest {
    private static final long SEED = Long.getLong("culvert.hostile.seed", 20261125L);
    private static final int ROUNDS = Integer.getInteger("culvert.hostile.rounds", 1);

    private static final int EVERY = Integer.getInteger("culvert.hostile.every", 1);

    /** Which operations, for a look at some of them; figures are asserted only where all are tried. */
    private static final Pattern ONLY = Pattern.compile(System.getProperty("culvert.hostile.only", ".*"));

    private static final List<String> OTHER_TYPES =
            List.of("text/plain", "application/xml", "multipart/form-data", "junk", "application/json;charset=x");

    @Inject
    AgroalDataSource database;

    private final Random random = new Random(SEED);
    private final Sender sender = new Sender();
    private final Judge judge = new Judge();
    private final TreeMap<Integer, Integer> statuses = new TreeMap<>();
    private final List<String> wrong = new ArrayList<>();
    private final List<String> neverRight = new ArrayList<>();
    private Rows rows;
    private HostileWorld world;
    private Forms forms;
    private int sent;

    /** Whether what is tried now has been found to be refused where it is done a second time to the same record. */
    private boolean once;

    private int cameBack;

    @Test
    void nothingThatIsSentBreaksTheServer() throws IOException, SQLException, InterruptedException {
        world = new HostileWorld();
        forms = new Forms(database);
        rows = new Rows(database);
        var contract = new Contract();
        SightTable table = SightTable.load();
        int operations = 0;
        int met = random.nextInt(EVERY);
        for (Operation operation : contract.operations()) {
            List<String> roles = Role.ALL.stream()
                    .filter(role -> table.rolesOf(operation.name()).contains(role))
                    .toList();
            // Signing out would only end what the forms are sent by
            if (roles.isEmpty()
                    || !ONLY.matcher(operation.name()).find()
                    || operation.path().equals("/sign-out")) {
                continue;
            }
            if (met++ % EVERY != 0) {
                continue;
            }
            operations++;
            for (int round = 0; round < ROUNDS; round++) {
                try {
                    attack(operation, roles, contract);
                } catch (AssertionError | IllegalStateException e) {
                    wrong("the world could not be made: " + e, operation, "", "", "", "");
                }
            }
        }
        System.getLogger(BadInputResourceTest.class.getName())
                .log(
                        System.Logger.Level.INFO,
                        "hostile: {0} operations, {1} inputs tried, by status {2}, {3} texts came back as they went in, {4} wrong,"
                                + " {5} with no body taken, seed {6}",
                        operations,
                        sent,
                        statuses,
                        cameBack,
                        wrong.size(),
                        neverRight,
                        Long.toString(SEED));
        assertThat(wrong).as("seed %d", SEED).isEmpty();
        if (ONLY.pattern().equals(".*")) {
            assertThat(sent).isGreaterThan(3_500 * ROUNDS / EVERY);
            assertThat(cameBack).isGreaterThan(100 * ROUNDS / EVERY);
            assertThat(neverRight)
                    .as("operations whose good bodies were all refused")
                    .isEmpty();
        }
    }

    private void attack(Operation operation, List<String> roles, Contract contract)
            throws IOException, SQLException, InterruptedException {
        once = true;
        // What is only read may be what others have changed
        if (!operation.verb().equals("GET")) {
            world.renew();
        }
        attackAddress(operation, roles);
        if (operation.mediaType().equals("text/csv")) {
            attackTable(operation, roles);
        } else if (operation.isFile()) {
            attackFile(operation, roles);
        } else if (operation.isUpload()) {
            attackUpload(operation);
        } else if (operation.isForm()) {
            attackForm(operation);
        } else if (!operation.mediaType().isEmpty()) {
            attackBody(operation, roles, contract);
        }
    }

    /** What others rely on is put back. */
    @AfterEach
    void leaveTheWorldAsItWas() throws SQLException {
        if (rows != null) {
            rows.close();
        }
        for (String put : List.of("/api/region", "/api/disclosure-settings")) {
            Api.as(Role.ADMIN)
                    .header("If-Match", Api.tag(Role.ADMIN, put))
                    .body(Contract.GOOD.get("PUT " + put).toString())
                    .put(put)
                    .then()
                    .statusCode(200);
        }
        // A duty without an end would keep the people of other tests
        for (String rule : Api.get(Role.ADMIN, "/api/retention-rules")
                .<String>getList("findAll { it.jurisdiction == 'XH' && it.validTo == null }.id")) {
            Api.change(
                            Role.ADMIN,
                            "/api/retention-rules/" + rule,
                            "/ending",
                            "{\"validTo\":\"2020-12-31\",\"reason\":\"the test is over\"}")
                    .statusCode(200);
        }
    }

    private void attackAddress(Operation operation, List<String> roles)
            throws IOException, InterruptedException, SQLException {
        String path = world.path(operation.verb(), operation.path());
        String type = operation.mediaType();
        for (String parameter : operation.parameters()) {
            for (String value : some(BadValue.parameters(), parameter.equals("asOf") ? 3 : 4)) {
                send(operation, any(roles), path + "?" + parameter + "=" + value, "", type);
            }
        }
        if (operation.path().contains("{")) {
            String[] parts = operation.path().split("(?=\\{)");
            for (int i = 1; i < parts.length; i++) {
                for (String value : some(BadValue.parameters(), 2)) {
                    String[] spoilt = parts.clone();
                    spoilt[i] = spoilt[i].replaceFirst("\\{\\w+}", value.replace("$", "%24"));
                    send(operation, any(roles), world.path(operation.verb(), String.join("", spoilt)), "", type);
                }
            }
        }
    }

    private static final String A_ROAD = "{\"type\":\"LineString\",\"coordinates\":[[150.0,-30.5],[150.05,-30.5]]}";

    private static final String SOME_LAND =
            "{\"type\":\"Polygon\",\"coordinates\":" + "[[[149.1,-31.9],[149.2,-31.9],[149.2,-31.8],[149.1,-31.9]]]}";

    private static final String A_PLACE = "{\"type\":\"Point\",\"coordinates\":[150.02,-30.5]}";

    private static final String A_COUNTS_FILE = "?yearAttribute=year&vehiclesPerDayAttribute=limit&roadAttribute=name"
            + "&measure=annualAverage&kind=shortTerm&directions=both&source=hostile";

    /** How each kind of file is read. */
    private static final Map<String, String> FILES = Map.of(
            "/api/road-networks",
            "?name=hostile&roadName=name&speedLimit=limit",
            "/api/land-areas/files",
            "?kind=property&nameAttribute=name&source=hostile&from=2020-01-01",
            "/api/traffic-counts/files",
            A_COUNTS_FILE,
            "/api/traffic-counts/files/trials",
            A_COUNTS_FILE,
            "/api/release-sites/files",
            "?nameAttribute=name&habitatAttribute=name&jurisdiction=XI&uncertaintyMetres=20");

    /** A file of features; what is taken as roads is replaced by those of the other tests afterwards. */
    private void attackFile(Operation operation, List<String> roles)
            throws IOException, InterruptedException, SQLException {
        JsonNode good = Contract.JSON.readTree("""
                {"type":"FeatureCollection","features":[{"type":"Feature","properties":{"name":"Mill Road","limit":100,"year":1992},
                 "geometry":%s}]}
                """.formatted(geometry(operation)));
        String path = operation.path() + FILES.getOrDefault(operation.path(), "");
        for (String body : some(BadValue.bodies(good.toString()), 12)) {
            send(operation, any(roles), path, body, operation.mediaType());
        }
        List<String> places = new ArrayList<>();
        places(good, "", places);
        for (String place : places) {
            for (String value : some(BadValue.all(random), 3)) {
                send(operation, any(roles), path, with(good, place, value), operation.mediaType());
            }
        }
        World.shared();
        rows.count();
    }

    private static String geometry(Operation operation) {
        return operation.path().equals("/api/road-networks")
                ? A_ROAD
                : operation.path().startsWith("/api/traffic-counts") ? A_PLACE : SOME_LAND;
    }

    /** The file of a logger, with a cell, a column or the whole spoilt. */
    private void attackTable(Operation operation, List<String> roles)
            throws IOException, InterruptedException, SQLException {
        String header = "time,celsius\n";
        String good = header + "2026-01-05T10:00:00Z,28.4\n";
        List<String> files = new ArrayList<>(List.of(good));
        files.addAll(some(BadValue.bodies(good), 12));
        for (String value : some(BadValue.all(random), 12)) {
            files.add(header + value + ",28.4\n");
            files.add(header + "2026-01-05T10:00:00Z," + value + "\n");
            files.add(value + good);
        }
        int taken = 0;
        for (String file : files) {
            String path = world.path(operation.verb(), operation.path()) + "?source=hostile";
            HttpResponse<String> answer = send(operation, any(roles), path, file, operation.mediaType());
            taken += answer != null && answer.statusCode() < 300 ? 1 : 0;
        }
        if (taken == 0) {
            neverRight.add(operation.name());
        }
    }

    /** A file that is chosen in a form, with the whole, its name or the key spoilt. */
    private void attackUpload(Operation operation) throws IOException, SQLException {
        String good = "date,road,km,species\n1961-03-04,Mill Road,3.4," + UUID.randomUUID() + "\n";
        List<String> files = new ArrayList<>(List.of(good));
        files.addAll(some(BadValue.bodies(good), 8));
        some(Forms.values(), 8).forEach(value -> files.add("date,species\n1961-03-04," + value + "\n"));
        for (String file : files) {
            upload(operation, "hostile.csv", UUID.randomUUID().toString(), file);
        }
        for (String value : some(Forms.values(), 8)) {
            upload(
                    operation,
                    value.replaceAll("[\"\r\n]", "'"),
                    UUID.randomUUID().toString(),
                    good + value);
            upload(operation, "hostile.csv", value, good + value);
        }
    }

    private void upload(Operation operation, String name, String key, String text) throws IOException, SQLException {
        String tried = name + " " + key + " " + text;
        String path = world.path(operation.verb(), operation.path());
        rows.count();
        judge(operation, "session", path, tried, forms.upload(path, name, key, text));
        rowsAfter(operation, "session", path, tried, 200);
    }

    private void attackForm(Operation operation) throws IOException, SQLException {
        List<String> named = new ArrayList<>();
        operation.schema().path("properties").fieldNames().forEachRemaining(named::add);
        String path = world.path(operation.verb(), operation.path());
        List<String> fields = Forms.fields(path, named);
        for (String field : fields) {
            for (String value : some(Forms.values(), 3)) {
                rows.count();
                judge(
                        operation,
                        "session",
                        path,
                        field + "=" + value,
                        forms.send(path, fields, field, value, operation.isOfParts()));
                rowsAfter(operation, "session", path, field + "=" + value, 200);
            }
        }
    }

    private void attackBody(Operation operation, List<String> roles, Contract contract)
            throws IOException, InterruptedException, SQLException {
        List<JsonNode> bodies = contract.bodies(operation);
        List<String> fitting = new ArrayList<>();
        boolean taken = false;
        List<String> refusals = new ArrayList<>();
        for (JsonNode good : bodies) {
            for (String role : fitting.isEmpty() ? roles : fitting) {
                int status = send(operation, role, good);
                for (int i = 0; i < 10 && status == 409 && operation.path().endsWith("/cancellation"); i++) {
                    // What runs came to its own end first
                    world.renew();
                    status = send(operation, role, good);
                }
                taken |= status < 300;
                refusals.add(role + " " + status);
                if (fitting.isEmpty() && status < 300) {
                    fitting.add(role);
                }
            }
        }
        if (!taken) {
            neverRight.add(operation.name() + " " + refusals);
        }
        List<String> askers = fitting.isEmpty() ? roles : fitting;
        if (!fitting.isEmpty() && HostileWorld.isSpending(operation.name())) {
            once = isDoneOnceAlone(operation, fitting.get(0), bodies.get(0));
        }
        String first = bodies.get(0).toString();
        for (String body : some(BadValue.bodies(first), 8)) {
            send(
                    operation,
                    any(askers),
                    world.path(operation.verb(), operation.path()),
                    world.filled(body),
                    operation.mediaType());
        }
        for (String type : some(OTHER_TYPES, 2)) {
            send(operation, any(askers), world.path(operation.verb(), operation.path()), world.filled(first), type);
        }
        for (JsonNode good : bodies) {
            List<String> places = new ArrayList<>();
            places(good, "", places);
            for (String place : places) {
                spoil(operation, any(askers), good, place, "null");
            }
            List<String> values = some(BadValue.all(random), Math.max(6, places.size()));
            for (int i = 0; i < Math.max(values.size(), places.size()); i++) {
                String place = places.get(i % places.size());
                spoil(
                        operation,
                        any(random.nextInt(8) == 0 ? roles : askers),
                        good,
                        place,
                        values.get(i % values.size()));
            }
        }
    }

    private boolean isDoneOnceAlone(Operation operation, String role, JsonNode good)
            throws IOException, InterruptedException, SQLException {
        world.renew();
        once = false;
        for (int i = 0; i < 2; i++) {
            String path = world.path(operation.verb(), operation.path());
            HttpResponse<String> answer =
                    send(operation, role, path, world.filled(good.toString()), operation.mediaType());
            if (answer == null || answer.statusCode() >= 300) {
                return true;
            }
        }
        return false;
    }

    private void spoil(Operation operation, String role, JsonNode good, String place, String value)
            throws IOException, InterruptedException, SQLException {
        String path = world.path(operation.verb(), operation.path());
        String body = with(good, place, value);
        HttpResponse<String> answer = send(operation, role, path, body, operation.mediaType());
        if (answer == null || answer.statusCode() >= 300 || !value.startsWith("\"")) {
            return;
        }
        String words = Contract.JSON.readTree(value).asText();
        String field = place.replaceAll("(/\\d+)+$", "").replaceFirst(".*/", "");
        String shown = answer.body();
        String location = answer.headers().firstValue("Location").orElse("");
        if (Judge.texts(shown, field).isEmpty() && !location.isEmpty()) {
            shown = sender.get(location, role).body();
        }
        List<String> texts = Judge.texts(shown, field);
        if (texts.contains(words) || texts.contains(words.strip())) {
            cameBack++;
        } else if (BadValue.WORDS.contains(words)
                && !texts.isEmpty()
                // Fields of these names in an answer are of something else as well
                && !List.of("roadName", "reason").contains(field)
                && !operation.path().matches(".*/(readings|gate-questions)")) {
            wrong("came back as " + texts, operation, role, path, body, shown);
        }
    }

    private int send(Operation operation, String role, JsonNode good)
            throws IOException, InterruptedException, SQLException {
        String path = world.path(operation.verb(), operation.path());
        HttpResponse<String> answer = send(operation, role, path, world.filled(good.toString()), operation.mediaType());
        if (answer != null && answer.statusCode() == 400 && !operation.verb().equals("PATCH")) {
            wrong("a good body was refused", operation, role, path, good.toString(), answer.body());
        }
        return answer == null ? 599 : answer.statusCode();
    }

    private HttpResponse<String> send(Operation operation, String role, String path, String body, String type)
            throws IOException, InterruptedException, SQLException {
        if (world.hasChanged()) {
            rows.count();
        }
        HttpResponse<String> answer;
        try {
            answer = sender.send(operation.verb(), role, path, body, type);
        } catch (IOException e) {
            wrong("no answer (" + e.getMessage() + ")", operation, role, path, body, "");
            return null;
        }
        judge(operation, role, path, body, answer);
        if (!operation.isSafe()) {
            rowsAfter(operation, role, path, body, answer.statusCode());
            if (answer.statusCode() < 300) {
                world.settle(operation.name(), answer.body());
                world.spent(operation.name(), once);
            } else if (List.of(403, 404, 409, 410).contains(answer.statusCode())) {
                world.refused(operation.name());
            }
        }
        return answer;
    }

    private void judge(Operation operation, String role, String path, String body, HttpResponse<String> answer)
            throws IOException {
        sent++;
        statuses.merge(answer.statusCode(), 1, Integer::sum);
        String fault = judge.judge(answer);
        if (fault != null) {
            wrong(answer.statusCode() + ": " + fault, operation, role, path, body, answer.body());
        }
    }

    private void rowsAfter(Operation operation, String role, String path, String body, int status) throws SQLException {
        String more = rows.change();
        if (status >= 400 && !more.isEmpty()) {
            wrong(status + " but it left " + more, operation, role, path, body, "");
        }
    }

    private void wrong(String what, Operation operation, String role, String path, String body, String answer) {
        if (wrong.size() < 1000) {
            wrong.add("%s | %s as %s %s | %s | %s%n"
                    .formatted(what, operation.name(), role, cut(path, 100), cut(body, 300), cut(answer, 300)));
        }
    }

    private static String cut(String text, int length) {
        return text.length() <= length ? text : text.substring(0, length) + "… (" + text.length() + ")";
    }

    private String any(List<String> roles) {
        return roles.get(random.nextInt(roles.size()));
    }

    private <T> List<T> some(List<T> all, int count) {
        List<T> shuffled = new ArrayList<>(all);
        Collections.shuffle(shuffled, random);
        return shuffled.subList(0, Math.min(count, shuffled.size()));
    }

    /** JSON pointers of every value inside, and of the fields of objects inside lists. */
    private static void places(JsonNode node, String at, List<String> places) {
        if (node instanceof ObjectNode object) {
            object.properties().forEach(field -> {
                places.add(at + "/" + field.getKey());
                places(field.getValue(), at + "/" + field.getKey(), places);
            });
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                places.add(at + "/" + i);
                places(array.get(i), at + "/" + i, places);
            }
        }
    }

    /** The body with other JSON text, even none that is well-formed, in the place of one value. */
    private String with(JsonNode good, String place, String json) {
        JsonNode copy = good.deepCopy();
        int last = place.lastIndexOf('/');
        JsonNode parent = copy.at(place.substring(0, last));
        String mark = "put-it-here";
        if (parent instanceof ObjectNode object) {
            object.put(place.substring(last + 1), mark);
        } else {
            ((ArrayNode) parent).set(Integer.parseInt(place.substring(last + 1)), mark);
        }
        return world.filled(copy.toString()).replace('"' + mark + '"', json);
    }
}
