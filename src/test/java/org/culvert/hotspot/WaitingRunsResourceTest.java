package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

@QuarkusTest
class WaitingRunsResourceTest {
    private static final String RUN =
            "{\"periodFrom\":\"2019-01-01\",\"periodTo\":\"2019-12-31\",\"simulations\":19,\"reachMetres\":300}";

    @Inject
    DataSource database;

    private int update(String sql) throws SQLException {
        try (var connection = database.getConnection();
                var statement = connection.createStatement()) {
            return statement.executeUpdate(sql);
        }
    }

    @Test
    void soManyRunsWaitAndNoMore() throws SQLException {
        World.shared();
        String run = Api.post(COORDINATOR, "/api/hotspot-runs", RUN)
                .statusCode(202)
                .extract()
                .path("id");
        // Copies that nobody computes, older than all others, so that no list begins with them
        assertThat(update("""
                        INSERT INTO hotspot_runs
                        SELECT (jsonb_populate_record(NULL::hotspot_runs, to_jsonb(r) || jsonb_build_object(
                                'id', '00000000-0000-7000-8000-' || lpad(i::text, 12, '0')))).*
                        FROM hotspot_runs r, generate_series(1, 100) i WHERE r.id = '%s'
                        """.formatted(run))).isEqualTo(100);
        try {
            Api.post(COORDINATOR, "/api/hotspot-runs", RUN)
                    .statusCode(409)
                    .body("type", equalTo("/problems/conflict"))
                    .body("detail", containsString("waiting already"));
        } finally {
            update("""
                    INSERT INTO hotspot_run_progress (run_id, times_begun, begun_at, simulations_done, failed_at, failure)
                    SELECT id, 1, now(), 0, now(), 'made for a test' FROM hotspot_runs
                    WHERE id::text LIKE '00000000-0000-7000-8000-%'
                    """);
        }
        Api.post(COORDINATOR, "/api/hotspot-runs", RUN).statusCode(202);
    }
}
