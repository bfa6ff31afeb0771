package org.culvert.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class ReleaseResourceTest {
    /** A kind and a group that no other test makes rules for. */
    private static final String TURTLE = "Emydura macquarii";

    private static final double LATITUDE = -30.5000001;
    private static final double LONGITUDE = 150.0312345;
    private static final byte[] PERMIT = "%PDF-1.4 the permit".getBytes(StandardCharsets.US_ASCII);

    /** A law of our own for each test: ISO 3166 leaves XA to XZ to users. */
    private static int laws;

    @Inject
    DataSource database;

    private World world;
    private String jurisdiction;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
        Api.post(COORDINATOR, "/api/taxon-groups", """
                        [{"key":"short-necked-turtles","name":"short-necked turtles","pouch":false,"clutches":true,
                          "introduced":false}]
                        """).statusCode(200);
        Api.post(COORDINATOR, "/api/taxa", """
                        [{"scientificName":"Emydura macquarii","vernacularName":"Murray turtle","taxonRank":"species",
                          "taxonGroup":"short-necked-turtles"}]
                        """).statusCode(200);
        jurisdiction = "XQ-" + ++laws;
    }

    private Json newCase(String more) {
        String incident = Api.make(DISPATCHER, "/api/calls", """
                        {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                         "animals":[{"scientificName":"%s","individualCount":1,"vitality":"alive"}],
                         "place":{"decimalDegrees":{"latitude":"%.7f","longitude":"%.7f"}}}
                        """.formatted(TURTLE, LATITUDE, LONGITUDE))
                .getString("incidentId");
        Json opened = Api.make(RESCUER, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                 "holder":{"memberId":"%s"}%s}
                """.formatted(incident, TURTLE, world.rescuer, more));
        World.signFit(opened.getString("id"), "2026-01-20T02:00:00Z");
        return opened;
    }

    private String rule(String kind, String test, String more) {
        return Api.make(COORDINATOR, "/api/release-rules", """
                        {"jurisdiction":"%s","kind":"%s","scientificName":"%s","test":"%s","words":"as the test says",
                         "source":"made for a test","readOn":"2020-01-01","reviewBy":"2090-01-01",
                         "validFrom":"2020-01-01"%s}
                        """.formatted(
                                kind.equals("policy") ? "network" : jurisdiction, kind, TURTLE, test, more))
                .getString("id");
    }

    private String position(double degreesNorth) {
        return "\"position\":{\"jurisdiction\":\"%s\",\"decimalLatitude\":%s,\"decimalLongitude\":%s,\"coordinateUncertaintyInMeters\":10}"
                .formatted(jurisdiction, LATITUDE + degreesNorth, LONGITUDE);
    }

    private Json assess(String caseId, double degreesNorth) {
        return Api.make(CARER, "/api/assessments", "{\"caseId\":\"%s\",%s}".formatted(caseId, position(degreesNorth)));
    }

    private static String release(List<String> cases, List<String> assessments, String more) {
        return "{\"caseIds\":[\"%s\"],\"assessmentIds\":[\"%s\"],\"approvedBy\":\"Dr Vet\"%s}"
                .formatted(String.join("\",\"", cases), String.join("\",\"", assessments), more);
    }

    private static String permit(String key) {
        return ",\"permits\":[{\"key\":\"%s\",\"number\":\"P-17\",\"issuedBy\":\"the wildlife authority\",\"documentName\":\"permit.pdf\",\"documentMediaType\":\"application/pdf\",\"document\":\"%s\"}]"
                .formatted(key, Base64.getEncoder().encodeToString(PERMIT));
    }

    @Test
    void whatIsShippedIsStatuteOrCodeAndSaysWhatWasRead() {
        Json rules = Api.get(COORDINATOR, "/api/release-rules");
        String shipped = "findAll { it.id.startsWith('01920000-0000-7000-8000-') }";
        assertThat(rules.getList(shipped + ".jurisdiction"))
                .containsOnly("AU-QLD", "AU-VIC", "CA-QC", "US-CO", "US-DC", "US-MD", "US-WA", "US-WI");
        assertThat(rules.getList(shipped + ".findAll { it.jurisdiction == 'AU-QLD' }.kind"))
                .containsOnly("code");
        assertThat(rules.getList(shipped + ".kind")).containsOnly("code", "guidance", "statute");
        // Rehabilitator Authorisation Guide of Victoria, 2023: deer, quail that are not indigenous, pheasants,
        // partridges
        assertThat(rules.getList(shipped + ".findAll { it.kind == 'guidance' }.test"))
                .hasSize(10)
                .containsOnly("noRelease");
        // Washington Administrative Code 220-450, NR 19.78 of Wisconsin, 2 CCR 406-14-1405 of Colorado; Quebec C-61.1,
        // r. 5, s 36
        assertThat(rules.<Integer>getList(shipped + ".findAll { it.test == 'daysInCare' }.greatestDays"))
                .containsExactlyInAnyOrder(180, 180, 180, 365);
        // Release site assessment, Koala Rehabilitators Hub, Queensland environment department, copy of 2024-25
        assertThat(rules.getList(shipped + ".findAll { it.appliesTo == 'adult' }.greatestDistanceMetres"))
                .containsExactly(10000.0);
        assertThat(rules.getList(shipped + ".findAll { it.appliesTo == 'orphan' }.greatestDistanceMetres"))
                .containsExactly(20000.0);
        assertThat(rules.getList(shipped + ".source", String.class))
                .hasSize(24)
                .allSatisfy(source -> assertThat(source).contains("Check your local code and your licensed vet"));
        // Only an older edition of section 15 was read: the row asks before it passes
        assertThat(rules.getList(shipped + ".findAll { it.kind == 'code' && it.scientificName == null }.reviewBy"))
                .containsExactly("2020-12-31");
    }

    @Test
    void noPermitLetsAProhibitedKindGo() {
        String key = rule("guidance", "noRelease", "");
        String id = newCase("").getString("id");
        Json assessed = assess(id, 0);
        assertThat(assessed.getString("overall")).isEqualTo("fail");
        assertThat(assessed.getString("tests.find { it.test == 'noRelease' }.lifting"))
                .isEqualTo("byNothing");
        for (String lifting : List.of(
                permit(key), ",\"overrides\":[{\"key\":\"%s\",\"reason\":\"it is one animal\"}]".formatted(key))) {
            Api.post(COORDINATOR, "/api/releases", release(List.of(id), List.of(assessed.getString("id")), lifting))
                    .statusCode(422)
                    .body("reasons", hasItem(containsString("Nothing lifts it.")));
        }
        Json area = Api.get(CARER, "/api/cases/" + id + "/release-area?jurisdiction=" + jurisdiction);
        assertThat(area.getMap("geometry")).isNull();
        assertThat(area.getString("properties.words")).contains("its kind is let go nowhere", "made for a test");
    }

    @Test
    void anAssessmentIsKeptWithItsFiguresForEver() throws SQLException {
        rule("code", "foundPlaceFirst", ",\"allowedGrounds\":[{\"key\":\"hazard\",\"words\":\"it is a hazard\"}]");
        rule("statute", "greatestDistance", ",\"greatestDistanceMetres\":5000");
        Json opened = newCase("");
        Json made = assess(opened.getString("id"), 0.02);
        assertThat(made.getList("tests.test")).startsWith("foundPlaceFirst", "greatestDistance");
        assertThat(made.getList("tests.verdict")).startsWith("fail", "pass");
        // One arc minute of latitude at 30.5 degrees is 1847.5 m on WGS 84; 0.02 degrees are 1.2 of them
        assertThat(made.getDouble("tests[1].separation.distanceMetres")).isBetween(2216.0, 2218.0);
        assertThat(made.getDouble("tests[1].separation.originUncertaintyMetres"))
                .isEqualTo(opened.getDouble("foundPlace.coordinateUncertaintyInMeters"));
        assertThat(made.getString("overall")).isEqualTo("fail");
        assertThat(made.getList("tests.kind")).startsWith("code", "statute").containsOnly("code", "statute", null);
        assertThat(made.getString("tests[1].rule.source")).isEqualTo("made for a test");
        assertThat(made.getString("note")).contains("local code").contains("licensed vet");

        Json kept = Api.get(OFFICER, "/api/assessments/" + made.getString("id"));
        assertThat(kept.getMap("$")).isEqualTo(made.getMap("$"));
        assertThat(kept.prettify()).doesNotContainPattern("(?i)lawful|legal|safe");
        assertThat(Api.get(CARER, "/api/assessments?caseId=" + opened.getString("id"))
                        .getList("items.id"))
                .containsExactly(made.getString("id"));
        try (Connection connection = database.getConnection();
                var change = connection.createStatement()) {
            assertThatThrownBy(() -> change.executeUpdate("update assessments set overall = 'pass'"))
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining("kept as they are");
        }
    }

    @Test
    void onlyAPermitWithItsDocumentLiftsACode() {
        String key = rule("code", "greatestDistance", ",\"greatestDistanceMetres\":1000");
        String id = newCase("").getString("id");
        String assessment = assess(id, 0.02).getString("id");
        Api.post(COORDINATOR, "/api/releases", release(List.of(id), List.of(assessment), ""))
                .statusCode(422)
                .body("reasons", hasSize(1))
                .body("reasons[0]", containsString("Only a permit"));
        Api.post(
                        COORDINATOR,
                        "/api/releases",
                        release(
                                List.of(id),
                                List.of(assessment),
                                ",\"overrides\":[{\"key\":\"%s\",\"reason\":\"it is fine\"}]".formatted(key)))
                .statusCode(422)
                .body("reasons[0]", containsString("Only a permit"));
        Api.post(
                        COORDINATOR,
                        "/api/releases",
                        release(
                                List.of(id),
                                List.of(assessment),
                                ",\"permits\":[{\"key\":\"%s\",\"number\":\"P-17\",\"issuedBy\":\"somebody\"}]"
                                        .formatted(key)))
                .statusCode(400);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("state")).isEqualTo("inCare");

        Json made = Api.make(COORDINATOR, "/api/releases", release(List.of(id), List.of(assessment), permit(key)));
        assertThat(made.getList("lifted.kind")).containsExactly("permit");
        assertThat(made.getString("lifted[0].number")).isEqualTo("P-17");
        Json ended = Api.get(COORDINATOR, "/api/cases/" + id);
        assertThat(ended.getString("state")).isEqualTo("ended");
        assertThat(ended.getString("fate.fate")).isEqualTo("released");
        assertThat(ended.getString("fate.releaseId")).isEqualTo(made.getString("id"));

        String documents = "/api/releases/" + made.getString("id") + "/documents/";
        byte[] document = Api.as(OFFICER)
                .accept("*/*")
                .get(documents + made.getString("lifted[0].id"))
                .then()
                .statusCode(200)
                .contentType("application/pdf")
                .extract()
                .asByteArray();
        assertThat(document).isEqualTo(PERMIT);
        Api.as(CARER).get(documents + made.getString("lifted[0].id")).then().statusCode(403);
    }

    @Test
    void policyIsOverriddenByWhoeverGivesAReason() {
        rule("code", "greatestDistance", ",\"greatestDistanceMetres\":50000");
        // The network's own holds everywhere: let it be about the animals of this test alone
        String id = newCase(",\"dependentYoung\":true").getString("id");
        String key = rule(
                "policy",
                "landownerConsent",
                ",\"appliesTo\":\"orphan\",\"appliesDefinition\":\"came as dependent young\"");
        String assessment = assess(id, 0.001).getString("id");
        Api.post(COORDINATOR, "/api/releases", release(List.of(id), List.of(assessment), ""))
                .statusCode(422)
                .body("reasons", everyItem(containsString("with a reason")));
        Api.post(
                        COORDINATOR,
                        "/api/releases",
                        release(
                                List.of(id),
                                List.of(assessment),
                                ",\"overrides\":[{\"key\":\"%s\",\"reason\":\" \"}]".formatted(key)))
                .statusCode(400);
        Json made = Api.make(
                COORDINATOR,
                "/api/releases",
                release(
                        List.of(id),
                        List.of(assessment),
                        ",\"overrides\":[{\"key\":\"%s\",\"reason\":\"the owner said yes on the telephone\"}]"
                                .formatted(key)));
        assertThat(made.getString("lifted[0].reason")).contains("telephone");
        assertThat(made.getString("lifted[0].by")).isEqualTo(made.getString("recordedBy"));
    }

    /** A rule of the network's own may ask for a second person; nobody agrees with herself. */
    @Test
    void whereTheRuleAsksASecondPersonAgrees() throws SQLException {
        rule("code", "greatestDistance", ",\"greatestDistanceMetres\":50000");
        String id = newCase(",\"dependentYoung\":true").getString("id");
        String key = rule(
                "policy",
                "officerApproval",
                ",\"appliesTo\":\"orphan\",\"appliesDefinition\":\"came as dependent young\",\"asksSecondPerson\":true");
        Api.post(COORDINATOR, "/api/release-rules", """
                        {"jurisdiction":"%s","kind":"code","scientificName":"%s","test":"fairWeather","words":"w","source":"s",
                         "readOn":"2020-01-01","reviewBy":"2090-01-01","validFrom":"2020-01-01","asksSecondPerson":true}
                        """.formatted(jurisdiction, TURTLE))
                .statusCode(400)
                .body("errors[0].field", equalTo("asksSecondPerson"));
        List<String> others = Api.get(
                        COORDINATOR, "/api/assessments/" + assess(id, 0.001).getString("id"))
                .getList("tests.findAll { it.lifting == 'byOverride' && it.verdict != 'pass' }.key", String.class);
        String assessment = assess(id, 0.001).getString("id");
        String more = ",\"overrides\":[%s]";
        String alone = overrides(others, key, "");
        Api.post(COORDINATOR, "/api/releases", release(List.of(id), List.of(assessment), more.formatted(alone)))
                .statusCode(400)
                .body("errors[0].field", containsString("agreedByMemberId"))
                .body("errors[0].wanted", containsString("another"));
        String together = overrides(others, key, ",\"agreedByMemberId\":\"%s\"".formatted(world.carer));
        Json made = Api.make(
                COORDINATOR, "/api/releases", release(List.of(id), List.of(assessment), more.formatted(together)));
        assertThat(made.getString("lifted.find { it.key == '" + key + "' }.agreedByMemberId"))
                .isEqualTo(world.carer);
        try (Connection connection = database.getConnection();
                var herself = connection.createStatement()) {
            assertThatThrownBy(() -> herself.executeUpdate("""
                            insert into liftings (id, release_id, finding_key, kind, reason, agreed_by_member_id, recorded_at,
                                                  recorded_by)
                            select gen_random_uuid(), '%s', 'another', 'override', 'because', member_id, now(), id
                            from accounts where member_id = '%s'
                            """.formatted(made.getString("id"), world.carer)))
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining("herself");
        }
    }

    private static String overrides(List<String> keys, String key, String more) {
        return keys.stream()
                .map(one -> "{\"key\":\"%s\",\"reason\":\"asked\"%s}".formatted(one, one.equals(key) ? more : ""))
                .collect(java.util.stream.Collectors.joining(","));
    }

    @Test
    void whereNoLocalRuleIsEnteredAReleaseAsks() {
        String id = newCase("").getString("id");
        Json assessed = assess(id, 0);
        assertThat(assessed.getList("tests.findAll { it.verdict != 'pass' && it.lifting != 'notNeeded' }.key"))
                .containsExactly("localRuleKnown");
        assertThat(assessed.getString("overall")).isEqualTo("cantTell");
        Api.post(COORDINATOR, "/api/releases", release(List.of(id), List.of(assessed.getString("id")), ""))
                .statusCode(422);
        Api.make(
                COORDINATOR,
                "/api/releases",
                release(
                        List.of(id),
                        List.of(assessed.getString("id")),
                        ",\"overrides\":[{\"key\":\"localRuleKnown\",\"reason\":\"asked the authority by telephone\"}]"));
    }

    @Test
    void anotherPlaceIsConsideredOnceTheFoundOneIsRecordedUnsuitable() {
        rule("code", "foundPlaceFirst", ",\"allowedGrounds\":[{\"key\":\"hazard\",\"words\":\"it is a hazard\"}]");
        String id = newCase("").getString("id");
        String early = assess(id, 0.01).getString("id");
        Api.post(COORDINATOR, "/api/releases", release(List.of(id), List.of(early), ""))
                .statusCode(422)
                .body("reasons[0]", containsString("not recorded as unsuitable"));
        Api.post(
                        RESCUER,
                        "/api/cases/" + id + "/found-place-unsuitable",
                        "{\"ground\":\"tooFar\",\"words\":\"it is far\"}")
                .statusCode(400)
                .body("errors[0].wanted", containsString("hazard"));
        Api.make(
                RESCUER,
                "/api/cases/" + id + "/found-place-unsuitable",
                "{\"ground\":\"hazard\",\"words\":\"the shoulder of the road\"}");
        Api.post(COORDINATOR, "/api/releases", release(List.of(id), List.of(early), ""))
                .statusCode(422)
                .body("reasons[0]", containsString("Assess it again"));
        Json later = assess(id, 0.01);
        assertThat(later.getString("overall")).isEqualTo("pass");
        assertThat(later.getString("tests[0].words")).contains("the shoulder of the road");
        Api.make(COORDINATOR, "/api/releases", release(List.of(id), List.of(later.getString("id")), ""));
    }

    @Test
    void hatchlingsGoAsOneBatchAtTheirMothersPlaceOrNotAtAll() {
        rule("code", "foundPlaceFirst", "");
        Json mother = newCase("");
        List<String> cases = new ArrayList<>();
        List<String> assessments = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            String id = Api.make(CARER, "/api/cases", """
                            {"incidentId":"%s","animal":{"scientificName":"%s","motherAnimalId":"%s"},
                             "foundAt":"2026-03-10T02:00:00Z","holder":{"memberId":"%s"}}
                            """.formatted(
                                    mother.getString("incidentId"),
                                    TURTLE,
                                    mother.getString("animal.id"),
                                    world.incubatorKeeper))
                    .getString("id");
            World.signFit(id, "2026-03-20T02:00:00Z");
            Json assessed = assess(id, 0);
            assertThat(assessed.getString("subject.origin.state")).isEqualTo("ofMother");
            assertThat(assessed.getString("overall")).isEqualTo("pass");
            cases.add(id);
            assessments.add(assessed.getString("id"));
        }
        Api.post(COORDINATOR, "/api/releases", release(cases, assessments.subList(0, 2), ""))
                .statusCode(400);
        String elsewhere = assess(cases.get(2), 0.00001).getString("id");
        Api.post(
                        COORDINATOR,
                        "/api/releases",
                        release(cases, List.of(assessments.get(0), assessments.get(1), elsewhere), ""))
                .statusCode(400)
                .body("errors[0].detail", containsString("different places"));

        // One of them is on its way to another holder: none is let go
        String handOver = Api.make(
                        CARER,
                        "/api/cases/" + cases.get(2) + "/hand-overs",
                        "{\"taker\":{\"organisationId\":\"%s\"}}".formatted(world.clinic))
                .getString("id");
        Api.post(COORDINATOR, "/api/releases", release(cases, assessments, "")).statusCode(409);
        for (String id : cases) {
            assertThat(Api.get(CARER, "/api/cases/" + id).getMap("fate")).isNull();
        }
        Api.post(CLINIC, "/api/hand-overs/" + handOver + "/refusal", "{\"reason\":\"full\"}")
                .statusCode(200);
        Json made = Api.make(
                COORDINATOR,
                "/api/releases",
                release(cases, assessments, ",\"releasedByMemberId\":\"%s\"".formatted(world.incubatorKeeper)));
        assertThat(made.getList("animals.caseId", String.class)).containsExactlyInAnyOrderElementsOf(cases);
        assertThat(Api.get(OFFICER, "/api/releases").getList("items.id")).contains(made.getString("id"));
        for (String id : cases) {
            assertThat(Api.get(CARER, "/api/cases/" + id).getString("fate.releaseId"))
                    .isEqualTo(made.getString("id"));
        }
        Api.post(COORDINATOR, "/api/releases", release(cases, assessments, ""))
                .statusCode(409)
                .body("detail", containsString("released"));
        Api.post(CARER, "/api/assessments", "{\"caseId\":\"%s\",%s}".formatted(cases.get(0), position(0)))
                .statusCode(409);
    }

    @Test
    void whatWasNotLetGoAfterAllIsTakenBackAndMayBeReleasedAgain() {
        rule("code", "foundPlaceFirst", "");
        String id = newCase("").getString("id");
        String assessment = assess(id, 0).getString("id");
        Json made = Api.make(COORDINATOR, "/api/releases", release(List.of(id), List.of(assessment), ""));
        String path = "/api/releases/" + made.getString("id");
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("state")).isEqualTo("ended");
        String released = org.culvert.support.Clocks.now().toString();

        Api.correct(COORDINATOR, path, "{\"approvedBy\":\"Another Vet\",\"reason\":\"misread\"}")
                .statusCode(200)
                .body("approvedBy", equalTo("Another Vet"))
                .body("record.revision", equalTo(2));
        Api.change(COORDINATOR, path, "/animals/" + made.getString("id") + "/withdrawal", "{\"reason\":\"x\"}")
                .statusCode(404);
        Api.change(COORDINATOR, path, "/animals/" + id + "/withdrawal", "{\"reason\":\"it was another turtle\"}")
                .statusCode(200)
                .body("animals[0].withdrawnBecause", equalTo("it was another turtle"));
        Api.change(COORDINATOR, path, "/animals/" + id + "/withdrawal", "{\"reason\":\"x\"}")
                .statusCode(409);
        Json after = Api.get(COORDINATOR, "/api/cases/" + id);
        assertThat(after.getMap("fate")).isNull();
        assertThat(after.getString("custody[-1].to")).isNull();
        // What had been recorded stays to be read as it was.
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id + "?asOf=" + released)
                        .getString("fate.fate"))
                .isEqualTo("released");

        String again = assess(id, 0).getString("id");
        Api.make(COORDINATOR, "/api/releases", release(List.of(id), List.of(again), ""));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("fate.fate"))
                .isEqualTo("released");
    }

    @Test
    void ofTwoReleasesAtOnceOneStands() throws Exception {
        rule("code", "foundPlaceFirst", "");
        for (int round = 0; round < 3; round++) {
            String id = newCase("").getString("id");
            String body = release(List.of(id), List.of(assess(id, 0).getString("id")), "");
            ExecutorService two = Executors.newFixedThreadPool(2);
            try {
                Callable<Integer> post = () ->
                        Api.as(COORDINATOR).body(body).post("/api/releases").statusCode();
                List<Integer> answers = new ArrayList<>();
                for (Future<Integer> answer : two.invokeAll(List.of(post, post))) {
                    answers.add(answer.get());
                }
                assertThat(answers).containsExactlyInAnyOrder(201, 409);
            } finally {
                two.shutdownNow();
            }
        }
    }

    @Test
    void anUnknownOriginIsItsOwnState() {
        rule("code", "foundPlaceFirst", ",\"unknownOrigin\":\"notReleasable\"");
        rule("code", "greatestDistance", ",\"greatestDistanceMetres\":1000");
        String id = newCase(",\"originUnknown\":true").getString("id");
        Json assessed = assess(id, 0);
        assertThat(assessed.getList("tests.findAll { it.kind != null }.verdict"))
                .containsExactly("fail", "cantTell");
        assertThat(assessed.getString("subject.origin.state")).isEqualTo("unknown");
        Api.post(
                        RESCUER,
                        "/api/cases/" + id + "/found-place-unsuitable",
                        "{\"ground\":\"hazard\",\"words\":\"nobody knows\"}")
                .statusCode(409);
    }

    @Test
    void aRulePastItsReviewAsksUntilSomeoneHasReadItsSourceAgain() {
        String key = Api.make(COORDINATOR, "/api/release-rules", """
                        {"jurisdiction":"%s","kind":"code","scientificName":"%s","test":"foundPlaceFirst",
                         "words":"back where it was found","source":"an old edition","readOn":"2019-01-01",
                         "reviewBy":"2020-01-01","validFrom":"2019-01-01"}
                        """.formatted(jurisdiction, TURTLE))
                .getString("id");
        String id = newCase("").getString("id");
        String before = assess(id, 0).getString("id");
        assertThat(Api.get(CARER, "/api/assessments/" + before).getString("overall"))
                .isEqualTo("cantTell");
        Api.post(COORDINATOR, "/api/releases", release(List.of(id), List.of(before), ""))
                .statusCode(422)
                .body("reasons[0]", containsString("read again"));
        Api.post(
                        CARER,
                        "/api/release-rules/" + key + "/reviews",
                        "{\"readOn\":\"2026-11-01\",\"reviewBy\":\"2090-01-01\",\"reason\":\"mine\"}")
                .statusCode(403);
        Api.post(
                        COORDINATOR,
                        "/api/release-rules/" + key + "/reviews",
                        "{\"source\":\"the new edition\",\"readOn\":\"2026-11-01\",\"reviewBy\":\"2090-01-01\",\"reason\":\"read the new edition: unchanged\"}")
                .statusCode(200)
                .body("version", equalTo(1))
                .body("source", equalTo("the new edition"));
        Json after = assess(id, 0);
        assertThat(after.getString("overall")).isEqualTo("pass");
        assertThat(Api.get(CARER, "/api/assessments/" + before).getString("tests[0].rule.source"))
                .isEqualTo("an old edition");
    }

    @Test
    void aSiteIsAssessedWithItsOwnersConsent() {
        rule("statute", "landownerConsent", "");
        String id = newCase("").getString("id");
        for (List<String> consent : List.of(
                List.of("\"landownerConsent\":\"yes\"", "pass"),
                List.of("\"landownerConsent\":\"yes\",\"landownerConsentUntil\":\"2020-01-01\"", "cantTell"),
                List.of("\"landownerConsent\":\"no\"", "fail"),
                List.of("\"catchment\":\"Mill Creek\"", "cantTell"))) {
            String site = Api.make(COORDINATOR, "/api/release-sites", """
                            {"name":"Mill Bank","jurisdiction":"%s","decimalLatitude":-30.5,"decimalLongitude":150.03,
                             "coordinateUncertaintyInMeters":50,"habitat":"fresh water","taxonGroups":["turtles"],%s}
                            """.formatted(jurisdiction, consent.get(0)))
                    .getString("id");
            Json assessed =
                    Api.make(CARER, "/api/assessments", "{\"caseId\":\"%s\",\"siteId\":\"%s\"}".formatted(id, site));
            assertThat(assessed.getString("overall")).isEqualTo(consent.get(1));
            assertThat(Api.get(CARER, "/api/release-sites?limit=1").getList("items.id"))
                    .containsExactly(site);
        }
    }

    @Test
    void whatIsWrongIsNamed() {
        Api.post(COORDINATOR, "/api/release-rules", """
                        {"jurisdiction":"%s","kind":"policy","test":"foundPlaceFirst","words":"w","source":"s",
                         "readOn":"2026-01-01","reviewBy":"2027-01-01","validFrom":"2026-01-01"}
                        """.formatted(jurisdiction))
                .statusCode(400)
                .body("errors[0].field", equalTo("jurisdiction"));
        Api.post(COORDINATOR, "/api/release-rules", """
                        {"jurisdiction":"Queensland","kind":"code","test":"foundPlaceFirst","words":"w","source":"s",
                         "readOn":"2026-01-01","reviewBy":"2027-01-01","validFrom":"2026-01-01"}
                        """).statusCode(400).body("errors.field", hasItem("jurisdiction"));
        Api.post(COORDINATOR, "/api/release-rules", """
                        {"jurisdiction":"%s","kind":"code","test":"greatestDistance","words":"w","source":"s",
                         "readOn":"2026-01-01","reviewBy":"2027-01-01","validFrom":"2026-01-01"}
                        """.formatted(jurisdiction))
                .statusCode(400)
                .body("errors[0].field", equalTo("greatestDistanceMetres"));
        String id = newCase("").getString("id");
        Api.post(CARER, "/api/assessments", "{\"caseId\":\"%s\"}".formatted(id))
                .statusCode(400)
                .body("errors[0].field", equalTo("siteId"));
        rule("code", "foundPlaceFirst", "");
        String assessment = assess(id, 0).getString("id");
        Api.post(
                        COORDINATOR,
                        "/api/releases",
                        release(List.of(id), List.of(assessment), ",\"at\":\"2090-01-01T00:00:00Z\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("at"));
        Api.post(COORDINATOR, "/api/releases", release(List.of(id), List.of(assessment), permit("nothing")))
                .statusCode(400)
                .body("errors[0].field", equalTo("permits"));
    }

    @Test
    void whoMayDoWhatIsSaid() {
        Request.given().get("/api/release-rules").then().statusCode(401);
        for (String path : List.of("/api/assessments", "/api/releases", "/api/release-sites", "/api/release-rules")) {
            Api.as(ROADS_AUTHORITY).get(path).then().statusCode(403);
            Api.as(DISPATCHER).get(path).then().statusCode(403);
            Api.as(OFFICER).get(path).then().statusCode(200);
        }
        for (String role : List.of(CARER, CLINIC, RESCUER, OFFICER)) {
            Api.post(role, "/api/releases", "{}").statusCode(403);
            Api.post(role, "/api/release-rules", "{}").statusCode(403);
            Api.post(role, "/api/release-sites", "{}").statusCode(403);
        }
    }
}
