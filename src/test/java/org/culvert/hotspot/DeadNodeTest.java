package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.platform.Patience;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A run that another node had begun when it died is begun again here, and gives the same bytes. */
@QuarkusTest
class DeadNodeTest {
    private final DataSource database;

    DeadNodeTest(DataSource database) {
        this.database = database;
    }

    @BeforeEach
    void makeWorld() {
        EvidenceWorld.make();
    }

    @Test
    void aRunOfADeadNodeIsTakenUp() throws SQLException {
        String finished = EvidenceWorld.run(",\"taxonGroup\":\"macropods\"");
        UUID id = UUID.fromString("ffffffff-0000-7000-8000-" + finished.substring(24));
        leaveBehind(id, UUID.fromString(finished));
        Patience.until(
                "the run of the dead node",
                () -> Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id)
                        .getString("state")
                        .equals("done"));
        Json run = Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id);
        assertThat(run.getInt("timesBegun")).isEqualTo(2);
        assertThat(run.getString("documentSha256"))
                .isEqualTo(Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + finished)
                        .getString("documentSha256"));
    }

    /** What a node leaves in the database that stops while it computes. */
    private void leaveBehind(UUID id, UUID like) throws SQLException {
        try (Connection connection = database.getConnection()) {
            run(connection, """
                    INSERT INTO hotspot_runs (id, settings, declared, recorded_at, recorded_by)
                    SELECT ?, settings, declared, recorded_at, recorded_by FROM hotspot_runs WHERE id = ?
                    """, id, like);
            run(connection, """
                    INSERT INTO hotspot_run_progress (run_id, begun_at, simulations_done)
                    SELECT ?, begun_at, 400 FROM hotspot_run_progress WHERE run_id = ?
                    """, id, like);
            run(connection, """
                    INSERT INTO scheduled_tasks (task_name, task_instance, execution_time, picked, picked_by,
                        last_heartbeat, version)
                    VALUES ('hotspot-run', ?::text, now() - interval '10 minutes', true, 'a node that died',
                        now() - interval '10 minutes', 2)
                    """, id);
        }
    }

    private static void run(Connection connection, String sql, UUID... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        }
    }
}
