package org.culvert.platform.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.platform.DailyJob;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Checked against draft-ietf-httpapi-idempotency-key-header-06, sections 2.1 to 2.7. */
@QuarkusTest
@OnOldestDatabase
class RetryResourceTest {
    @Inject
    DataSource database;

    @Inject
    ForgetKeys forgetting;

    @Inject
    Instance<DailyJob> daily;

    @BeforeEach
    void world() {
        World.shared();
    }

    @Test
    void aChangeWithoutKeyIsRefused() {
        Api.as(DISPATCHER)
                .withoutKey()
                .body(call("x"))
                .post("/api/calls")
                .then()
                .statusCode(400)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/idempotency-key-missing"));
    }

    @Test
    void aKeyThatIsNoneIsRefused() {
        with(DISPATCHER, "two words")
                .body(call("x"))
                .post("/api/calls")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("Idempotency-Key"));
    }

    @Test
    void aQuestionNeedsNoKey() {
        Api.as(DISPATCHER)
                .withoutKey()
                .body("{\"decimalDegrees\":{\"latitude\":\"-30.5\",\"longitude\":\"150.02\"}}")
                .post("/api/places/readings")
                .then()
                .statusCode(200);
    }

    @Test
    void aRetryHearsTheFirstAnswerToTheByteAndKeepsNothingMore() {
        String key = UUID.randomUUID().toString();
        String words = "words " + key;
        Answer first = with(DISPATCHER, key).body(call(words)).post("/api/calls");
        Answer again = with(DISPATCHER, '"' + key + '"').body(call(words)).post("/api/calls");
        first.then().statusCode(201).header("Idempotency-Replayed", nullValue());
        again.then().statusCode(201).header("Idempotency-Replayed", equalTo("true"));
        assertThat(again.asByteArray()).isEqualTo(first.asByteArray());
        assertThat(again.header("Location")).isEqualTo(first.header("Location"));
        assertThat(again.contentType()).startsWith("application/json");
        Api.as(DISPATCHER)
                .get("/api/incidents/" + first.path("incidentId"))
                .then()
                .body("calls.size()", equalTo(1));
    }

    @Test
    void howABodyIsWrittenDoesNotMatterButWhatItSaysDoes() {
        String key = UUID.randomUUID().toString();
        with(DISPATCHER, key)
                .body("{\"words\":\"one\",\"cause\":\"unknown\"}")
                .post("/api/calls")
                .then()
                .statusCode(201);
        with(DISPATCHER, key)
                .body("{ \"cause\" : \"unknown\", \"words\":\"one\" }")
                .post("/api/calls")
                .then()
                .statusCode(201)
                .header("Idempotency-Replayed", equalTo("true"));
        with(DISPATCHER, key)
                .body("{\"words\":\"two\",\"cause\":\"unknown\"}")
                .post("/api/calls")
                .then()
                .statusCode(422)
                .body("type", equalTo("/problems/key-used-otherwise"));
    }

    @Test
    void aKeyBelongsToOneAccountAndOneAddress() {
        String key = UUID.randomUUID().toString();
        with(DISPATCHER, key).body(call("mine")).post("/api/calls").then().statusCode(201);
        with(COORDINATOR, key)
                .body(call("mine"))
                .post("/api/calls")
                .then()
                .statusCode(201)
                .header("Idempotency-Replayed", nullValue());
        with(DISPATCHER, key).body(call("mine")).post("/api/calls?x=1").then().statusCode(422);
    }

    @Test
    void whatWasRefusedIsTriedAgain() {
        String key = UUID.randomUUID().toString();
        String name = "shelter " + key;
        with(ADMIN, key)
                .body("{\"kind\":\"castle\",\"name\":\"%s\"}".formatted(name))
                .post("/api/organisations")
                .then()
                .statusCode(400);
        with(ADMIN, key)
                .body("{\"kind\":\"shelter\",\"name\":\"%s\"}".formatted(name))
                .post("/api/organisations")
                .then()
                .statusCode(201);
    }

    @Test
    void aStreamedFileIsHeldAgainstTheKeyToo() {
        String key = UUID.randomUUID().toString();
        String name = "retried " + key;
        Answer first = importRoads(key, name, 50);
        Answer again = importRoads(key, name, 50);
        first.then().statusCode(201);
        again.then().statusCode(201).header("Idempotency-Replayed", equalTo("true"));
        assertThat(again.asByteArray()).isEqualTo(first.asByteArray());
        importRoads(key, name, 60).then().statusCode(422);
        World.shared();
    }

    @Test
    void aKeyIsForgottenAfterADayAndNotBefore() throws SQLException {
        String old = UUID.randomUUID().toString();
        String young = UUID.randomUUID().toString();
        try (Connection connection = database.getConnection();
                Statement sql = connection.createStatement()) {
            for (String row : new String[] {old + "', interval '24 hours 1 minute", young + "', interval '23 hours"}) {
                String key = row.substring(0, 36);
                String age = row.substring(row.indexOf("interval"));
                sql.executeUpdate("insert into personal.idempotency_keys (account_id, key, request_hash, status, body,"
                        + " recorded_at) select id, '" + key + "', 'x', 201, '', now() - " + age
                        + "' from accounts where username = 'test-dispatcher'");
            }
        }
        forgetting.run();
        with(DISPATCHER, young).body(call("x")).post("/api/calls").then().statusCode(422);
        with(DISPATCHER, old).body(call("x")).post("/api/calls").then().statusCode(201);
    }

    @Test
    void noTwoDaysWorkHasOneName() {
        assertThat(daily.stream().map(DailyJob::name)).doesNotHaveDuplicates().contains("forget-idempotency-keys");
    }

    private static Answer importRoads(String key, String name, int limit) {
        return with(ADMIN, key)
                .contentType("application/geo+json")
                .queryParam("name", name)
                .queryParam("roadName", "name")
                .queryParam("speedLimit", "limit")
                .body("""
                        {"type":"FeatureCollection","features":[{"type":"Feature","properties":{"name":"A","limit":%d},
                         "geometry":{"type":"LineString","coordinates":[[150.0,-30.5],[150.1,-30.5]]}}]}
                        """.formatted(limit))
                .post("/api/road-networks");
    }

    private static Request with(String role, String key) {
        return Api.as(role).header(Request.KEY, key);
    }

    private static String call(String words) {
        return "{\"words\":\"%s\"}".formatted(words);
    }
}
