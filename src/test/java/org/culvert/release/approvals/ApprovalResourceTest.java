package org.culvert.release.approvals;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.release.rules.Approval;
import org.culvert.release.rules.Approval.Of;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class ApprovalResourceTest {
    private static final String TURTLE = "Chelodina longicollis";

    /** Of the region's zone, Australia/Sydney: it was the 2nd there already. */
    private static final String EVENING = "2026-02-01T14:00:00Z";

    private static final LocalDate THAT_DAY = LocalDate.of(2026, 2, 2);

    @Inject
    ApprovalService approvals;

    @Inject
    DataSource database;

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private static String site() {
        return Api.make(COORDINATOR, "/api/release-sites", """
                        {"name":"Lagoon %s","jurisdiction":"XY","decimalLatitude":-30.52,"decimalLongitude":150.035,
                         "coordinateUncertaintyInMeters":20,"habitat":"wetland"}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
    }

    private String newCase() {
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(
                                World.call(TURTLE, 150.06, "").getString("incidentId"), TURTLE, world.rescuer))
                .getString("id");
    }

    private static String answer(String of, boolean given, String more) {
        return "{\"of\":\"%s\",\"given\":%s,\"at\":\"%s\"%s}".formatted(of, given, EVENING, more);
    }

    @Test
    void anApprovalOfASiteStandsFromItsDayToItsLast() {
        String site = site();
        UUID siteId = UUID.fromString(site);
        Json made = Api.post(
                        COORDINATOR,
                        "/api/release-sites/" + site + "/approvals",
                        answer(
                                "landowner",
                                true,
                                ",\"until\":\"2026-03-01\",\"reference\":\"L-1\",\"askedOf\":\"the estate's office\""))
                .statusCode(201)
                .header("Location", containsString("/api/release-approvals/"))
                .extract()
                .jsonPath();
        assertThat(made.getString("note")).contains("check your local code and your licensed vet");
        assertThat(made.getString("siteId")).isEqualTo(site);
        assertThat(made.<Object>get("caseId")).isNull();
        Approval given = new Approval(Of.landowner, true, LocalDate.of(2026, 3, 1), "L-1");
        assertThat(approvals.forSite(siteId, THAT_DAY.minusDays(1))).isEmpty();
        assertThat(approvals.forSite(siteId, THAT_DAY)).containsExactly(given);
        assertThat(approvals.forSite(siteId, LocalDate.of(2026, 3, 1))).containsExactly(given);
        assertThat(approvals.forSite(siteId, LocalDate.of(2026, 3, 2))).isEmpty();
        assertThat(approvals.forSite(UUID.randomUUID(), THAT_DAY)).isEmpty();
        assertThat(Api.get(COORDINATOR, "/api/release-sites/" + site).getString("landownerConsent"))
                .isEqualTo("unknown");
    }

    @Test
    void aRefusalStandsBesideALaterApprovalUntilItIsWithdrawn() {
        String site = site();
        String path = "/api/release-sites/" + site + "/approvals";
        String refused =
                Api.make(COORDINATOR, path, answer("landowner", false, "")).getString("id");
        Api.make(COORDINATOR, path, answer("landowner", true, "").replace("02-01T", "02-05T"));
        assertThat(approvals.forSite(UUID.fromString(site), LocalDate.of(2026, 2, 10)))
                .extracting(Approval::given)
                .containsExactly(false, true);
        String record = "/api/release-approvals/" + refused;
        Api.post(COORDINATOR, record + "/withdrawal", "{\"reason\":\"sold\"}").statusCode(428);
        Api.change(COORDINATOR, record, "/withdrawal", "{\"reason\":\" \"}").statusCode(400);
        Api.change(COORDINATOR, record, "/withdrawal", "{\"reason\":\"the land was sold\"}")
                .statusCode(200)
                .body("withdrawnBecause", equalTo("the land was sold"));
        Api.change(COORDINATOR, record, "/withdrawal", "{\"reason\":\"again\"}")
                .statusCode(409)
                .body("detail", containsString("the land was sold"));
        assertThat(approvals.forSite(UUID.fromString(site), LocalDate.of(2026, 2, 10)))
                .extracting(Approval::given)
                .containsExactly(true);
        assertThat(Api.get(OFFICER, path).getList("given")).containsExactly(true, false);
        assertThat(Api.get(OFFICER, "/api/records/" + refused + "/revisions").getList("reason"))
                .containsExactly(null, "the land was sold");
    }

    @Test
    void anApprovalOfACaseIsOfThatAnimalAlone() {
        String mine = newCase();
        String path = "/api/cases/" + mine + "/release-approvals";
        Api.make(COORDINATOR, path, answer("border", true, ",\"reference\":\"B-1\",\"askedOf\":\"the department\""));
        assertThat(approvals.forCase(UUID.fromString(mine), THAT_DAY))
                .containsExactly(new Approval(Of.border, true, null, "B-1"));
        assertThat(approvals.forCase(UUID.fromString(newCase()), THAT_DAY)).isEmpty();
        assertThat(Api.get(COORDINATOR, path).getList("reference")).containsExactly("B-1");
    }

    @Test
    void whoWasAskedIsToldToFew() {
        String mine = newCase();
        String site = site();
        String body = answer("wildlifeOfficer", true, ",\"reference\":\"W-1\",\"askedOf\":\"the district office\"");
        String ofCase = "/api/cases/" + mine + "/release-approvals";
        String ofSite = "/api/release-sites/" + site + "/approvals";
        String record =
                "/api/release-approvals/" + Api.make(COORDINATOR, ofCase, body).getString("id");
        Api.make(COORDINATOR, ofSite, body);
        Api.post(RESCUER, "/api/cases/" + mine + "/whereabouts", "{\"organisationId\":\"%s\"}".formatted(world.clinic))
                .statusCode(200);
        for (String list : List.of(ofCase, ofSite)) {
            assertThat(Api.get(CLINIC, list).getMap("[0]").keySet())
                    .containsExactlyInAnyOrder(
                            "id", "siteId", "caseId", "of", "given", "at", "until", "withdrawnAt", "note");
            assertThat(Api.get(OFFICER, list).getString("[0].askedOf")).isEqualTo("the district office");
            Api.as(RESCUER).get(list).then().statusCode(403);
            for (String role : List.of(CLINIC, CARER, OFFICER, ADMIN)) {
                Api.post(role, list, body).statusCode(403);
            }
        }
        Api.as(CLINIC).get(record).then().statusCode(403);
        Api.as(CLINIC)
                .get("/api/records/" + record.substring(record.lastIndexOf('/') + 1) + "/revisions")
                .then()
                .statusCode(404);
        String theirs = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"holder":{"memberId":"%s"}}
                        """.formatted(
                                World.call(TURTLE, 150.06, "").getString("incidentId"), TURTLE, world.incubatorKeeper))
                .getString("id");
        Api.make(COORDINATOR, "/api/cases/" + theirs + "/release-approvals", body);
        Api.as(CLINIC).get("/api/cases/" + theirs + "/release-approvals").then().statusCode(404);
    }

    @Test
    void whatIsWrongWithAnApprovalIsSaidByField() {
        String path = "/api/release-sites/" + site() + "/approvals";
        for (String[] wrong : new String[][] {
            {answer("king", true, ""), "of"},
            {answer("border", true, "").replace("\"border\"", "null"), "of"},
            {answer("border", true, "").replace("\"given\":true,", ""), "given"},
            {answer("border", true, ",\"until\":\"2026-02-01\""), "until"},
            {answer("border", true, "").replace("2026", "2126"), "at"},
            {answer("border", true, ",\"until\":\"soon\""), "until"}
        }) {
            Api.post(COORDINATOR, path, wrong[0]).statusCode(400).body("errors.field", hasItem(wrong[1]));
        }
        Api.make(COORDINATOR, path, answer("border", true, ",\"until\":\"2026-02-02\""));
        Api.post(COORDINATOR, "/api/release-sites/" + UUID.randomUUID() + "/approvals", answer("border", true, ""))
                .statusCode(404);
        Api.post(COORDINATOR, "/api/cases/" + UUID.randomUUID() + "/release-approvals", answer("border", true, ""))
                .statusCode(404);
    }

    @Test
    void theDatabaseRefusesWhatIsNoApproval() throws SQLException {
        String id = Api.make(COORDINATOR, "/api/release-sites/" + site() + "/approvals", answer("border", true, ""))
                .getString("id");
        for (String[] wrong : new String[][] {
            {"withdrawn_at = now()", "withdrawing_an_approval_has_time_and_reason"},
            {"until_day = '2026-01-01'", "an_approval_does_not_end_before_it_was_given"},
            {"of_whom = 'king'", "release_approvals_of_whom_check"},
            {"site_id = null", "never changed"}
        }) {
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                assertThatThrownBy(() -> statement.executeUpdate("update release_approvals set " + wrong[0]
                                + ", version = version + 1, revised_at = now(), revised_by = recorded_by where id = '"
                                + id + "'"))
                        .as(wrong[0])
                        .hasMessageContaining(wrong[1]);
            }
        }
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.executeUpdate(
                            "insert into release_approvals (id, of_whom, given, happened_at, recorded_at, recorded_by)"
                                    + " select gen_random_uuid(), of_whom, given, happened_at, recorded_at, recorded_by"
                                    + " from release_approvals where id = '" + id + "'"))
                    .hasMessageContaining("an_approval_is_of_a_site_or_of_a_case");
        }
    }
}
