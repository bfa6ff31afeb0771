package org.culvert.platform.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The role that the server works as can add, and cannot take away or rewrite. */
@QuarkusTest
class DatabaseRoleTest {
    private static final String PERMISSION_DENIED = "42501";
    private static final String INTEGRITY = "23000";

    @Inject
    DataSource database;

    @BeforeEach
    void rowsToTryItOn() throws SQLException {
        World.shared();
        World.call("Chelodina longicollis", 150.061, ",\"words\":\"on the verge\"");
        assumeThat(list("select current_user::text"))
                .as("the server has a role of its own")
                .doesNotContain("culvert_owner");
    }

    @Test
    void itDeletesAndEmptiesNothing() throws SQLException {
        assertThat(list("""
                        select n.nspname || '.' || t.relname || ' ' || p from pg_class t
                        join pg_namespace n on n.oid = t.relnamespace, unnest(array['DELETE', 'TRUNCATE']) p
                        where n.nspname in ('public', 'personal', 'as_it_was') and t.relkind in ('r', 'v')
                          and has_table_privilege(t.oid, p)
                        """)).as("tables that rows can be taken from").containsExactly("public.scheduled_tasks DELETE");
    }

    @Test
    void itIsNoOwnerAndNoSuperuser() throws SQLException {
        assertThat(list("select rolname from pg_roles where rolname = current_user"
                        + " and (rolsuper or rolcreaterole or rolcreatedb or rolbypassrls or rolreplication)"))
                .isEmpty();
        assertThat(list("select t.relname from pg_class t join pg_namespace n on n.oid = t.relnamespace"
                        + " where n.nspname in ('public', 'personal', 'as_it_was')"
                        + " and pg_has_role(current_user, t.relowner, 'MEMBER')"))
                .isEmpty();
    }

    @Test
    void historyIsWrittenByItsTriggerAlone() throws SQLException {
        assertThat(list("""
                        select t || ' ' || p from unnest(array['public.revisions', 'personal.revisions']) t,
                               unnest(array['INSERT', 'UPDATE', 'DELETE', 'TRUNCATE', 'TRIGGER']) p
                        where has_table_privilege(t, p)
                        """)).isEmpty();
        refused("update revisions set row_before = '{}'", PERMISSION_DENIED);
        refused(
                "insert into revisions (table_name, row_id, row_version, row_before)"
                        + " values ('cases', '01920000-0000-7000-8000-00000000dead', 0, '{}')",
                PERMISSION_DENIED);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "alter table calls disable trigger keep_revision",
                "alter table calls disable trigger all",
                "drop trigger keep_revision on calls",
                "set session_replication_role = replica",
                "set local role culvert_owner",
                "create or replace function keep_revision() returns trigger language plpgsql as 'begin return new; end'",
                "drop view as_it_was.calls",
                "delete from calls",
                "truncate calls cascade",
                "create table mine (id int)"
            })
    void itCannotGetAroundThat(String statement) {
        refused(statement, PERMISSION_DENIED);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update calls set recorded_at = recorded_at - interval '1 day'",
                "update calls set recorded_by = (select id from accounts where username = 'test-admin')",
                "update incidents set id = gen_random_uuid(), number = number",
                "update regions set recorded_at = now() - interval '1 day'",
                "update personal.words set recorded_at = now() - interval '1 day'",
                "update calls set incident_id = (select id from incidents i where i.id <> calls.incident_id limit 1)",
                "update imports set file_name = 'another'",
                "update road_links set road_name = 'another'"
            })
    void whenAndByWhomSomethingWasEnteredStays(String statement) {
        refused(statement, INTEGRITY);
    }

    @Test
    void everyTableOfRecordsKeepsItsRevisionsOrNeverChanges() throws SQLException {
        assertThat(list("""
                        select n.nspname || '.' || t.relname from pg_class t join pg_namespace n on n.oid = t.relnamespace
                        where n.nspname in ('public', 'personal') and t.relkind = 'r'
                          and (select count(*) from pg_attribute a where a.attrelid = t.oid
                                 and a.attname in ('id', 'version', 'recorded_at')) = 3
                          and not exists (select 1 from pg_trigger g where g.tgrelid = t.oid
                                            and g.tgname in ('keep_revision', 'kept_for_ever', 'kept_until_erased')
                                            and g.tgenabled = 'O')
                        """)).isEmpty();
    }

    private void refused(String statement, String state) {
        assertThatThrownBy(() -> {
                    try (Connection connection = database.getConnection();
                            Statement sql = connection.createStatement()) {
                        connection.setAutoCommit(false);
                        try {
                            int rows = sql.executeUpdate(statement);
                            assertThat(rows).as("rows that it reached").isPositive();
                        } finally {
                            connection.rollback();
                        }
                    }
                })
                .as(statement)
                .isInstanceOfSatisfying(
                        SQLException.class, e -> assertThat(e.getSQLState()).isEqualTo(state));
    }

    private List<String> list(String query) throws SQLException {
        List<String> rows = new ArrayList<>();
        try (Connection connection = database.getConnection();
                Statement sql = connection.createStatement();
                ResultSet result = sql.executeQuery(query)) {
            while (result.next()) {
                rows.add(result.getString(1));
            }
        }
        return rows;
    }
}
