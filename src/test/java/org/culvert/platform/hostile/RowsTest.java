package org.culvert.platform.hostile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** That what is written is noticed, since the tests of bad input rest on it. */
@QuarkusTest
class RowsTest {
    private static final String TURTLE = "Chelodina longicollis";

    @Inject
    DataSource database;

    private String incident;

    @BeforeEach
    void makeAnIncident() {
        World.shared();
        incident = World.call(TURTLE, 150.03, "").getString("incidentId");
    }

    @Test
    void aRecordThatIsMadeAndOneThatIsChangedAreNoticed() throws SQLException {
        try (Rows rows = new Rows(database)) {
            assertThat(rows.change()).doesNotContain("calls");
            World.call(TURTLE, 150.03, "");
            assertThat(rows.change()).contains("1 in public.calls", "1 in public.incidents");
            Api.correct(COORDINATOR, "/api/incidents/" + incident, "{\"cause\":\"disease\",\"reason\":\"seen since\"}")
                    .statusCode(200);
            assertThat(rows.change()).contains("1 in public.revisions").doesNotContain("public.calls");
            assertThat(rows.change()).doesNotContain("public");
        }
    }

    /** A transaction that was under way before the last look, and ends after a later one. */
    @Test
    void whatIsWrittenByATransactionThatBeganEarlierIsNoticedWhenItEnds() throws SQLException {
        try (Rows rows = new Rows(database);
                Connection slow = database.getConnection();
                Statement statement = slow.createStatement()) {
            slow.setAutoCommit(false);
            statement.executeUpdate(
                    "UPDATE incidents SET cause = 'disease', revision_reason = 'slowly', revised_at = now(),"
                            + " revised_by = recorded_by, version = version + 1 WHERE id = '" + incident + "'");
            World.call(TURTLE, 150.03, "");
            assertThat(rows.change()).contains("1 in public.calls").doesNotContain("public.revisions");
            slow.commit();
            slow.setAutoCommit(true);
            assertThat(rows.change()).contains("1 in public.revisions");
        }
    }
}
