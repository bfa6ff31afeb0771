package org.culvert.care.calendar;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.startsWith;

import biweekly.Biweekly;
import biweekly.component.VEvent;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.security.MessageDigest;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.culvert.care.CareWorld;
import org.culvert.care.CareWorld.Patient;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.Request;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class CalendarResourceTest {
    private static final String DRY = CareWorld.step("dry", 0, 3, "daily", "none", "");
    private static final String SWIM = CareWorld.step("swim", 2, 6, "daily", "minutes", ",\"hour\":\"18:00\"");
    private static final String STITCHES = CareWorld.step("stitches", 2, 8, "once", "none", "");

    @Inject
    DataSource database;

    private CareWorld care;
    private String calendars;

    @BeforeEach
    void makeWorld() {
        care = new CareWorld();
        calendars = "/api/members/" + care.world.carer + "/calendars";
    }

    private static Answer read(String address) {
        return Request.given().get(address);
    }

    /** The events of one animal, by step and first day. */
    private Map<String, VEvent> events(String address, Patient turtle) {
        String text = read(address).then().statusCode(200).extract().asString();
        String number = "Case " + Api.get(COORDINATOR, turtle.path()).getLong("number") + ": ";
        return Biweekly.parse(text).first().getEvents().stream()
                .filter(event -> event.getSummary().getValue().startsWith(number))
                .collect(Collectors.toMap(this::name, event -> event));
    }

    private String name(VEvent event) {
        LocalDate day = event.getDateStart().getValue().hasTime()
                ? event.getDateStart()
                        .getValue()
                        .toInstant()
                        .atZone(CareWorld.ZONE)
                        .toLocalDate()
                : LocalDate.of(
                        event.getDateStart().getValue().getRawComponents().getYear(),
                        event.getDateStart().getValue().getRawComponents().getMonth(),
                        event.getDateStart().getValue().getRawComponents().getDate());
        return event.getSummary().getValue().replaceFirst("Case \\d+: ", "") + " "
                + java.time.temporal.ChronoUnit.DAYS.between(care.today, day);
    }

    private static boolean isCancelled(VEvent event) {
        return event.getStatus().isCancelled();
    }

    @Test
    void aCarersTasksStandInTheirCalendarAndWhatChangesGrowsItsSequence() {
        Patient turtle = care.patient(4);
        String plan = turtle.plan(care.today.minusDays(4), String.join(",", DRY, SWIM, STITCHES));
        String address = CareWorld.calendar(CARER);

        Map<String, VEvent> first = events(address, turtle);
        assertThat(first)
                .containsOnlyKeys(
                        "dry -4",
                        "dry -3",
                        "dry -2",
                        "dry -1",
                        "swim -2",
                        "swim -1",
                        "swim 0",
                        "swim 1",
                        "swim 2",
                        "stitches -2");
        assertThat(first.values()).noneMatch(CalendarResourceTest::isCancelled);
        assertThat(first.get("swim 1").getDateStart().getValue().toInstant())
                .isEqualTo(care.today
                        .plusDays(1)
                        .atTime(18, 0)
                        .atZone(CareWorld.ZONE)
                        .toInstant());
        // The stitches may stay in until the eighth day, which is the fourth from now
        assertThat(first.get("stitches -2")
                        .getDateEnd()
                        .getValue()
                        .getRawComponents()
                        .getDate())
                .isEqualTo(care.today.plusDays(5).getDayOfMonth());

        // Done before its last day
        Api.make(CARER, turtle.path() + "/care-entries", "{\"stepKey\":\"stitches\",\"day\":2}");
        // Done on its day
        String swum = Api.make(CARER, turtle.path() + "/care-entries", "{\"stepKey\":\"swim\",\"day\":4,\"value\":15}")
                .getString("id");
        // The vet changes the plan midway: the last swim is taken out
        Api.change(CLINIC, plan, "/changes", """
                        {"steps":[%s],"vetName":"Dr Vet","vetRegistration":"V-1","reason":"she tires","from":"%s"}
                        """.formatted(
                        CareWorld.step("swim", 2, 5, "daily", "minutes", ",\"hour\":\"18:00\"") + "," + STITCHES,
                        care.today))
                .statusCode(200);
        Map<String, VEvent> second = events(address, turtle);
        assertThat(second.keySet()).isEqualTo(first.keySet());
        second.forEach((name, event) -> {
            assertThat(event.getUid().getValue())
                    .isEqualTo(first.get(name).getUid().getValue());
            assertThat(isCancelled(event)).as(name).isEqualTo(name.equals("stitches -2") || name.equals("swim 2"));
            assertThat(event.getSequence().getValue()
                            > first.get(name).getSequence().getValue())
                    .as(name)
                    .isEqualTo(!name.startsWith("dry") && !name.equals("swim -1") && !name.equals("swim -2"));
        });

        // Taken back, and skipped for a reason
        Api.change(CARER, "/api/care-entries/" + swum, "/withdrawal", "{\"reason\":\"it was yesterday\"}")
                .statusCode(200);
        Api.make(
                CARER,
                turtle.path() + "/care-entries",
                "{\"stepKey\":\"swim\",\"day\":4,\"skippedBecause\":\"too cold\"}");
        VEvent skipped = events(address, turtle).get("swim 0");
        assertThat(isCancelled(skipped)).isTrue();
        assertThat(skipped.getSequence().getValue())
                .isGreaterThan(second.get("swim 0").getSequence().getValue());

        // The animal dies: what would have come is cancelled, what was stays
        Api.change(COORDINATOR, turtle.path(), "/fate", "{\"fate\":\"died\"}").statusCode(200);
        Map<String, VEvent> ended = events(address, turtle);
        assertThat(isCancelled(ended.get("swim 1"))).isTrue();
        assertThat(isCancelled(ended.get("swim -1"))).isFalse();
        assertThat(ended.get("swim 1").getSequence().getValue())
                .isGreaterThan(second.get("swim 1").getSequence().getValue());
    }

    @Test
    void aCalendarSaysNothingOfPeoplePlacesAndSpecies() {
        Patient turtle = care.patient(4);
        turtle.plan(care.today.minusDays(4), SWIM);
        String text = read(CareWorld.calendar(COORDINATOR))
                .then()
                .statusCode(200)
                .extract()
                .asString();
        String callSign =
                Api.get(COORDINATOR, "/api/members/" + care.world.carer).getString("callSign");
        assertThat(text.replace("\r\n ", ""))
                .contains("SUMMARY:Case ")
                .doesNotContainIgnoringCase(
                        "Emydura", "turtle", "Dr Vet", "V-1", "as the vet says", callSign, care.world.carer, "-30.5");
    }

    @Test
    void whatIsKnownAlreadyIsNotSentAgain() {
        Patient turtle = care.patient(4);
        turtle.plan(care.today.minusDays(4), SWIM);
        String address = CareWorld.calendar(CARER);
        Answer sent = read(address);
        sent.then()
                .statusCode(200)
                .contentType(startsWith("text/calendar"))
                .header("Cache-Control", equalTo("private, no-cache"));
        String tag = sent.header("ETag");
        Request.given()
                .header("If-None-Match", tag)
                .get(address)
                .then()
                .statusCode(304)
                .header("ETag", equalTo(tag));
        Api.make(CARER, turtle.path() + "/care-entries", "{\"stepKey\":\"swim\",\"day\":4,\"value\":15}");
        Request.given().header("If-None-Match", tag).get(address).then().statusCode(200);
    }

    @Test
    void anAddressIsMadeAndRevokedByItsMemberAndByCoordinatorsAlone() throws Exception {
        String address = CareWorld.calendar(CARER);
        String id = Api.get(CARER, calendars).getString("find { it.revokedAt == null }.id");
        Api.post(CARER, calendars, "").statusCode(409).body("detail", containsString("revoke it"));
        Api.post(CARER, "/api/members/" + care.world.helper + "/calendars", "").statusCode(404);
        Api.as(CARER)
                .get("/api/members/" + care.world.helper + "/calendars")
                .then()
                .statusCode(404);
        Api.post(CLINIC, calendars, "").statusCode(403);
        Api.post(CARER, calendars + "/" + UUID.randomUUID() + "/revocation", "").statusCode(404);
        assertThat(Api.as(CARER).get(calendars).asString()).doesNotContain(address.substring(11, 30));
        assertThat(secretOf(id))
                .isEqualTo(MessageDigest.getInstance("SHA-256")
                        .digest(address.replaceAll("^/calendars/|[.]ics$", "").getBytes("UTF-8")));

        read(address).then().statusCode(200);
        Api.post(CARER, calendars + "/" + id + "/revocation", "")
                .statusCode(200)
                .body("record.revision", equalTo(2));
        Api.post(CARER, calendars + "/" + id + "/revocation", "").statusCode(409);
        for (String gone : List.of(address, "/calendars/unknown.ics")) {
            read(gone)
                    .then()
                    .statusCode(404)
                    .contentType(startsWith("application/problem+json"))
                    .body("type", equalTo("/problems/not-found"));
        }
        assertThat(CareWorld.calendar(COORDINATOR)).isNotEqualTo(address);
    }

    private byte[] secretOf(String id) throws SQLException {
        try (var connection = database.getConnection();
                var query = connection.prepareStatement("select secret from care_calendars where id = ?")) {
            query.setObject(1, UUID.fromString(id));
            try (var rows = query.executeQuery()) {
                rows.next();
                return rows.getBytes(1);
            }
        }
    }
}
