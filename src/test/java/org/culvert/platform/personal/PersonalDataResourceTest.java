package org.culvert.platform.personal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.personal.PersonalWorld.call;
import static org.culvert.platform.personal.PersonalWorld.callView;
import static org.culvert.platform.personal.PersonalWorld.callerOf;
import static org.culvert.platform.personal.PersonalWorld.person;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What people may ask for, by what the law says of it: a copy of what is held, its purposes, source and period (Regulation
 * (EU) 2016/679, article 15; Australian Privacy Principle 12), restriction (article 18), and erasure once no legal obligation
 * to keep it is left (article 17(1) and (3)(b); Australian Privacy Principle 11.2). The articles from memory.
 */
@QuarkusTest
@OnOldestDatabase
class PersonalDataResourceTest {
    private static final String LONG_AGO = "2015-03-04T05:00:00Z";

    @Inject
    DataSource database;

    @ConfigProperty(name = "culvert.erasures")
    String list;

    private World world;

    @BeforeEach
    void makeAWorld() {
        world = World.shared();
        PersonalWorld.endDuties();
    }

    @AfterEach
    void letOthersKeepTheirPeople() {
        PersonalWorld.endDuties();
    }

    @Test
    void whoIsHiddenIsHiddenAtOnceAndEverywhere() {
        String id = call(
                "2026-02-01T08:00:00Z",
                "{\"name\":\"Thea Hidewell\",\"phone\":\"0491 570 156\"}",
                "It is Thea, by the gum tree");
        String incident = callView(id).getString("incidentId");
        assertThat(callView(id).getString("caller.name")).isEqualTo("Thea Hidewell");
        String before = java.time.Instant.now().toString();

        Json found = Api.post(COORDINATOR, "/api/people/search", "{\"phone\":\"0491570156\"}")
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(found.getList("id")).containsExactly(callerOf(id));
        String who = person(found.getString("[0].id"));
        Api.as(COORDINATOR)
                .body("{\"reason\":\"no tag\"}")
                .post(who + "/hiding")
                .then()
                .statusCode(428);
        Api.change(COORDINATOR, who, "/hiding", "{\"reason\":\"is being followed\"}")
                .statusCode(200);

        for (String role : List.of(DISPATCHER, COORDINATOR)) {
            for (String path :
                    List.of("/api/calls/" + id, "/api/incidents/" + incident, "/api/calls/" + id + "?asOf=" + before)) {
                String shown =
                        Api.as(role).get(path).then().statusCode(200).extract().asString();
                assertThat(shown).as(role + " " + path).doesNotContain("Hidewell", "570 156", "570156", "gum tree");
            }
        }
        assertThat(callView(id).getBoolean("callerHidden")).isTrue();
        Api.change(COORDINATOR, who, "/hiding", "{\"reason\":\"again\"}").statusCode(409);
        Api.change(COORDINATOR, who, "/showing", "{\"reason\":\"asked for it\"}")
                .statusCode(200);
        assertThat(callView(id).getString("words")).isEqualTo("It is Thea, by the gum tree");
    }

    @Test
    void aPersonGetsEverythingThatIsHeldOfThem() {
        String id = call("2026-02-02T08:00:00Z", "{\"name\":\"Ida Askew\",\"phone\":\"0491 570 157\"}", "first words");
        Api.correct(
                        COORDINATOR,
                        "/api/calls/" + id,
                        "{\"caller\":{\"name\":\"Ida Asquith\",\"phone\":\"0491 570 157\"},\"words\":\"second words\","
                                + "\"reason\":\"spelled it\"}")
                .statusCode(200);
        String who = callerOf(id);
        Json data = Api.get(COORDINATOR, person(who) + "/data");
        assertThat(data.getString("person.name")).isEqualTo("Ida Asquith");
        assertThat(data.getList("earlier.name")).containsExactly("Ida Askew");
        assertThat(data.getList("calls.callId")).containsExactly(id);
        assertThat(data.getList("calls.words")).containsExactly("second words");
        assertThat(data.getList("earlierWords.words")).containsExactly("first words");
        assertThat(data.getString("purposes")).isNotBlank();
        assertThat(data.getString("source")).isNotBlank();
        assertThat(data.getString("recipients")).isNotBlank();
        assertThat(data.getString("person.why")).contains("no rule");
        Api.as(DISPATCHER).get(person(who) + "/data").then().statusCode(403);
    }

