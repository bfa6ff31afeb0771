package org.culvert.care.health;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class ExposureResourceTest {
    private static final String FLYING_FOX = "Pteropus poliocephalus";
    private static final String TURTLE = "Chelodina longicollis";
    private static final String AT = "2026-02-10T03:00:00Z";

    @Inject
    DataSource database;

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private Json newCase(String taxon) {
        return Api.make(RESCUER, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-02-10T02:00:00Z",
                 "holder":{"memberId":"%s"}}
                """.formatted(
                        World.call(taxon, 150.07, "").getString("incidentId"), taxon, world.rescuer));
    }

    private static String body(String kind, String exposed, String more) {
        return "{\"kind\":\"%s\",\"exposed\":%s,\"washed\":\"unknown\",\"happenedAt\":\"%s\"%s}"
                .formatted(kind, exposed, AT, more);
    }

    private static String of(String caseId) {
        return ",\"caseId\":\"" + caseId + "\"";
    }

    private String rescuer() {
        return "{\"memberId\":\"" + world.rescuer + "\"}";
    }

    private static Json enter(String kind, String exposed, String more) {
        return Api.make(RESCUER, "/api/exposures", body(kind, exposed, more));
    }

    private static String words(Json answer) {
        return String.join(" ", answer.getList("advice.sentence", String.class));
    }

    private static List<Object> exposureHolds(String caseId) {
        return Api.get(COORDINATOR, "/api/cases/" + caseId + "/holds").getList("findAll { it.kind == 'exposure' }.id");
    }

    /**
     * At least five minutes: NSW Health, media release of 22 October 2014. At least fifteen, and for the vaccinated too:
     * Queensland Health, page on Australian bat lyssavirus. A biter is quarantined: DCMR 19-1567.
     */
    @Test
    void aScratchHoldsTheAnimalAndTellsWhatToDoNow() {
        String caseId = newCase(FLYING_FOX).getString("id");
        Json receipt = enter(
                "scratch", rescuer(), of(caseId) + ",\"bodyPart\":\"left forearm\",\"protectiveKit\":\"thin gloves\"");
        assertThat(receipt.getString("hold")).isEqualTo("set");
        assertThat(exposureHolds(caseId)).containsExactly(receipt.getString("holdId"));
        assertThat(Api.get(COORDINATOR, "/api/holds/" + receipt.getString("holdId"))
                        .getString("since"))
                .isEqualTo(AT);
        assertThat(words(receipt))
                .contains("at once and thoroughly", "at least 5", "at least 15")
                .contains("Ring the public health unit now, even if vaccinated")
                .contains("neither released nor disposed of until cleared")
                .doesNotContainPattern("(?i)dose|lawful|legal|safe");
        assertThat(receipt.getList("advice.source", String.class))
                .anyMatch(source -> source.contains("NSW Health") && source.contains("Queensland Health"))
                .anyMatch(source -> source.contains("DCMR 19-1567"));
        assertThat(receipt.prettify()).doesNotContain("forearm", world.rescuer);

        // A second person, or the same one again: the hold that stands is enough
        assertThat(enter("lick", "{\"name\":\"Pat Lickspittle\"}", of(caseId)).getString("hold"))
                .isEqualTo("kept");
        assertThat(exposureHolds(caseId)).hasSize(1);
    }

    @Test
    void whatIsRefusedHoldsNothing() {
        String caseId = newCase(FLYING_FOX).getString("id");
        for (String[] wrong : new String[][] {
            {body("bite", "{}", of(caseId)), "exposed"},
            {body("bite", "{\"memberId\":\"%s\",\"name\":\"A\"}".formatted(world.rescuer), of(caseId)), "exposed"},
            {body("bite", "{\"name\":\"A\",\"guardianPhone\":\"555\"}", of(caseId)), "exposed.guardianName"},
            {body("bite", rescuer(), of(caseId) + ",\"washedMinutes\":5"), "washedMinutes"},
            {body("bite", rescuer(), of(caseId) + ",\"needleUsedOnAnimal\":\"no\""), "needleUsedOnAnimal"},
            {
                body(
                        "bite",
                        rescuer(),
                        of(caseId) + ",\"told\":{\"unit\":\"the unit\",\"by\":\"me\",\"at\":\"2026-02-10T02:59:59Z\"}"),
                "at"
            },
            {body("bite", rescuer(), of(caseId)).replace("2026", "2126"), "happenedAt"},
            {
                body(
                        "bite",
                        rescuer(),
                        of(caseId)
                                + ",\"incidentId\":\"%s\""
                                        .formatted(
                                                World.call(TURTLE, 150.07, "").getString("incidentId"))),
                "caseId"
            }
        }) {
            Api.post(RESCUER, "/api/exposures", wrong[0]).statusCode(400).body("errors.field", hasItem(wrong[1]));
        }
        assertThat(exposureHolds(caseId)).isEmpty();
    }

    @Test
    void theAnimalIsNeitherReleasedNorDisposedOfUntilTheAuthorityClearsIt() {
        String caseId = newCase(FLYING_FOX).getString("id");
        World.signFit(caseId, "2026-02-20T02:00:00Z");
        String hold = enter("bite", rescuer(), of(caseId)).getString("holdId");
        String assessment =
                Api.make(COORDINATOR, "/api/assessments", """
                        {"caseId":"%s","position":{"jurisdiction":"XE","decimalLatitude":-30.5,"decimalLongitude":150.07,
                         "coordinateUncertaintyInMeters":10},"light":"day","weather":"fair"}
                        """.formatted(caseId)).getString("id");
        Api.post(COORDINATOR, "/api/releases", """
                        {"caseIds":["%s"],"assessmentIds":["%s"],"approvedBy":"Dr Vet"}
                        """.formatted(caseId, assessment))
                .statusCode(422);
        assertThat(Api.get(COORDINATOR, "/api/assessments/" + assessment)
                        .getString("tests.find { it.key == 'healthHold.exposure' }.verdict"))
                .isEqualTo("fail");
        Api.change(COORDINATOR, "/api/cases/" + caseId, "/fate", "{\"fate\":\"died\"}")
                .statusCode(200);
        Api.change(COORDINATOR, "/api/cases/" + caseId, "/body/disposal", "{\"disposal\":\"incinerated\"}")
                .statusCode(409)
                .body("detail", containsString("until the hold has been cleared"));
        Api.change(COORDINATOR, "/api/holds/" + hold, "/clearing", """
                        {"by":"licensedVet","name":"Dr Vet","reference":"V-1"}
                        """).statusCode(400);
        Api.change(COORDINATOR, "/api/holds/" + hold, "/clearing", """
                        {"by":"authority","name":"the public health unit","reference":"PHU-3"}
                        """).statusCode(200);
        Api.change(COORDINATOR, "/api/cases/" + caseId, "/body/disposal", "{\"disposal\":\"incinerated\"}")
                .statusCode(200);
        // A new concern is a new hold, of a case that ended too
        Json later = enter("bite", rescuer(), of(caseId));
        assertThat(later.getString("hold")).isEqualTo("set");
        assertThat(words(later)).contains("has ended");
    }

    /** Venom is no lyssavirus question; a needle counts unless it is known not to have been in the animal. Derived. */
    @Test
    void venomHoldsNothingAndANeedleOnlyFromThatAnimal() {
        String caseId = newCase(FLYING_FOX).getString("id");
        Json venom = enter("venom", rescuer(), of(caseId));
        assertThat(venom.getString("hold")).isEqualTo("none");
        assertThat(venom.getString("advice[0].sentence")).startsWith("Ring the emergency number first");
        assertThat(venom.getString("advice[0].source")).contains("no source");
        Json elsewhere = enter("needle", rescuer(), of(caseId) + ",\"needleUsedOnAnimal\":\"no\"");
        assertThat(elsewhere.getString("hold")).isEqualTo("none");
        assertThat(exposureHolds(caseId)).isEmpty();
        Api.correct(COORDINATOR, "/api/exposures/" + elsewhere.getString("id"), """
                        {"needleUsedOnAnimal":"unknown","reason":"nobody is sure"}
                        """)
                .statusCode(200)
                .body("animalHeld", equalTo(true));
        assertThat(exposureHolds(caseId)).hasSize(1);
        assertThat(enter("needle", rescuer(), of(caseId)).getString("hold")).isEqualTo("kept");
    }

    @Test
    void anAnimalIsNamedLaterAndThenStays() {
        String incident = World.call(FLYING_FOX, 150.07, "").getString("incidentId");
        Json receipt =
                Api.make(DISPATCHER, "/api/exposures", body("bite", rescuer(), ",\"incidentId\":\"" + incident + "\""));
        assertThat(receipt.getString("hold")).isEqualTo("none");
        assertThat(words(receipt)).contains("No animal is named, so none is held");
        String path = "/api/exposures/" + receipt.getString("id");
        String another = newCase(FLYING_FOX).getString("id");
        String naming = "{\"caseId\":\"%s\",\"reason\":\"it has a case now\"}";
        Api.correct(COORDINATOR, path, naming.formatted(another))
                .statusCode(400)
                .body("errors[0].field", equalTo("caseId"));
        String caseId = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"holder":{"memberId":"%s"}}
                        """.formatted(incident, FLYING_FOX, world.rescuer))
                .getString("id");
        assertThat(exposureHolds(another)).isEmpty();
        Api.correct(COORDINATOR, path, naming.formatted(caseId))
                .statusCode(200)
                .body("animalHeld", equalTo(true))
                .body("incidentId", equalTo(incident));
        assertThat(exposureHolds(caseId)).hasSize(1);
        Api.correct(COORDINATOR, path, naming.formatted(another)).statusCode(400);
    }

    /** No record is no vaccination; bats ask for one against lyssavirus: Australian Immunisation Handbook, node 649. */
    @Test
    void vaccinationIsShownAsOfThatDayAndUnknownIsNone() {
        String bat = of(newCase(FLYING_FOX).getString("id"));
        assertThat(vaccinations(enter("bite", rescuer(), bat))).containsExactly("lyssavirus: false");
        assertThat(vaccinations(enter("bite", "{\"memberId\":\"" + world.vaccinated + "\"}", bat)))
                .containsExactly("lyssavirus: true");
        assertThat(vaccinations(enter("bite", "{\"name\":\"Somebody Passing\"}", bat)))
                .containsExactly("lyssavirus: false");
        assertThat(vaccinations(enter("bite", rescuer(), of(newCase(TURTLE).getString("id")))))
                .isEmpty();
        // Nobody knows what it was: whatever is asked of any animal is asked
        assertThat(vaccinations(enter("bite", rescuer(), ""))).contains("lyssavirus: false");
        String before = Api.make(
                        RESCUER,
                        "/api/exposures",
                        body("bite", "{\"memberId\":\"" + world.vaccinated + "\"}", bat)
                                .replace(AT, "2009-12-31T02:00:00Z"))
                .getString("id");
        assertThat(Api.get(COORDINATOR, "/api/exposures/" + before).getString("vaccinations[0].sentence"))
                .isEqualTo("Not shown to be vaccinated against lyssavirus on that day.");
    }

    private static List<String> vaccinations(Json receipt) {
        return Api.get(COORDINATOR, "/api/exposures/" + receipt.getString("id"))
                .<Map<String, Object>>getList("vaccinations")
                .stream()
                .map(vaccination -> vaccination.get("against") + ": " + vaccination.get("shown"))
                .toList();
    }

    @Test
    void veryFewReadWhomItConcernsAndEachTheirOwn() {
        String caseId = newCase(FLYING_FOX).getString("id");
        String mine = enter("bite", rescuer(), of(caseId) + ",\"bodyPart\":\"right ear\"")
                .getString("id");
        String child = enter("scratch", """
                        {"name":"Wren Smallchild","phone":"0491 574 118","guardianName":"Robin Smallchild",
                         "guardianPhone":"0491 574 632"}
                        """, of(caseId)).getString("id");
        for (String role : List.of(DISPATCHER, RESCUER, CLINIC, CARER, OFFICER, ROADS_AUTHORITY, RECIPIENT)) {
            Api.as(role).get("/api/exposures").then().statusCode(403);
            Api.as(role).get("/api/exposures/" + mine).then().statusCode(403);
        }
        for (String role : List.of(COORDINATOR, ADMIN)) {
            Json whole = Api.get(role, "/api/exposures/" + child);
            assertThat(whole.getString("exposed.name")).isEqualTo("Wren Smallchild");
            assertThat(whole.getString("exposed.guardianPhone")).isEqualTo("0491 574 632");
            assertThat(whole.getBoolean("animalHeld")).isTrue();
        }
        Json own = Api.get(RESCUER, "/api/my-exposures");
        assertThat(own.getList("id")).contains(mine).doesNotContain(child);
        assertThat(own.getString("find { it.id == '" + mine + "' }.bodyPart")).isEqualTo("right ear");
        assertThat(Api.get(CARER, "/api/my-exposures").getList("id")).isEmpty();
        assertThat(Api.get(CLINIC, "/api/my-exposures").getList("id")).isEmpty();
        Api.as(OFFICER).get("/api/my-exposures").then().statusCode(403);
        // The others learn that the animal is held, and that whom it concerns is kept elsewhere
        String held = Api.as(RESCUER).get("/api/cases/" + caseId + "/holds").asString();
        assertThat(held).contains("kept elsewhere, for very few").doesNotContain("Smallchild", "right ear", child);
        for (String role : List.of(COORDINATOR, RESCUER)) {
            Api.as(role).get("/api/records/" + mine + "/revisions").then().statusCode(404);
        }
        // Somebody else's animal cannot be told of
        String theirs = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"holder":{"organisationId":"%s"}}
                        """.formatted(
                                World.call(FLYING_FOX, 150.07, "").getString("incidentId"),
                                FLYING_FOX,
                                Api.make(ADMIN, "/api/organisations", """
                                                {"kind":"shelter","name":"Shelter %s","xRay":false,"surgery":false}
                                                """.formatted(UUID.randomUUID()))
                                        .getString("id")))
                .getString("id");
        Api.post(CARER, "/api/exposures", body("bite", rescuer(), of(theirs))).statusCode(404);
        assertThat(exposureHolds(theirs)).isEmpty();
    }

    @Test
    void whoIsHiddenIsHiddenHereToo() {
        String id = enter(
                        "bite",
                        "{\"name\":\"Hedda Hidewell\",\"phone\":\"0491 575 254\"}",
                        ",\"words\":\"Hedda sat by the gum tree\"")
                .getString("id");
        String person = Api.get(COORDINATOR, "/api/exposures/" + id).getString("exposed.personId");
        Api.change(COORDINATOR, "/api/people/" + person, "/hiding", "{\"reason\":\"is being followed\"}")
                .statusCode(200);
        String shown = Api.as(COORDINATOR).get("/api/exposures/" + id).asString();
        assertThat(shown).doesNotContain("Hidewell", "575 254", "gum tree").contains("\"hidden\":true");
    }

    @Test
    void whatWasNotToldIsListedUntilItIsAndThenClosed() {
        String caseId = newCase(FLYING_FOX).getString("id");
        String id = enter("bite", rescuer(), of(caseId)).getString("id");
        String told = enter(
                        "bite",
                        rescuer(),
                        of(caseId) + ",\"told\":{\"unit\":\"the public health unit\",\"by\":\"A Rescuer\"}")
                .getString("id");
        String venom = enter("venom", rescuer(), of(caseId)).getString("id");
        String withdrawn = enter("bite", rescuer(), of(caseId)).getString("id");
        String path = "/api/exposures/" + id;
        Api.change(COORDINATOR, "/api/exposures/" + withdrawn, "/withdrawal", "{\"reason\":\"another one\"}")
                .statusCode(200);
        assertThat(untold(caseId)).containsExactly(id);
        Json page = Api.get(COORDINATOR, "/api/exposures?limit=2&caseId=" + caseId);
        assertThat(page.getList("items.id")).containsExactly(id, told);
        assertThat(Api.get(COORDINATOR, "/api/exposures?limit=2&caseId=" + caseId + "&cursor=" + page.getString("next"))
                        .getList("items.id"))
                .containsExactly(venom, withdrawn);

        String closing = "{\"by\":\"the public health unit\",\"outcome\":\"followed up\"}";
        Api.change(COORDINATOR, path, "/closing", closing)
                .statusCode(409)
                .body("detail", containsString("has not been told yet"));
        String telling =
                "{\"unit\":\"the public health unit\",\"by\":\"The coordinator\",\"at\":\"2026-02-10T04:00:00Z\"}";
        Api.change(COORDINATOR, path, "/telling", telling.replace("04:00", "02:00"))
                .statusCode(400);
        Api.post(COORDINATOR, path + "/telling", telling).statusCode(428);
        Api.change(COORDINATOR, path, "/telling", telling).statusCode(200).body("told.by", equalTo("The coordinator"));
        Api.change(COORDINATOR, path, "/telling", telling).statusCode(409);
        assertThat(untold(caseId)).isEmpty();
        Api.correct(
                        COORDINATOR,
                        path,
                        "{\"toldReference\":\"PHU-12\",\"washed\":\"yes\",\"washedMinutes\":15,\"reason\":\"asked\"}")
                .statusCode(200)
                .body("told.reference", equalTo("PHU-12"))
                .body("record.revision", equalTo(3));
        Api.change(COORDINATOR, path, "/closing", closing)
                .statusCode(200)
                .body("closing.outcome", equalTo("followed up"))
                // Of the animal only the authority says that
                .body("animalHeld", equalTo(true));
        Api.correct(COORDINATOR, path, "{\"words\":\"more\",\"reason\":\"late\"}")
                .statusCode(409);
    }

    private static List<String> untold(String caseId) {
        return Api.get(COORDINATOR, "/api/exposures?untold=true&caseId=" + caseId)
                .getList("items.id");
    }

    @Test
    void twoAtOnceSetOneHold() throws Exception {
        for (int round = 0; round < 5; round++) {
            String caseId = newCase(FLYING_FOX).getString("id");
            Callable<String> one = () -> enter("bite", rescuer(), of(caseId)).getString("hold");
            ExecutorService two = Executors.newFixedThreadPool(2);
            try {
                var answers = two.invokeAll(List.of(one, one));
                assertThat(List.of(answers.get(0).get(), answers.get(1).get()))
                        .containsExactlyInAnyOrder("set", "kept");
            } finally {
                two.shutdownNow();
            }
            assertThat(exposureHolds(caseId)).hasSize(1);
        }
    }

    @Test
    void theDatabaseRefusesWhatIsNoExposure() throws SQLException {
        String id = enter("bite", rescuer(), of(newCase(FLYING_FOX).getString("id")))
                .getString("id");
        for (String[] wrong : new String[][] {
            {"kind = null", "an_exposure_is_whole_or_erased"},
            {"erased_at = now()", "an_exposure_is_whole_or_erased"},
            {"washed_minutes = 5", "only_washing_takes_minutes"},
            {"needle_used_on_animal = 'no'", "only_a_needle_was_in_an_animal"},
            {"told_at = now()", "telling_the_health_unit_has_time_unit_and_name"},
            {
                "told_at = happened_at - interval '1 second', told_unit = 'x', told_by = 'x'",
                "the_health_unit_is_told_afterwards"
            },
            {
                "told_at = happened_at, told_unit = 'x', told_by = 'x', closed_at = now()",
                "closing_an_exposure_has_time_name_and_outcome"
            },
            {"closed_at = now(), closed_by = 'x', outcome = 'x'", "an_exposure_is_closed_once_told"},
            {"withdrawn_at = now()", "withdrawing_an_exposure_has_time_and_reason"},
            {"case_id = null", "the animal of an exposure stays"},
            {"member_id = null", "never changed"}
        }) {
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                assertThatThrownBy(() -> statement.executeUpdate("update personal.exposures set " + wrong[0]
                                + ", version = version + 1, revised_at = now(), revised_by = recorded_by where id = '"
                                + id + "'"))
                        .as(wrong[0])
                        .hasMessageContaining(wrong[1]);
            }
        }
    }
}
