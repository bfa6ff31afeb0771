package org.culvert.platform.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;

/** How many rows every table has that changes by requests alone. */
final class Rows {
    private final DataSource database;
    private final List<String> tables = new ArrayList<>();
    private final String counting;
    private long[] last;

    Rows(DataSource database) throws SQLException {
        this.database = database;
        try (var connection = database.getConnection();
                var found = connection.createStatement().executeQuery("""
                        SELECT table_schema || '.' || table_name FROM information_schema.tables
                        WHERE table_schema IN ('public', 'personal') AND table_type = 'BASE TABLE'
                          AND has_table_privilege(quote_ident(table_schema) || '.' || quote_ident(table_name), 'SELECT')
                        """)) {
            while (found.next()) {
                // These change by jobs, and by trying to sign in
                if (!found.getString(1).matches(".*(flyway|scheduled|sign_in_tries|sessions|hotspot_run).*")) {
                    tables.add(found.getString(1));
                }
            }
        }
        assertThat(tables).hasSizeGreaterThan(25).contains("public.revisions", "personal.revisions");
        this.counting = "SELECT "
                + String.join(
                        ", ",
                        tables.stream()
                                .map(table -> "(SELECT count(*) FROM " + table + ")")
                                .toList());
        this.last = read();
    }

    /** Takes the rows as they are now. */
    void count() throws SQLException {
        last = read();
    }

    /** What has become more or less since the last look, by table. */
    String change() throws SQLException {
        long[] now = read();
        List<String> changes = new ArrayList<>();
        for (int i = 0; i < now.length; i++) {
            if (now[i] != last[i]) {
                changes.add((now[i] - last[i]) + " in " + tables.get(i));
            }
        }
        last = now;
        return String.join(", ", changes);
    }

    private long[] read() throws SQLException {
        try (var connection = database.getConnection();
                var counted = connection.createStatement().executeQuery(counting)) {
            counted.next();
            long[] counts = new long[tables.size()];
            for (int i = 0; i < counts.length; i++) {
                counts[i] = counted.getLong(i + 1);
            }
            return counts;
        }
    }
}
