package org.culvert.platform;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.hamcrest.Matchers;
import org.junit.jupiter.api.Test;

/** Every constraint that a request can meet has a sentence, or names the one column whose value cannot be kept. */
@QuarkusTest
class ConstraintSentencesTest {
    /** Constraints that no request reaches: rows that the server writes of itself. */
    private static final Map<String, String> UNREACHABLE = Map.of(
            "a_failed_run_says_why", "written by the job of a run, both at once",
            "sessions_secret_key", "256 random bits",
            "one_time_links_secret_key", "256 random bits",
            "api_tokens_secret_is_known", "256 random bits",
            "revoking_a_token_has_time_and_author", "written by the service, both at once",
            "hotspot_runs_by_declaration", "written by the service under its own check");

    @Inject
    DataSource database;

    @Inject
    @Any
    Instance<ConstraintSentences> rooms;

    @Test
    void everyConstraintHasASentence() throws SQLException {
        Set<String> told = new HashSet<>();
        rooms.forEach(room -> told.addAll(room.sentences().keySet()));
        Set<String> silent = new TreeSet<>();
        int looked = 0;
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("""
                        select c.conname, t.relname from pg_constraint c join pg_class t on t.oid = c.conrelid
                        join pg_namespace n on n.oid = t.relnamespace
                        where n.nspname in ('public', 'personal') and c.contype in ('c', 'u', 'x', 'f')
                          and t.relname not in ('flyway_schema_history', 'scheduled_tasks')
                        union
                        select i.relname, t.relname from pg_index x join pg_class i on i.oid = x.indexrelid
                        join pg_class t on t.oid = x.indrelid join pg_namespace n on n.oid = t.relnamespace
                        where x.indisunique and not x.indisprimary and n.nspname in ('public', 'personal')
                          and t.relname not in ('flyway_schema_history', 'scheduled_tasks')
                        """)) {
            while (rows.next()) {
                looked++;
                String constraint = rows.getString(1);
                String table = rows.getString(2);
                boolean ofOneColumn = constraint.startsWith(table + "_")
                        && (constraint.endsWith("_fkey") || constraint.endsWith("_check"));
                if (!told.contains(constraint) && !ofOneColumn && !UNREACHABLE.containsKey(constraint)) {
                    silent.add(table + ": " + constraint);
                }
            }
        }
        assertThat(looked).isGreaterThan(100);
        assertThat(silent).as("constraints without a sentence").isEmpty();
    }

    @Test
    void everySentenceIsOne() {
        rooms.forEach(room -> room.sentences()
                .forEach((constraint, sentence) -> assertThat(sentence)
                        .as(constraint)
                        .matches("[A-Z].*\\.")
                        .doesNotContain("_")));
    }

    @Test
    void anIdentifierOfNothingIsToldByItsField() {
        World.shared();
        String incident = World.call("Chelodina longicollis", 150.06, "").getString("incidentId");
        Api.post(Role.COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","attendanceId":"01920000-0000-7000-8000-00000000dead",
                         "animal":{"scientificName":"Chelodina longicollis"}}
                        """.formatted(incident))
                .statusCode(400)
                .body("type", Matchers.equalTo("/problems/invalid"))
                .body("errors[0].field", Matchers.equalTo("attendanceId"));
    }

    @Test
    void aNameThatIsTakenIsAConflictWithASentence() {
        String entry = "{\"kind\":\"shelter\",\"name\":\"twice %s\"}".formatted(java.util.UUID.randomUUID());
        Api.make(Role.ADMIN, "/api/organisations", entry);
        Api.post(Role.ADMIN, "/api/organisations", entry)
                .statusCode(409)
                .body("detail", Matchers.equalTo("Another organisation has this name already."));
    }

    @Test
    void columnsAreNamedAsTheApiNamesThem() {
        assertThat(List.of(BadValues.field("attendance_id"), BadValues.field("cause"), BadValues.field("x_ray")))
                .containsExactly("attendanceId", "cause", "xRay");
    }
}