    @Test
    void aMemberGetsTheirsToo() {
        String id = Api.get(ADMIN, "/api/members/" + world.vaccinated).getString("callSign");
        String who = Api.post(COORDINATOR, "/api/people/search", "{\"name\":\"" + id + "\"}")
                .statusCode(200)
                .extract()
                .jsonPath()
                .getString("[0].id");
        Json data = Api.get(COORDINATOR, person(who) + "/data");
        assertThat(data.getString("membership.memberId")).isEqualTo(world.vaccinated);
        assertThat(data.getList("vaccinations.against")).containsExactly("lyssavirus");
        assertThat(data.getString("person.kind")).isEqualTo("members");
        assertThat(data.getString("person.why")).contains("while they are a member");
    }

    @Test
    void theLongestDutyRulesAndNobodyIsErasedBeforeItEnds() throws SQLException {
        String id = call(LONG_AGO, "{\"name\":\"Otto Keepsake\",\"phone\":\"0491 570 158\"}", "old words");
        String who = person(callerOf(id));
        assertThat(Api.get(COORDINATOR, who).getString("dueOn")).isNull();
        refusedToErase(callerOf(id));

        PersonalWorld.enterDuties("people");
        // 4 March 2015 and five years, by the longer of the two duties; three would have ended in 2018.
        assertThat(Api.get(COORDINATOR, who).getString("dueOn")).isEqualTo("2020-03-05");
        assertThat(Api.get(COORDINATOR, who).getString("why")).contains("5 years", "US-WA");

        // A case that goes on keeps whoever rang about it, and one that ended counts from its end.
        String incident = callView(id).getString("incidentId");
        String animal = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis"},"foundAt":"2015-03-04T06:00:00Z",
                         "holder":{"organisationId":"%s"}}
                        """.formatted(incident, world.clinic))
                .getString("id");
        assertThat(Api.get(COORDINATOR, who).getString("dueOn")).isNull();
        assertThat(Api.get(COORDINATOR, who).getString("why")).contains("goes on");
        refusedToErase(callerOf(id));
        Api.change(COORDINATOR, "/api/cases/" + animal, "/fate", "{\"fate\":\"died\",\"at\":\"2024-07-01T00:00:00Z\"}")
                .statusCode(200);
        assertThat(Api.get(COORDINATOR, who).getString("dueOn")).isEqualTo("2029-07-02");
        refusedToErase(callerOf(id));

        // Who asks is hidden at once, told when, and erased no sooner.
        Api.change(COORDINATOR, who, "/erasure-request", "{\"askedAt\":\"2026-01-01T00:00:00Z\",\"reason\":\"please\"}")
                .statusCode(200)
                .body("dueOn", equalTo("2029-07-02"))
                .body("erasureRequestedAt", equalTo("2026-01-01T00:00:00Z"));
        assertThat(callView(id).getBoolean("callerHidden")).isTrue();
        PersonalWorld.eraseWhoIsDue();
        assertThat(Api.get(COORDINATOR, who).getString("name")).isEqualTo("Otto Keepsake");
    }

    @Test
    void whoIsDueIsErasedFromEveryTableAndEveryPast() throws SQLException, IOException {
        List<String> marks = List.of("Quillfeather", "570-159", "0491 570 159", "quill@example.org", "hear from Quill");
        String key = UUID.randomUUID().toString();
        String body = """
                {"receivedAt":"%s","people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"Chelodina longicollis","vitality":"alive","condition":"Ada Quillfeather saw it"}],
                 "caller":{"name":"Ada Quillfeather","phone":"0491 570 159","email":"quill@example.org"},
                 "words":"you will hear from Quill again"}
                """.formatted(LONG_AGO);
        Answer first =
                Api.as(DISPATCHER).header("Idempotency-Key", key).body(body).post("/api/calls");
        first.then().statusCode(201);
        String id = first.jsonPath().getString("callId");
        String who = callerOf(id);
        Api.correct(
                        COORDINATOR,
                        "/api/calls/" + id,
                        "{\"caller\":{\"name\":\"Ada Quillfeather-Dunn\",\"phone\":\"0491 570 159\"},"
                                + "\"words\":\"you may hear from Quill\",\"reason\":\"Ada Quillfeather rang again\"}")
                .statusCode(200);
        // Somebody else's words about her, and a body's way: what people type may name anyone.
        String other =
                call("2026-03-03T00:00:00Z", "{\"name\":\"Ben\"}", "Ada Quillfeather stopped too, ring 0491-570-159");
        String animal = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis"},"foundAt":"2015-03-04T06:00:00Z",
                         "holder":{"organisationId":"%s"}}
                        """.formatted(
                                first.jsonPath().getString("incidentId"), world.clinic))
                .getString("id");
        Api.post(
                        COORDINATOR,
                        "/api/cases/" + animal + "/whereabouts",
                        "{\"words\":\"in a box with ADA QUILLFEATHER\",\"at\":\"2015-03-04T07:00:00Z\"}")
                .statusCode(200);
        Api.make(COORDINATOR, "/api/cases/" + animal + "/fitness-checks", """
                {"at":"2015-03-04T08:00:00Z","vetName":"Dr Vet","vetRegistration":"V-1",
                 "items":[{"aspect":"movement","answer":"fit"}],"words":"as Ada Quillfeather saw"}
                """);
        String hold = Api.make(
                        COORDINATOR,
                        "/api/cases/" + animal + "/holds",
                        "{\"kind\":\"asked\",\"askedBy\":\"Ada Quillfeather\",\"since\":\"2015-03-04T07:00:00Z\"}")
                .getString("id");
        Api.change(
                        COORDINATOR,
                        "/api/holds/" + hold,
                        "/clearing",
                        "{\"by\":\"licensedVet\",\"name\":\"Dr Vet\",\"reference\":\"Ada Quillfeather rang\"}")
                .statusCode(200);
        String decision = Api.make(COORDINATOR, "/api/cases/" + animal + "/non-release-decisions", """
                        {"grounds":["injury"],"words":"as the film shows","vetName":"Ada Quillfeather","vetRegistration":"V-1",
                         "decidedAt":"2015-03-04T09:00:00Z"}
                        """)
                .getString("id");
        Api.post(COORDINATOR, "/api/non-release-decisions/" + decision + "/second-opinion", """
                        {"vetName":"Ada Quillfeather the younger","vetRegistration":"V-2","agrees":true,"words":"so it is",
                         "at":"2015-03-04T10:00:00Z"}
                        """)
                .statusCode(200);
        Api.change(COORDINATOR, "/api/cases/" + animal, "/fate", "{\"fate\":\"died\",\"at\":\"2015-03-05T00:00:00Z\"}")
                .statusCode(200);
        disclose("for Ada Quillfeather");
        Map<String, Integer> before = PersonalWorld.whereItStands(database, marks);
        assertThat(before.keySet())
                .anyMatch(place -> place.startsWith("personal.people "))
                .anyMatch(place -> place.startsWith("personal.words "))
                .anyMatch(place -> place.startsWith("personal.revisions "))
                .anyMatch(place -> place.startsWith("public.whereabouts "))
                .anyMatch(place -> place.startsWith("public.reported_animals "))
                .anyMatch(place -> place.startsWith("public.calls "))
                .anyMatch(place -> place.startsWith("public.fitness_checks "))
                .anyMatch(place -> place.startsWith("public.holds "))
                .anyMatch(place -> place.startsWith("public.non_release_decisions "))
                .anyMatch(place -> place.startsWith("public.second_opinions "))
                .anyMatch(place -> place.startsWith("public.disclosures "));

        PersonalWorld.enterDuties("people");
        assertThat(PersonalWorld.eraseWhoIsDue()).isPositive();

        assertThat(PersonalWorld.whereItStands(database, marks)).isEmpty();
        assertThat(Files.readString(Path.of(list)))
                .contains(" erased " + who + "\n")
                .doesNotContain("Quill");
        Api.as(COORDINATOR)
                .get(person(who))
                .then()
                .statusCode(200)
                .body("name", nullValue())
                .body("why", containsString("Erased"));
        assertThat(Api.get(COORDINATOR, "/api/erasures?limit=1000").getList("items.personId"))
                .contains(who);
        // The rest stands, and says that something was taken out.
        assertThat(Api.get(COORDINATOR, "/api/cases/" + animal + "/whereabouts").getString("[0].words"))
                .isEqualTo("in a box with [erased]");
        assertThat(callView(other).getString("words")).isEqualTo("[erased] stopped too, ring [erased]");
        assertThat(callView(id).getInt("animals.size()")).isOne();
        // A retry is not made twice, and shows nobody.
        Answer retried =
                Api.as(DISPATCHER).header("Idempotency-Key", key).body(body).post("/api/calls");
        assertThat(retried.statusCode()).isEqualTo(201);
        assertThat(retried.asString()).isEmpty();
        // Who rings again is somebody new.
        Api.change(COORDINATOR, person(who), "/hiding", "{\"reason\":\"x\"}").statusCode(409);
        Api.correct(COORDINATOR, "/api/calls/" + id, "{\"caller\":{\"name\":\"Cleo\"},\"reason\":\"rang anew\"}")
                .statusCode(200);
        assertThat(callerOf(id)).isNotEqualTo(who);
        assertThat(callView(id).getString("caller.name")).isEqualTo("Cleo");
    }

    /** What is kept for ever by its trigger is swept too. */
    private void disclose(String filter) throws SQLException {
        String agreement = Api.make(COORDINATOR, "/api/agreements", """
                        {"recipient":"test-recipient","purpose":"research","documentReference":"R 1",
                         "validFrom":"2026-01-01","validTo":"2026-01-02"}
                        """).getString("id");
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("insert into disclosures (id, agreement_id, account_id, records, filter, happened_at,"
                    + " recorded_at, recorded_by) select gen_random_uuid(), id, recipient_account_id, 1, '" + filter
                    + "', now(), now(), recorded_by from agreements where id = '" + agreement + "'");
        }
    }

    @Test
    void whoIsStillKeptKeepsWhatTheyShareWithWhoIsErased() {
        String caller = "{\"name\":\"Nell Samename\",\"phone\":\"0491 570 110\"}";
        String old = call(LONG_AGO, caller, "long ago");
        String young = call("2026-03-01T00:00:00Z", caller, "Nell Samename here");
        PersonalWorld.enterDuties("people");
        PersonalWorld.eraseWhoIsDue();
        assertThat(Api.get(COORDINATOR, person(callerOf(old))).getString("erasedAt"))
                .isNotNull();
        assertThat(callView(young).getString("caller.phone")).isEqualTo("0491 570 110");
        assertThat(callView(young).getString("words")).isEqualTo("Nell Samename here");
    }

    @Test
    void aMemberWhoLeftIsErasedWithTheirAccount() throws SQLException {
        List<String> marks = List.of("Gorsewick", "gorse-1", "gorsewick-signs-in", "0491 570 111", "V-90210");
        String member =
                Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"gorse-1","name":"Pip Gorsewick","phone":"0491 570 111",
                         "homeLatitude":-30.49,"homeLongitude":150.01,"attends":true,"cares":true,"vetRegistration":"V-90210"}
                        """.formatted(world.network)).getString("id");
        Api.make(ADMIN, "/api/vaccinations", """
                {"memberId":"%s","against":"lyssavirus","givenOn":"2010-01-01","currentUntil":"2013-01-01","basis":"booster"}
                """.formatted(member));
        Api.make(ADMIN, "/api/accounts", """
                {"username":"gorsewick-signs-in","password":"a long enough one","roles":["carer"],"memberId":"%s"}
                """.formatted(member));
        PersonalWorld.enterDuties("members");
        String who = Api.post(COORDINATOR, "/api/people/search", "{\"name\":\"Gorsewick\"}")
                .statusCode(200)
                .extract()
                .jsonPath()
                .getString("[0].id");
        PersonalWorld.eraseWhoIsDue();
        assertThat(Api.get(COORDINATOR, person(who)).getString("name")).isEqualTo("Pip Gorsewick");

        Api.correct(ADMIN, "/api/members/" + member, "{\"leftOn\":\"2014-06-30\",\"reason\":\"left\"}")
                .statusCode(200);
        assertThat(Api.get(COORDINATOR, person(who)).getString("dueOn")).isEqualTo("2019-07-01");
        PersonalWorld.eraseWhoIsDue();

        assertThat(PersonalWorld.whereItStands(database, marks)).isEmpty();
        assertThat(Api.get(ADMIN, "/api/members/" + member).getString("callSign"))
                .startsWith("former-");
        Api.as(CLINIC)
                .get("/api/vaccinations")
                .then()
                .statusCode(org.hamcrest.Matchers.anyOf(equalTo(404), equalTo(405)));
        assertThat(rows("select 1 from personal.vaccinations where member_id = '" + member + "' and erased_at is null"))
                .isZero();
        assertThat(rows("select 1 from passwords p join accounts a on a.id = p.account_id where a.member_id = '"
                        + member + "'"))
                .isZero();
    }

    @Test
    void theServersOwnRoleErasesNobodyOutOfTurn() throws SQLException {
        String who = callerOf(call("2026-03-02T00:00:00Z", "{\"name\":\"Una Early\"}", "words"));
        PersonalWorld.enterDuties("people");
        refusedToErase(who);
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertThat(refusal(statement, "select personal.erase('" + who + "', timestamptz '2999-01-01')"))
                    .isEqualTo("23000");
            assertThat(refusal(statement, "select personal.erase_now('" + who + "', now(), null)"))
                    .isEqualTo("42501");
            assertThat(refusal(statement, "select personal.sweep(array['.'], now())"))
                    .isEqualTo("42501");
            assertThat(refusal(
                            statement,
                            "insert into erasures (person_id, kind, happened_at, recorded_at, recorded_by)"
                                    + " select '" + who + "', 'people', now(), now(), id from accounts limit 1"))
                    .isEqualTo("42501");
            assertThat(refusal(statement, "set culvert.erasing = 'on'; update imports set file_name = 'x'"))
                    .isEqualTo(rows("select 1 from imports") > 0 ? "23000" : "");
        }
    }

    @Test
    void tooLittleToLookForIsSaid() {
        Api.post(COORDINATOR, "/api/people/search", "{\"name\":\"a\"}")
                .statusCode(400)
                .body("errors[0].wanted", containsString("3 letters or digits"));
        // Wildcards are letters like others.
        Api.post(COORDINATOR, "/api/people/search", "{\"name\":\"%%%\"}")
                .statusCode(200)
                .body("size()", equalTo(0));
    }

    private void refusedToErase(String who) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertThat(refusal(statement, "select personal.erase('" + who + "', now())"))
                    .isEqualTo("23000");
        }
    }

    private static String refusal(Statement statement, String sql) {
        try {
            statement.execute(sql);
            return "";
        } catch (SQLException e) {
            return e.getSQLState();
        }
    }

    private int rows(String sql) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                var rows = statement.executeQuery("select count(*) from (" + sql + ") counted")) {
            rows.next();
            return rows.getInt(1);
        }
    }
}
