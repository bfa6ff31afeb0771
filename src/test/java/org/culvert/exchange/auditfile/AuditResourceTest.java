package org.culvert.exchange.auditfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.Holder;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class AuditResourceTest {
    @Inject
    DataSource database;

    @Inject
    AuthorisationService authorisations;

    private World world;
    private String group;
    private String taxon;
    private String holder;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
        String letters = UUID.randomUUID().toString().replaceAll("[^a-f]", "x").replace("-", "");
        group = "audited-" + letters;
        taxon = "Auditus " + letters;
        Api.post(ADMIN, "/api/taxon-groups", """
                [{"key":"%s","name":"%s","pouch":false,"clutches":false,"introduced":false}]
                """.formatted(group, group)).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"audited one","taxonRank":"species","taxonGroup":"%s"}]
                """.formatted(taxon, group)).statusCode(200);
        holder = Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"%s","name":"Somebody","attends":false,"cares":true}
                        """.formatted(world.network, UUID.randomUUID()))
                .getString("id");
    }

    private void list(String number, String from, String to, String more) {
        Api.make(ADMIN, "/api/authorisations", """
                {"memberId":"%s","jurisdiction":"test","authorisationClass":"specialist","number":"%s","taxonGroup":"%s",
                 "validFrom":"%s","validTo":"%s"%s}
                """.formatted(holder, number, group, from, to, more));
    }

    private String held(String from) {
        String incident = World.call(
                        taxon,
                        150.04,
                        ",\"caller\":{\"name\":\"A Driver\",\"phone\":\"555 0188\"}," + "\"words\":\"near my house\"")
                .getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"%s","holder":{"memberId":"%s"}}
                        """.formatted(incident, taxon, from, holder))
                .getString("id");
    }

    private static Json inspected(String caseId) {
        return Api.as(OFFICER)
                .queryParam("reason", "complaint 7")
                .get("/api/cases/" + caseId + "/audit-file")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    /** Each day of a link is one on which something was listed or one on which nothing was, as the roster reads that day. */
    @Test
    void everyDayOfALinkHasWhatWasListedOrIsListedAsNot() {
        list("A-1", "2026-01-05", "2026-01-20", "");
        list("A-2", "2026-01-18", "2026-02-10", "");
        list("A-3", "2026-02-20", "2026-02-25", ",\"premises\":\"shed 4\"");
        String caseId = held("2026-01-01T02:00:00Z");
        // Midnight in the region: the day that begins then is none of the link's
        Api.change(
                        COORDINATOR,
                        "/api/cases/" + caseId,
                        "/fate",
                        "{\"fate\":\"escaped\",\"at\":\"2026-02-28T13:00:00Z\"}")
                .statusCode(200);
        Json file = inspected(caseId);
        assertThat(file.<Map<String, String>>getList("custody[0].days"))
                .extracting(span -> span.get("from") + " " + span.get("to") + " " + span.get("authorisation"))
                .containsExactly(
                        "2026-01-01 2026-01-04 null",
                        "2026-01-05 2026-01-20 A-1",
                        "2026-01-21 2026-02-10 A-2",
                        "2026-02-11 2026-02-19 null",
                        "2026-02-20 2026-02-25 null",
                        "2026-02-26 2026-02-28 null");
        assertThat(file.<Map<String, String>>getList("custody[0].notListed"))
                .extracting(span -> span.get("from") + " " + span.get("to"))
                .containsExactly("2026-01-01 2026-01-04", "2026-02-11 2026-02-28");
        assertThat(file.getBoolean("custody[0].days[4].cannotTell"))
                .as("it names premises, and nobody said where the holder keeps animals")
                .isTrue();
        assertThat(file.getString("note")).contains("calls nothing lawful");
    }

    /** Against the reading of a single day, which placements and custody go by. */
    @Test
    void manyDaysReadAsEachDayByItself() {
        var random = new Random(74);
        LocalDate first = LocalDate.of(2026, 1, 1);
        for (int i = 0; i < 12; i++) {
            LocalDate from = first.plusDays(random.nextInt(90));
            list(
                    "R-" + i,
                    from.toString(),
                    from.plusDays(random.nextInt(12)).toString(),
                    switch (random.nextInt(3)) {
                        case 0 -> ",\"premises\":\"shed\"";
                        case 1 -> ",\"supervised\":true";
                        default -> "";
                    });
        }
        UUID groupId = UUID.fromString(
                Api.get(COORDINATOR, "/api/taxon-groups").getString("find { it.key == '" + group + "' }.id"));
        Holder of = Holder.member(UUID.fromString(holder));
        List<AuthorisationService.ListedDays> spans = QuarkusTransaction.requiringNew()
                .call(() -> authorisations.listDays(of, groupId, first, first.plusDays(100)));
        List<String> listed = new ArrayList<>();
        LocalDate next = first;
        for (AuthorisationService.ListedDays span : spans) {
            assertThat(span.from()).isEqualTo(next);
            for (LocalDate day = span.from(); !day.isAfter(span.to()); day = day.plusDays(1)) {
                listed.add(String.valueOf(span.number()));
            }
            next = span.to().plusDays(1);
        }
        assertThat(next).isEqualTo(first.plusDays(101));
        for (int i = 0; i <= 100; i++) {
            LocalDate day = first.plusDays(i);
            assertThat(listed.get(i))
                    .as("on %s", day)
                    .isEqualTo(QuarkusTransaction.requiringNew()
                            .call(() -> authorisations.find(of, groupId, day).orElse("null")));
        }
        assertThat(listed).contains("null").anyMatch(number -> number.startsWith("R-"));
    }

    @Test
    void anOfficersReadingIsKeptWithItsReason() throws SQLException {
        String caseId = held("2026-01-01T02:00:00Z");
        String path = "/api/cases/" + caseId + "/audit-file";
        Api.as(OFFICER).get(path).then().statusCode(400).body("errors[0].field", equalTo("reason"));
        Api.as(OFFICER).queryParam("reason", "  ").get(path).then().statusCode(400);
        Api.as(CARER).get(path).then().statusCode(403);
        Api.as(COORDINATOR).get(path).then().statusCode(200);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + caseId + "/inspections").getList("$"))
                .as("coordinators inspect nothing")
                .isEmpty();

        Instant before = Clocks.now();
        assertThat(inspected(caseId).getList("inspections")).isEmpty();
        assertThat(inspected(caseId).getList("inspections"))
                .as("the one before")
                .hasSize(1);
        // The past is read too, and that is kept now
        Api.as(OFFICER)
                .queryParam("reason", "the same, as it was")
                .queryParam("asOf", before.toString())
                .get(path)
                .then()
                .statusCode(200)
                .body("knownAt", equalTo(before.toString()));
        Json log = Api.get(COORDINATOR, "/api/cases/" + caseId + "/inspections");
        assertThat(log.getList("reason", String.class))
                .containsExactly("the same, as it was", "complaint 7", "complaint 7");
        assertThat(log.getString("[0].record.recordedBy")).isEqualTo("test-officer");
        assertThat(Instant.parse(log.getString("[0].at"))).isAfter(before);
        assertThat(Api.get(OFFICER, "/api/inspections?limit=3").getList("items.caseId", String.class))
                .containsOnly(caseId);
        try (Connection connection = database.getConnection();
                var change = connection.createStatement()) {
            org.assertj.core.api.Assertions.assertThatThrownBy(() -> change.execute(
                            "update inspections set reason = 'another' where case_id = '" + caseId + "'"))
                    .isInstanceOfSatisfying(
                            SQLException.class, e -> assertThat(e.getSQLState()).isEqualTo("23000"));
        }
    }

    @Test
    void everythingStandsInTheOrderOfWhatHappenedWithBothClocks() {
        list("A-1", "2020-01-01", "2090-01-01", "");
        String caseId = held("2026-01-01T02:00:00Z");
        Api.post(COORDINATOR, "/api/cases/" + caseId + "/whereabouts", """
                {"organisationId":"%s","at":"2026-01-02T02:00:00Z"}
                """.formatted(world.clinic))
                .statusCode(200);
        Api.make(CLINIC, "/api/visits", """
                {"caseId":"%s","clinicId":"%s","arrivedAt":"2026-01-02T03:00:00Z","weightGrams":820,"gravid":"no",
                 "procedures":[{"procedure":"a splint","vetName":"Dr Vet","vetRegistration":"V-1","at":"2026-01-02T04:00:00Z"}]}
                """.formatted(caseId, world.clinic));
        World.signFit(caseId, "2026-01-20T02:00:00Z");
        Api.correct(RESCUER, "/api/cases/" + caseId, "{\"dependentYoung\":true,\"reason\":\"seen again\"}")
                .statusCode(200);
        Api.change(COORDINATOR, "/api/cases/" + caseId, "/fate", """
                {"fate":"euthanased","at":"2026-02-01T02:00:00Z","method":"injection","authority":"registration V-1",
                 "approvedBy":"Dr Vet","barbiturate":true,"deathConfirmedBy":"A Nurse"}
                """).statusCode(200);
        Json file = inspected(caseId);

        List<String> when = file.getList("timeline.findAll { it.at != null }.at");
        assertThat(when).isSortedAccordingTo((one, other) -> Instant.parse(one).compareTo(Instant.parse(other)));
        assertThat(file.getList("timeline.section", String.class))
                .contains("incident", "animal", "custody", "whereabouts", "visits", "fitnessChecks");
        Map<String, Object> visit = file.getMap("timeline.find { it.words == 'visit' }");
        assertThat(visit).containsEntry("at", "2026-01-02T03:00:00Z").containsEntry("recordedBy", "test-clinic");
        assertThat(((Number) visit.get("lateByHours")).longValue()).isGreaterThan(24);
        int ofCase = file.getInt("timeline.find { it.words.startsWith('found: ') }.revisions");
        assertThat(ofCase).isEqualTo(1);
        assertThat(file.getInt("revisions"))
                .isEqualTo(file.<Integer>getList("timeline.revisions").stream()
                        .mapToInt(Integer::intValue)
                        .sum())
                .isGreaterThanOrEqualTo(2);
        assertThat(file.<Map<String, String>>getList("signatures"))
                .extracting(row -> row.get("what") + ", " + row.get("name") + ", " + row.get("capacity"))
                .containsExactly(
                        "procedure: a splint, Dr Vet, V-1",
                        "fitness, Dr Vet, V-1",
                        "death confirmed, A Nurse, null",
                        "end of the case approved, Dr Vet, registration V-1");
        assertThat(file.getString("animal.fate.fate")).isEqualTo("euthanased");
        assertThat(file.getList("incident.calls")).hasSize(1);
        assertThat(file.prettify())
                .as("an officer is told no caller, and not what was said")
                .doesNotContain("A Driver", "555 0188", "near my house");
        assertThat(LocalDate.ofInstant(Instant.parse(file.getString("knownAt")), ZoneId.of("UTC")))
                .isEqualTo(LocalDate.ofInstant(Clocks.now(), ZoneId.of("UTC")));
    }
}
