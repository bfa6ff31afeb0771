package org.culvert.platform.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The twins of the tables: every table of records has one, and one row of it is found by index. */
@QuarkusTest
class AsOfPlanTest {
    @Inject
    DataSource database;

    static Stream<String> records() {
        return Stream.of(
                "incidents", "calls", "cases", "animals", "custody_links", "attendances", "visits", "clutches");
    }

    /** PostgreSQL plans a sequential scan where it is told not to only if there is no other way. */
    @ParameterizedTest
    @MethodSource("records")
    void oneRowAsOfADateIsFoundByIndex(String table) throws SQLException {
        String plan = plan("select * from " + table + " where id = '01920000-0000-7000-8000-000000000000'");
        assertThat(plan).contains(table + "_pkey").contains("revisions_pkey").doesNotContain("Seq Scan");
    }

    @Test
    void partsAsOfADateAreFoundByTheirWhole() throws SQLException {
        String id = "'01920000-0000-7000-8000-000000000000'";
        assertThat(plan("select * from calls where incident_id = " + id)).contains("calls_by_incident");
        assertThat(plan("select * from custody_links where case_id = " + id)).contains("custody_links");
        assertThat(plan("select * from visits where case_id = " + id)).contains("visits_by_case");
    }

    @Test
    void aPageAsOfADateIsReadInOrderAndNotSorted() throws SQLException {
        assertThat(plan("select * from incidents order by id desc limit 51"))
                .contains("Index Scan Backward using incidents_pkey")
                .doesNotContain("Sort");
    }

    @ParameterizedTest
    @ValueSource(strings = {"incident_roots", "calls"})
    void listsAreReadToo(String view) throws SQLException {
        assertThat(plan("select * from " + view)).contains("revisions");
    }

    @Test
    void everyTableOfRecordsHasATwinWithTheSameColumns() throws SQLException {
        assertThat(columns("as_it_was")).containsAll(columns("public"));
    }

    private Set<String> columns(String schema) throws SQLException {
        Set<String> columns = new TreeSet<>();
        try (Connection connection = database.getConnection();
                Statement sql = connection.createStatement();
                ResultSet rows = sql.executeQuery("""
                        select t.relname || '.' || a.attname || ' ' || format_type(a.atttypid, a.atttypmod)
                        from pg_class t join pg_attribute a on a.attrelid = t.oid and a.attnum > 0 and not a.attisdropped
                        where t.relnamespace = '%s'::regnamespace and t.relkind in ('r', 'v')
                          and exists (select 1 from pg_class p join pg_attribute k on k.attrelid = p.oid
                                      where p.relname = t.relname and p.relnamespace = 'public'::regnamespace
                                        and p.relkind = 'r' and k.attname = 'recorded_at')
                          and exists (select 1 from pg_attribute k where k.attrelid = t.oid and k.attname = 'id')
                        """.formatted(schema))) {
            while (rows.next()) {
                columns.add(rows.getString(1));
            }
        }
        assertThat(columns).hasSizeGreaterThan(300);
        return columns;
    }

    private String plan(String query) throws SQLException {
        var plan = new StringBuilder();
        try (Connection connection = database.getConnection();
                Statement sql = connection.createStatement()) {
            connection.setAutoCommit(false);
            sql.execute("set local enable_seqscan = off");
            // Nor a sort: with next to no revisions a sort of them would be as cheap as their index
            sql.execute("set local enable_sort = off");
            sql.execute("set local search_path = as_it_was, public");
            sql.execute("set local culvert.as_of = '2026-01-01T00:00:00Z'");
            try (ResultSet rows = sql.executeQuery("explain " + query)) {
                while (rows.next()) {
                    plan.append(rows.getString(1)).append('\n');
                }
            }
            connection.rollback();
        }
        return plan.toString();
    }
}
