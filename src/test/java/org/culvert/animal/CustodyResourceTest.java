package org.culvert.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class CustodyResourceTest {
    @Inject
    DataSource database;

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private Json newCase(String holder) {
        String incident = World.call("Chelodina longicollis", 150.04, "").getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis","sex":"female"},
                 "foundAt":"2026-01-10T02:00:00Z"%s}
                """.formatted(
                        incident, holder == null ? "" : ",\"holder\":{\"memberId\":\"" + holder + "\"}"));
    }

    private String offer(String caseId, String at) {
        return Api.make(
                        RESCUER,
                        "/api/cases/" + caseId + "/hand-overs",
                        "{\"taker\":{\"organisationId\":\"%s\"},\"at\":\"%s\"}".formatted(world.clinic, at))
                .getString("id");
    }

    @Test
    void theGiverStaysHolderUntilTheTakerAccepts() {
        Json made = newCase(world.rescuer);
        String id = made.getString("id");
        assertThat(made.getString("state")).isEqualTo("inCare");
        String handOver = offer(id, "2026-01-10T03:00:00Z");
        Json pending = Api.get(RESCUER, "/api/cases/" + id);
        assertThat(pending.getString("state")).isEqualTo("handOverPending");
        assertThat(pending.getString("custody[-1].holder.memberId")).isEqualTo(world.rescuer);
        Api.post(
                        RESCUER,
                        "/api/cases/" + id + "/hand-overs",
                        "{\"taker\":{\"memberId\":\"%s\"}}".formatted(world.carer))
                .statusCode(409)
                .body("detail", containsString("pending already"));

        Json taken = Api.as(CLINIC)
                .body("{\"at\":\"2026-01-10T03:30:00Z\"}")
                .post("/api/hand-overs/" + handOver + "/acceptance")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(taken.getList("custody")).hasSize(2);
        assertThat(taken.getString("custody[0].to")).isEqualTo("2026-01-10T03:30:00Z");
        assertThat(taken.getString("custody[1].holder.organisationId")).isEqualTo(world.clinic);
        assertThat(taken.getList("custodyGaps")).isEmpty();
        Api.post(CLINIC, "/api/hand-overs/" + handOver + "/acceptance", "{}").statusCode(409);
    }

    @Test
    void aRefusedHandOverLeavesTheGiver() {
        String id = newCase(world.rescuer).getString("id");
        String handOver = offer(id, "2026-01-10T03:00:00Z");
        Api.post(CLINIC, "/api/hand-overs/" + handOver + "/refusal", "{\"reason\":\"full tonight\"}")
                .statusCode(200);
        // Whoever has refused an animal has no more to do with it: others see where it stayed.
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("state")).isEqualTo("inCare");
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("custody[-1].holder.memberId"))
                .isEqualTo(world.rescuer);
    }

    @Test
    void ofTwoWhoAcceptAtOnceOneTakesIt() throws Exception {
        for (int round = 0; round < 5; round++) {
            String id = newCase(world.rescuer).getString("id");
            String handOver = offer(id, "2026-01-10T03:00:00Z");
            ExecutorService two = Executors.newFixedThreadPool(2);
            try {
                Callable<Integer> accept = () -> Api.as(CLINIC)
                        .body("{\"at\":\"2026-01-10T04:00:00Z\"}")
                        .post("/api/hand-overs/" + handOver + "/acceptance")
                        .statusCode();
                List<Integer> answers = new ArrayList<>();
                for (Future<Integer> answer : two.invokeAll(List.of(accept, accept))) {
                    answers.add(answer.get());
                }
                assertThat(answers).contains(200).doesNotContain(500);
                assertThat(answers.stream().filter(status -> status == 200)).hasSize(1);
            } finally {
                two.shutdownNow();
            }
            assertThat(Api.get(RESCUER, "/api/cases/" + id).getList("custody")).hasSize(2);
        }
    }

    @Test
    void theDatabaseItselfRefusesOverlap() throws SQLException {
        String id = newCase(world.rescuer).getString("id");
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            try (var insert = connection.prepareStatement("""
                    insert into custody_links (id, case_id, holder_member_id, held, recorded_at, recorded_by)
                    select gen_random_uuid(), ?::uuid, ?::uuid, tstzrange('2026-01-11', null), now(), id
                    from accounts limit 1
                    """)) {
                insert.setString(1, id);
                insert.setString(2, world.carer);
                // 23P01: exclusion violation (PostgreSQL manual, appendix A)
                org.assertj.core.api.Assertions.assertThatThrownBy(insert::executeUpdate)
                        .isInstanceOfSatisfying(
                                SQLException.class,
                                e -> assertThat(e.getSQLState()).isEqualTo("23P01"));
            } finally {
                connection.rollback();
            }
        }
    }

    @Test
    void theApplicationCanNeitherDeleteNorRewriteHistory() throws SQLException {
        newCase(world.rescuer);
        for (String statement :
                List.of("delete from custody_links", "delete from revisions", "truncate cases", "drop table fates")) {
            try (Connection connection = database.getConnection();
                    var forbidden = connection.createStatement()) {
                // 42501: insufficient privilege
                org.assertj.core.api.Assertions.assertThatThrownBy(() -> forbidden.execute(statement))
                        .as(statement)
                        .isInstanceOfSatisfying(
                                SQLException.class,
                                e -> assertThat(e.getSQLState()).isEqualTo("42501"));
            }
        }
    }

    @Test
    void aDeadAnimalLeavesABodyAndBarbiturateIsNeverLeftOut() {
        String id = newCase(world.rescuer).getString("id");
        Api.post(COORDINATOR, "/api/cases/" + id + "/fate", "{\"fate\":\"euthanased\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("method"));
        String told = "{\"fate\":\"euthanased\",\"method\":\"injection\",\"authority\":\"registration V-1\","
                + "\"approvedBy\":\"Dr Vet\",\"barbiturate\":true";
        Api.post(COORDINATOR, "/api/cases/" + id + "/fate", told + "}")
                .statusCode(400)
                .body("errors[0].field", equalTo("deathConfirmedBy"));
        Api.post(
                        COORDINATOR,
                        "/api/cases/" + id + "/fate",
                        told + ",\"deathConfirmedBy\":\"Nurse\",\"deathConfirmedAt\":\"2020-01-01T00:00:00Z\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("deathConfirmedAt"));
        Api.post(COORDINATOR, "/api/cases/" + id + "/fate", told + ",\"deathConfirmedBy\":\"Nurse\"}")
                .statusCode(200)
                .body("fate.authority", equalTo("registration V-1"))
                .body("fate.deathConfirmedBy", equalTo("Nurse"))
                .body("fate.deathConfirmedAt", notNullValue())
                .body("state", equalTo("ended"))
                .body("body.barbiturate", equalTo("yes"))
                .body("body.holder.memberId", equalTo(world.rescuer));
        Api.post(COORDINATOR, "/api/cases/" + id + "/body/disposal", "{\"disposal\":\"movedOffRoad\"}")
                .statusCode(422)
                .body("detail", containsString("never left out"));
        Api.post(COORDINATOR, "/api/cases/" + id + "/body/disposal", "{\"disposal\":\"incinerated\"}")
                .statusCode(200)
                .body("body.disposal", equalTo("incinerated"));
        Api.post(COORDINATOR, "/api/cases/" + id + "/fate", "{\"fate\":\"escaped\"}")
                .statusCode(409);
    }
}
