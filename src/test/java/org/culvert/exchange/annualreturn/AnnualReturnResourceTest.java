package org.culvert.exchange.annualreturn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.json.JsonArray;
import jakarta.json.JsonArrayBuilder;
import jakarta.json.JsonObject;
import jakarta.json.JsonObjectBuilder;
import jakarta.json.JsonValue;
import jakarta.json.spi.JsonProvider;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import javax.sql.DataSource;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The year from July 2024 to June 2025, of holders and kinds of animal of each test's own. */
@QuarkusTest
@OnOldestDatabase
class AnnualReturnResourceTest {
    private static final JsonProvider PROVIDER = JsonProvider.provider();
    private static final String FROM = "2024-07-01";
    private static final String EXAMPLE = "01920000-0000-7000-8000-000000073001";

    @Inject
    DataSource database;

    private World world;
    private String group;
    private String taxon;
    private String holder;
    private String other;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
        String letters = UUID.randomUUID().toString().replaceAll("[^a-f]", "x").replace("-", "");
        group = "returned-" + letters;
        taxon = "Annua " + letters;
        Api.post(ADMIN, "/api/taxon-groups", """
                [{"key":"%s","name":"%s","pouch":false,"clutches":true,"introduced":false}]
                """.formatted(group, group)).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"yearly one","taxonRank":"species","taxonGroup":"%s"}]
                """.formatted(taxon, group)).statusCode(200);
        holder = member(world.network);
        other = member(world.network);
        world.authorise(holder, group);
        world.authorise(other, group);
    }

    private static String member(String organisation) {
        return Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"%s","name":"Somebody","attends":false,"cares":true}
                        """.formatted(organisation, UUID.randomUUID()))
                .getString("id");
    }

    private static String at(String day) {
        return day + "T02:00:00Z";
    }

    private String held(String member, String day) {
        String incident = World.call(taxon, 150.04, "").getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"%s","holder":{"memberId":"%s"}}
                        """.formatted(incident, taxon, at(day), member))
                .getString("id");
    }

    private static void end(String caseId, String fate, String day) {
        Api.change(
                        COORDINATOR,
                        "/api/cases/" + caseId,
                        "/fate",
                        "{\"fate\":\"%s\",\"at\":\"%s\"}".formatted(fate, at(day)))
                .statusCode(200);
    }

    private static void handOver(String caseId, String taker, String day, String licence) {
        String offered = Api.make(
                        COORDINATOR, "/api/cases/" + caseId + "/hand-overs", """
                        {"taker":{"memberId":"%s"},"at":"%s"%s}
                        """.formatted(taker, at(day), licence))
                .getString("id");
        Api.change(COORDINATOR, "/api/hand-overs/" + offered, "/acceptance", "{\"at\":\"" + at(day) + "\"}")
                .statusCode(200);
    }

    private static long number(String caseId) {
        return Api.get(COORDINATOR, "/api/cases/" + caseId).getLong("number");
    }

    private static String form(String more) {
        return Api.make(COORDINATOR, "/api/return-forms", formBody(more)).getString("id");
    }

    private static String formBody(String more) {
        return """
                {"jurisdiction":"AU","title":"made for a test","startMonth":7,"startDay":1,"dueMonth":9,"dueDay":30,
                 "columns":[{"shows":"scientificName","heading":"species"},{"shows":"kind","heading":"kind"},
                  {"shows":"opening","heading":"held before"},{"shows":"cameIn","heading":"in"},
                  {"shows":"wentOut","heading":"out"},{"shows":"wentOutByWord","heading":"of these"},
                  {"shows":"closing","heading":"held after"}],
                 "vocabulary":[%s],
                 "source":"made for a test","readOn":"2026-01-05","reviewBy":"2090-01-01","validFrom":"2020-01-01"%s}
                """.formatted(words(), more);
    }

    private static String words() {
        StringBuilder words = new StringBuilder();
        for (ReturnForms.End end : ReturnForms.End.values()) {
            words.append(words.isEmpty() ? "" : ",")
                    .append("{\"end\":\"%s\",\"word\":\"%s\"}"
                            .formatted(end, end == ReturnForms.End.released ? "freed" : "the " + end));
        }
        return words.toString();
    }

    private static String counting(boolean eggs, boolean hatchlings, boolean bodies, boolean members) {
        return ",\"countsEggs\":%s,\"countsHatchlings\":%s,\"countsBodies\":%s,\"countsMembers\":%s"
                .formatted(eggs, hatchlings, bodies, members);
    }

    private static String draftPath(String form, String member) {
        return "/api/annual-returns/draft?formId=" + form + "&memberId=" + member + "&from=" + FROM;
    }

    private static Json draft(String form, String member) {
        return Api.get(OFFICER, draftPath(form, member));
    }

    private static String signing(String form, String member) {
        return """
                {"formId":"%s","memberId":"%s","from":"%s","name":"A Holder","capacity":"holder of the licence",
                 "signedOn":"2025-07-05"}
                """.formatted(form, member, FROM);
    }

    private static byte[] octets(String path) {
        return Api.as(OFFICER).get(path).then().statusCode(200).extract().asByteArray();
    }

    private static int[] sums(Json draft) {
        return new int[] {
            draft.getInt("lines[0].opening"),
            draft.getInt("lines[0].cameIn"),
            draft.getInt("lines[0].wentOut"),
            draft.getInt("lines[0].closing")
        };
    }

    @Test
    void aDraftCountsWhatAHolderHadGotAndGave() {
        String before = held(holder, "2024-05-01");
        end(before, "died", "2024-08-01");
        held(holder, "2024-06-30");
        String given = held(holder, "2024-09-01");
        handOver(
                given,
                other,
                "2024-10-01",
                ",\"otherLicence\":{\"organisation\":\"Southern Shelter\",\"number\":\"V-9\",\"jurisdiction\":\"AU-VIC\"}");
        String got = held(other, "2024-11-01");
        handOver(got, holder, "2024-12-01", "");
        String lost = held(holder, "2025-02-01");
        end(lost, "unknown", "2025-03-01");
        String later = held(holder, "2025-06-30");
        Api.post(
                COORDINATOR, "/api/cases/" + later + "/fate", "{\"fate\":\"escaped\",\"at\":\"2025-07-02T00:00:00Z\"}");

        Json draft = draft(form(counting(true, true, true, true)), holder);
        assertThat(sums(draft)).containsExactly(2, 4, 3, 3);
        assertThat(draft.<Map<String, Object>>getList("lines[0].wentOutBy"))
                .extracting(way -> way.get("how") + " " + way.get("word") + " " + way.get("count"))
                .containsExactlyInAnyOrder(
                        "died the died 1", "transferred handed over between holders 1", "unknown the unknown 1");
        assertThat(draft.getString("due")).isEqualTo("2025-09-30");
        assertThat(draft.getString("to")).isEqualTo("2025-06-30");
        assertThat(draft.getString("note")).contains("check your local code");
        assertThat(draft.getString("licences[0].number")).startsWith("T-");
        assertThat(draft.getList("doubts")).hasSize(1);
        assertThat(draft.getList("doubts[0].cases", Long.class)).containsExactly(number(lost));

        Map<String, Object> out = draft.getMap("transfers.find { it.direction == 'out' }");
        assertThat(out)
                .containsEntry("otherLicence", "V-9")
                .containsEntry("otherLicenceOf", "Southern Shelter")
                .containsEntry("otherLicenceJurisdiction", "AU-VIC")
                .containsEntry("on", "2024-10-01");
        Map<String, Object> in = draft.getMap("transfers.find { it.direction == 'in' }");
        assertThat(in.get("otherLicence")).isEqualTo("T-" + other.substring(other.length() - 6));
        assertThat(((Number) in.get("caseNumber")).longValue()).isEqualTo(number(got));

        // What is out for one is in for the other, on the same day and of the same case
        Json others = draft(form(counting(true, true, true, true)), other);
        assertThat(others.getMap("transfers.find { it.direction == 'out' }"))
                .containsEntry("caseNumber", in.get("caseNumber"))
                .containsEntry("on", in.get("on"));
        assertThat(others.getList("transfers.findAll { it.direction == 'in' }"))
                .as("held under a licence of Victoria, which the other's return to Australia counts as a part of it")
                .hasSize(1);
        assertThat(draft(formOf("AU-NSW", counting(true, true, true, true)), other)
                        .getList("transfers.findAll { it.direction == 'in' }"))
                .as("and which a return to New South Wales leaves to Victoria")
                .isEmpty();
    }

    private static String formOf(String jurisdiction, String more) {
        return Api.make(
                        COORDINATOR,
                        "/api/return-forms",
                        formBody(more).replace("\"jurisdiction\":\"AU\"", "\"jurisdiction\":\"" + jurisdiction + "\""))
                .getString("id");
    }

    @Test
    void eggsHatchlingsAndBodiesCountWhereTheFormSaysSo() {
        String mother = held(holder, "2024-08-01");
        String clutch = Api.make(COORDINATOR, "/api/clutches", """
                        {"motherCaseId":"%s","holder":{"memberId":"%s"},
                         "eggs":{"recovered":8,"setToIncubate":7,"broken":1,"discarded":0,"at":"2024-11-01T02:00:00Z"}}
                        """.formatted(mother, holder))
                .getString("id");
        Api.make(COORDINATOR, "/api/clutches/" + clutch + "/hatchings", """
                {"hatched":4,"at":"2025-01-20T02:00:00Z"}
                """);
        Api.make(COORDINATOR, "/api/clutches/" + clutch + "/failed-eggs", """
                {"failed":2,"grounds":"collapsed","saidBy":"A Carer","at":"2025-02-10T02:00:00Z"}
                """);
        String dead = held(holder, "2024-09-01");
        end(dead, "deadWhenFound", "2024-09-02");

        Json all = draft(form(counting(true, true, true, false)), holder);
        assertThat(all.getList("lines.kind", String.class))
                .containsExactlyInAnyOrder("animal", "hatchling", "body", "egg");
        Map<String, Object> eggs = all.getMap("lines.find { it.kind == 'egg' }");
        assertThat(eggs).containsEntry("cameIn", 7).containsEntry("wentOut", 6).containsEntry("closing", 1);
        Map<String, Object> young = all.getMap("lines.find { it.kind == 'hatchling' }");
        assertThat(young).containsEntry("cameIn", 4).containsEntry("closing", 4);
        assertThat(all.getString("lines.find { it.kind == 'hatchling' }.cameInBy[0].how"))
                .isEqualTo("hatched");
        assertThat(all.getList("leftOut")).isEmpty();

        Json few = draft(form(counting(false, false, false, false)), holder);
        assertThat(few.getList("lines.kind", String.class)).containsExactly("animal");
        assertThat(few.getList("leftOut.kind", String.class)).containsExactlyInAnyOrder("hatchling", "body", "egg");
        assertThat(few.getInt("leftOut.find { it.kind == 'egg' }.count")).isEqualTo(7);
        assertThat(few.getList("leftOut.find { it.kind == 'body' }.cases", Long.class))
                .containsExactly(number(dead));
    }

    @Test
    void anOrganisationAnswersForItsMembersWhereTheFormSaysSo() {
        String shelter = Api.make(ADMIN, "/api/organisations", """
                        {"kind":"shelter","name":"Shelter %s","xRay":false,"surgery":false}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        String one = member(shelter);
        String two = member(shelter);
        String moved = held(one, "2024-09-01");
        handOver(moved, two, "2024-10-01", "");
        held(two, "2024-11-01");
        String path = "/api/annual-returns/draft?organisationId=" + shelter + "&from=" + FROM + "&formId=";
        Json with = Api.get(OFFICER, path + form(counting(true, true, true, true)));
        assertThat(sums(with)).containsExactly(0, 2, 0, 2);
        assertThat(with.getList("transfers")).as("from one member to another").isEmpty();
        Json without = Api.get(OFFICER, path + form(counting(true, true, true, false)));
        assertThat(without.getList("lines")).isEmpty();
    }

    @Test
    void whatIsSignedStaysToTheOctetAndSupplementsShowWhatChangedAlone() throws Exception {
        held(holder, "2024-09-01");
        String taken = held(holder, "2024-10-01");
        String form = form(counting(true, true, true, true));
        Json signed = Api.make(COORDINATOR, "/api/annual-returns/signing", signing(form, holder));
        String path = "/api/annual-returns/" + signed.getString("id");
        assertThat(signed.getString("signedBy")).isEqualTo("A Holder");
        byte[] document = octets(path + "/document");
        byte[] table = octets(path + "/table");
        assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(document)))
                .isEqualTo(signed.getString("documentSha256"));
        assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(table)))
                .isEqualTo(signed.getString("tableSha256"));
        assertThat(new String(document, StandardCharsets.UTF_8))
                .as("the names of people are beside it")
                .doesNotContain("A Holder");
        Api.post(COORDINATOR, "/api/annual-returns/signing", signing(form, holder))
                .statusCode(409)
                .body("detail", containsString("signed already"));

        // Later it turns out that one had died, and that there was a third
        end(taken, "died", "2024-12-01");
        String third = held(holder, "2025-01-01");
        String asOf = Api.as(OFFICER)
                .queryParam("asOf", signed.getString("knownAt"))
                .get(draftPath(form, holder))
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(sorted(asOf))
                .as("what was known then is what was signed")
                .isEqualTo(sorted(new String(document, StandardCharsets.UTF_8)));
        Json changes = Api.get(OFFICER, path + "/changes");
        assertThat(changes.getList("lines")).hasSize(1);
        assertThat(changes.getInt("lines[0].before.cameIn")).isEqualTo(2);
        assertThat(changes.getInt("lines[0].after.cameIn")).isEqualTo(3);
        assertThat(changes.getInt("lines[0].after.wentOut")).isEqualTo(1);
        assertThat(changes.getList("transfers")).isEmpty();
        assertThat(octets(path + "/document")).isEqualTo(document);

        String supplement = """
                {"reason":"entered late","name":"A Holder","capacity":"holder of the licence","signedOn":"2025-08-01"}
                """;
        Json first = Api.make(COORDINATOR, path + "/supplements", supplement);
        assertThat(first.getInt("number")).isEqualTo(1);
        byte[] told = octets(path + "/supplements/1/document");
        assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(told)))
                .isEqualTo(first.getString("documentSha256"));
        assertThat(new String(octets(path + "/supplements/1/table"), StandardCharsets.UTF_8))
                .contains("1,before,line," + taxon + ",animal,0,2,0,")
                .contains("1,after,line," + taxon + ",animal,0,3,1,");
        Api.post(COORDINATOR, path + "/supplements", supplement)
                .statusCode(409)
                .body("detail", containsString("Nothing of that return has changed"));

        // A second one tells what changed since the first
        end(third, "escaped", "2025-02-01");
        Api.make(COORDINATOR, path + "/supplements", supplement);
        Json second = Json.from(new String(octets(path + "/supplements/2/document"), StandardCharsets.UTF_8));
        assertThat(second.getInt("lines[0].before.wentOut")).isEqualTo(1);
        assertThat(second.getInt("lines[0].after.wentOut")).isEqualTo(2);
        assertThat(Api.get(OFFICER, path).getInt("supplements")).isEqualTo(2);
        assertThat(Api.get(OFFICER, path + "/supplements").getList("number", Integer.class))
                .containsExactly(1, 2);
        assertThat(octets(path + "/document")).isEqualTo(document);
        assertThat(octets(path + "/supplements/1/document")).isEqualTo(told);
    }

    /** Another name is no change: what was signed keeps the names of then. */
    @Test
    void anotherNameIsNoChange() throws SQLException {
        String given = held(holder, "2024-09-01");
        handOver(given, other, "2024-10-01", "");
        String form = form(counting(true, true, true, true));
        String path = "/api/annual-returns/"
                + Api.make(COORDINATOR, "/api/annual-returns/signing", signing(form, holder))
                        .getString("id");
        String sign = "renamed " + UUID.randomUUID();
        try (Connection connection = database.getConnection();
                PreparedStatement rename = connection.prepareStatement(
                        "update members set call_sign = ?, version = version + 1 where id = ?::uuid")) {
            rename.setString(1, sign);
            rename.setString(2, other);
            assertThat(rename.executeUpdate()).isEqualTo(1);
        }
        assertThat(draft(form, holder).getString("transfers[0].other")).isEqualTo(sign);
        Json changes = Api.get(OFFICER, path + "/changes");
        for (String part : List.of("lines", "transfers", "doubts", "leftOut")) {
            assertThat(changes.getList(part)).as(part).isEmpty();
        }
    }

    /** Keys in order and no spaces, as RFC 8785 has it; written anew by Parsson, which nobody here wrote. */
    @Test
    void theDocumentIsCanonicalAndTheTableAddsUp() throws Exception {
        held(holder, "2024-09-01");
        end(held(holder, "2024-10-01"), "died", "2024-11-01");
        handOver(held(holder, "2024-10-05"), other, "2024-12-01", "");
        String form = form(counting(true, true, true, true));
        String path = "/api/annual-returns/"
                + Api.make(COORDINATOR, "/api/annual-returns/signing", signing(form, holder))
                        .getString("id");
        String document = new String(octets(path + "/document"), StandardCharsets.UTF_8);
        assertThat(sorted(document).toString()).isEqualTo(document);

        String table = new String(octets(path + "/table"), StandardCharsets.UTF_8);
        List<CSVRecord> rows = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(table))
                .getRecords();
        assertThat(table).endsWith("\r\n");
        assertThat(rows).extracting(row -> row.get("row")).containsExactly("line", "transfer");
        CSVRecord line = rows.get(0);
        assertThat(Integer.parseInt(line.get("held before")) + Integer.parseInt(line.get("in")))
                .isEqualTo(Integer.parseInt(line.get("out")) + Integer.parseInt(line.get("held after")))
                .isEqualTo(3);
        assertThat(line.get("of these: the died")).isEqualTo("1");
        assertThat(line.get("of these: freed")).isEqualTo("0");
        assertThat(rows.get(1).get("otherLicence")).isEqualTo("T-" + other.substring(other.length() - 6));
        assertThat(rows.get(1).get("in")).as("counts stand in lines alone").isEmpty();
    }

    private static JsonValue sorted(String document) {
        return sorted(PROVIDER.createReader(new StringReader(document)).readValue());
    }

    private static JsonValue sorted(JsonValue json) {
        if (json instanceof JsonObject object) {
            JsonObjectBuilder sorted = PROVIDER.createObjectBuilder();
            new TreeMap<>(object).forEach((key, value) -> sorted.add(key, sorted(value)));
            return sorted.build();
        } else if (json instanceof JsonArray array) {
            JsonArrayBuilder sorted = PROVIDER.createArrayBuilder();
            array.forEach(value -> sorted.add(sorted(value)));
            return sorted.build();
        }
        return json;
    }

    @Test
    void theDatabaseRefusesLinesThatDoNotAddUpAndChangesOfWhatIsFrozen() throws SQLException {
        held(holder, "2024-09-01");
        String form = form(counting(true, true, true, true));
        String id = Api.make(COORDINATOR, "/api/annual-returns/signing", signing(form, holder))
                .getString("id");
        String line = "{\"opening\": %d, \"closing\": %d, \"cameInBy\": [{\"count\": %d}], \"wentOutBy\": []}";
        // 23514: check violation; 23000: integrity constraint violation (PostgreSQL manual, appendix A)
        assertThat(refused(insert(id, line.formatted(1, 1, 1), 1, 1, 0, 1))).isEqualTo("23514");
        assertThat(refused(insert(id, line.formatted(1, 2, 2), 1, 1, 0, 2)))
                .as("its parts are not its sums")
                .isEqualTo("23514");
        assertThat(refused(insert(id, line.formatted(1, 2, 1), 1, 1, 0, 2))).isNull();
        for (String table : List.of("annual_returns", "return_lines")) {
            assertThat(refused("update " + table + " set "
                            + (table.equals("return_lines")
                                    ? "opening = 0 where return_id"
                                    : "due_on = due_on + 1 where id")
                            + " = '" + id + "'"))
                    .as(table)
                    .isEqualTo("23000");
        }
        assertThat(refused(
                        "update kept_files set content = 'other' where id = (select document_file_id from annual_returns"
                                + " where id = '" + id + "')"))
                .isEqualTo("23000");
    }

    private static String insert(String id, String line, int opening, int in, int out, int closing) {
        return "insert into return_lines (return_id, sort, line, opening, came_in, went_out, closing) values ('" + id
                + "', 'line', '" + line + "', " + opening + ", " + in + ", " + out + ", " + closing + ")";
    }

    /** The state with which the database refuses a statement, or null where it takes it; nothing stays. */
    private @Nullable String refused(String statement) throws SQLException {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            try (var run = connection.createStatement()) {
                run.execute(statement);
                return null;
            } catch (SQLException e) {
                return e.getSQLState();
            } finally {
                connection.rollback();
            }
        }
    }

    @Test
    void aCarerSeesAndSignsTheOwnAndNobodyElses() {
        String form = form(counting(true, true, true, true));
        String stranger = member(world.clinic);
        held(stranger, "2024-09-01");
        Api.as(CARER).get(draftPath(form, stranger)).then().statusCode(404);
        Api.as(CARER).get(draftPath(form, world.carer)).then().statusCode(200);
        Api.post(CARER, "/api/annual-returns/signing", signing(form, other))
                .statusCode(422)
                .body("detail", equalTo("That is not your return to sign."));
        String strangers = Api.make(COORDINATOR, "/api/annual-returns/signing", signing(form, stranger))
                .getString("id");
        for (String path : List.of("", "/document", "/table", "/changes", "/supplements")) {
            Api.as(CARER).get("/api/annual-returns/" + strangers + path).then().statusCode(404);
            Api.as(OFFICER)
                    .get("/api/annual-returns/" + strangers + path)
                    .then()
                    .statusCode(200);
        }
        String own = Api.make(CARER, "/api/annual-returns/signing", signing(form, world.carer))
                .getString("id");
        List<String> listed = Api.get(CARER, "/api/annual-returns?limit=1000").getList("items.id");
        assertThat(listed).contains(own).doesNotContain(strangers);
        assertThat(Api.get(OFFICER, "/api/annual-returns?limit=1000").<String>getList("items.id"))
                .contains(own, strangers);
        Api.post(OFFICER, "/api/annual-returns/signing", signing(form, other)).statusCode(403);
        Api.post(RESCUER, "/api/annual-returns/signing", signing(form, other)).statusCode(403);
    }

    @Test
    void nobodySignsBeforeThePeriodIsOver() {
        String form = form(counting(true, true, true, true));
        String year = Clocks.now().toString().substring(0, 4);
        String running = year + "-07-01";
        String from = Clocks.now().toString().substring(5, 7).compareTo("07") < 0
                ? Integer.parseInt(year) - 1 + "-07-01"
                : running;
        Api.post(
                        COORDINATOR,
                        "/api/annual-returns/signing",
                        signing(form, holder).replace(FROM, from))
                .statusCode(422)
                .body("detail", containsString("nobody knows yet"));
        Api.post(
                        COORDINATOR,
                        "/api/annual-returns/signing",
                        signing(form, holder).replace("2025-07-05", "2025-06-30"))
                .statusCode(400)
                .body("errors[0].field", equalTo("signedOn"));
        Api.post(
                        COORDINATOR,
                        "/api/annual-returns/signing",
                        signing(form, holder).replace(FROM, "2024-08-01"))
                .statusCode(400)
                .body("errors[0].field", equalTo("from"));
    }

    @Test
    void aFormIsDataAndTheOnlyShippedOneIsAnExample() {
        Json shipped = Api.get(OFFICER, "/api/return-forms");
        assertThat(shipped.<String>getList("findAll { it.id.startsWith('01920000-0000-7000-8000') }.id"))
                .containsExactly(EXAMPLE);
        assertThat(Api.get(OFFICER, "/api/return-forms/" + EXAMPLE).getString("source"))
                .startsWith("Common practice, no source");
        held(holder, "2024-09-01");
        assertThat(sums(draft(EXAMPLE, holder))).containsExactly(0, 1, 0, 1);

        Api.post(
                        COORDINATOR,
                        "/api/return-forms",
                        formBody(counting(true, true, true, true)).replace("wentOut\"", "cameIn\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("columns"));
        Api.post(
                        COORDINATOR,
                        "/api/return-forms",
                        formBody(counting(true, true, true, true)).replace("\"startDay\":1", "\"startDay\":31"))
                .statusCode(201);
        Api.post(
                        COORDINATOR,
                        "/api/return-forms",
                        formBody(counting(true, true, true, true)).replace("\"dueDay\":30", "\"dueDay\":31"))
                .statusCode(400)
                .body("errors[0].field", equalTo("dueDay"));
        Api.post(
                        COORDINATOR,
                        "/api/return-forms",
                        formBody(counting(true, true, true, true)).replace("\"end\":\"failed\"", "\"end\":\"hatched\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("vocabulary"));
        String halves = Api.make(
                        COORDINATOR,
                        "/api/return-forms",
                        formBody(counting(true, true, true, true))
                                .replace("\"startMonth\":7,\"startDay\":1,\"dueMonth\":9,\"dueDay\":30,", """
                        "periods":[{"from":"2024-01-01","to":"2024-06-30","due":"2024-07-31"},
                                   {"from":"2024-07-01","to":"2024-12-31","due":"2025-01-31"}],
                        """))
                .getString("id");
        Json half = draft(halves, holder);
        assertThat(half.getString("to")).isEqualTo("2024-12-31");
        assertThat(half.getString("due")).isEqualTo("2025-01-31");
        Api.change(
                        COORDINATOR,
                        "/api/return-forms/" + halves,
                        "/reviews",
                        "{\"readOn\":\"2026-02-01\",\"reviewBy\":\"2091-01-01\",\"validTo\":\"2024-07-01\",\"reason\":\"read again\"}")
                .statusCode(200)
                .body("validTo", equalTo("2024-07-01"));
        Api.as(OFFICER).get(draftPath(halves, holder)).then().statusCode(400).body("errors[0].field", equalTo("from"));
    }
}
