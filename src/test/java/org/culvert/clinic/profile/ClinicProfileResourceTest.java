package org.culvert.clinic.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.UUID;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class ClinicProfileResourceTest {
    private static final String WEEK = """
            [{"day":"MONDAY","opens":"08:00","closes":"18:00"},{"day":"TUESDAY","opens":"08:00","closes":"18:00"}]""";

    /** Monday 10:00 and Tuesday 20:00 in the tests' region, Australia/Sydney, in November. */
    private static final String MONDAY = "2026-11-29T23:00:00Z";

    private static final String TUESDAY_EVENING = "2026-12-01T09:00:00Z";

    @BeforeEach
    void makeWorld() {
        World.shared();
        Api.post(ADMIN, "/api/taxon-groups", """
                        [{"key":"clinic-frogs","name":"frogs","pouch":false,"clutches":true,"introduced":false}]
                        """).statusCode(200);
    }

    private static String clinic(double latitude, boolean xRay, boolean surgery) {
        return Api.make(ADMIN, "/api/organisations", """
                        {"kind":"clinic","name":"Clinic %s","latitude":%s,"longitude":120.0,"xRay":%s,"surgery":%s}
                        """.formatted(UUID.randomUUID(), latitude, xRay, surgery))
                .getString("id");
    }

    private static String profile(String clinic, String treats, String opening) {
        return "{\"clinicId\":\"%s\",\"phone\":\"555 0171\",\"whenClosed\":\"ring the hotline\",\"treats\":%s,\"opening\":%s}"
                .formatted(clinic, treats, opening);
    }

    private static Json ask(String at, String more) {
        return Api.get(
                DISPATCHER,
                "/api/clinics?taxonGroup=clinic-frogs&decimalLatitude=-20&decimalLongitude=120&at=" + at + more);
    }

    private static String of(String id) {
        return "find { it.clinicId == '" + id + "' }.";
    }

    @Test
    void theNearestThatIsOpenAndTreatsItComesFirstAndTheOthersSayWhyNot() {
        String near = clinic(-20.01, false, false);
        String far = clinic(-20.5, true, true);
        String silent = clinic(-20.001, true, true);
        Api.post(COORDINATOR, "/api/clinic-profiles", profile(near, "[\"clinic-frogs\"]", WEEK))
                .statusCode(201);
        Api.post(COORDINATOR, "/api/clinic-profiles", profile(far, "[\"clinic-frogs\"]", WEEK))
                .statusCode(201);
        Json open = ask(MONDAY, "");
        List<String> order = open.getList("clinicId");
        assertThat(order.indexOf(near)).isLessThan(order.indexOf(far));
        assertThat(order.indexOf(far)).isLessThan(order.indexOf(silent));
        assertThat(open.getList(of(near) + "notBecause")).isEmpty();
        // One arc minute of latitude at 20 degrees is 1845.1 m on WGS 84; 0.01 degrees are 0.6 of them
        assertThat(open.getDouble(of(near) + "metres")).isBetween(1106.0, 1108.0);
        assertThat(open.getString(of(near) + "openUntil")).isEqualTo("2026-11-30T07:00:00Z");
        assertThat(open.getList(of(silent) + "notBecause").toString()).contains("is not entered here");

        Json needing = ask(MONDAY, "&needs=xRay&needs=surgery");
        assertThat(needing.<String>getList("clinicId").indexOf(far))
                .isLessThan(needing.<String>getList("clinicId").indexOf(near));
        assertThat(needing.getList(of(near) + "notBecause")).hasSize(2);

        Json closed = ask(TUESDAY_EVENING, "");
        assertThat(closed.getList(of(near) + "notBecause")).containsExactly("It is closed.");
        assertThat(closed.getString(of(near) + "opensNext")).isEqualTo("2026-12-06T21:00:00Z");
        assertThat(closed.getString(of(near) + "whenClosed")).isEqualTo("ring the hotline");
    }

    @Test
    void aGroupThatNobodyEnteredIsNotTakenForTreated() {
        String other = clinic(-20.02, true, true);
        Api.post(COORDINATOR, "/api/clinic-profiles", profile(other, "[\"turtles\"]", WEEK))
                .statusCode(201);
        assertThat(ask(MONDAY, "").getList(of(other) + "notBecause").toString()).contains("animals of this group");
    }

    @Test
    void aProfileIsEnteredOnceAndCorrected() {
        String clinic = clinic(-20.03, true, true);
        String id = Api.make(COORDINATOR, "/api/clinic-profiles", profile(clinic, "[]", WEEK))
                .getString("id");
        Api.post(COORDINATOR, "/api/clinic-profiles", profile(clinic, "[]", WEEK))
                .statusCode(409)
                .body("detail", containsString("has its profile already"));
        Api.correct(
                        COORDINATOR,
                        "/api/clinic-profiles/" + id,
                        "",
                        "{\"treats\":[\"clinic-frogs\"],\"opening\":[{\"day\":\"MONDAY\",\"opens\":\"07:00\",\"closes\":\"00:00\"}],"
                                + "\"reason\":\"they rang\"}")
                .statusCode(200)
                .body("treats[0]", equalTo("clinic-frogs"))
                .body("opening.size()", equalTo(1))
                .body("opening[0].opens", containsString("07:00"));
        Api.correct(COORDINATOR, "/api/clinic-profiles/" + id, "", "{\"opening\":[null],\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("opening.0"));
        Api.correct(
                        COORDINATOR,
                        "/api/clinic-profiles/" + id,
                        "",
                        "{\"opening\":[{\"day\":\"MONDAY\"}],\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("opening[0]"));
        assertThat(Api.get(CLINIC, "/api/clinic-profiles/" + id).getString("phone"))
                .isEqualTo("555 0171");
    }

    @Test
    void whatIsWrongIsNamed() {
        String clinic = clinic(-20.04, true, true);
        Api.post(
                        COORDINATOR,
                        "/api/clinic-profiles",
                        profile(clinic, "[]", "[{\"day\":\"MONDAY\",\"opens\":\"18:00\",\"closes\":\"08:00\"}]"))
                .statusCode(400)
                .body("errors[0].field", equalTo("opening[0].closes"))
                .body("errors[0].detail", containsString("a night is two spans"));
        Api.post(
                        COORDINATOR,
                        "/api/clinic-profiles",
                        profile(clinic, "[]", WEEK.replace("TUESDAY", "MONDAY").replace("08:00", "07:00")))
                .statusCode(400)
                .body("errors[0].detail", containsString("overlap"));
        Api.post(COORDINATOR, "/api/clinic-profiles", profile(clinic, "[\"unicorns\"]", WEEK))
                .statusCode(400)
                .body("errors[0].field", equalTo("treats[0]"));
        Api.as(DISPATCHER)
                .get("/api/clinics?taxonGroup=clinic-frogs&decimalLatitude=-20")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("decimalLongitude"));
        Api.as(OFFICER).get("/api/clinics?taxonGroup=clinic-frogs").then().statusCode(403);
        Api.post(RESCUER, "/api/clinic-profiles", profile(clinic, "[]", WEEK)).statusCode(403);
    }
}
