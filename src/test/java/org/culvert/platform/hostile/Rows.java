package org.culvert.platform.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;

/**
 * How many rows every table has that changes by requests alone.
 *
 * <p>They are counted only where a transaction that wrote has ended since the last look. Whatever writes has a number, and is
 * beyond the greatest or among those under way in a snapshot until it ends (PostgreSQL 17 manual, 9.27.10, "Transaction ID and
 * Snapshot Information Functions"): two snapshots that are alike have seen the same rows.
 */
final class Rows implements AutoCloseable {
    private final Connection connection;
    private final List<String> tables = new ArrayList<>();
    private final PreparedStatement snapshot;
    private final PreparedStatement counting;
    private String lastSnapshot;
    private long[] last;

    Rows(DataSource database) throws SQLException {
        this.connection = database.getConnection();
        try (var statement = connection.createStatement();
                var found = statement.executeQuery("""
                        SELECT table_schema || '.' || table_name FROM information_schema.tables
                        WHERE table_schema IN ('public', 'personal') AND table_type = 'BASE TABLE'
                          AND has_table_privilege(quote_ident(table_schema) || '.' || quote_ident(table_name), 'SELECT')
                        """)) {
            while (found.next()) {
                // These change by jobs, and by trying to sign in
                if (!found.getString(1)
                        .matches(
                                ".*(flyway|scheduled|sign_in_tries|sessions|hotspot_run|record_trial_|record_taking_).*")) {
                    tables.add(found.getString(1));
                }
            }
        }
        assertThat(tables).hasSizeGreaterThan(25).contains("public.revisions", "personal.revisions");
        this.snapshot = connection.prepareStatement("SELECT pg_current_snapshot()::text");
        this.counting = connection.prepareStatement("SELECT "
                + String.join(
                        ", ",
                        tables.stream()
                                .map(table -> "(SELECT count(*) FROM " + table + ")")
                                .toList()));
        this.lastSnapshot = takeSnapshot();
        this.last = read();
    }

    /** Takes the rows as they are now. */
    void count() throws SQLException {
        change();
    }

    /** What has become more or less since the last look, by table. */
    String change() throws SQLException {
        // Before the rows are read: what ends between the two is looked for again the next time
        String now = takeSnapshot();
        if (now.equals(lastSnapshot)) {
            return "";
        }
        lastSnapshot = now;
        long[] counts = read();
        List<String> changes = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] != last[i]) {
                changes.add((counts[i] - last[i]) + " in " + tables.get(i));
            }
        }
        last = counts;
        return String.join(", ", changes);
    }

    private String takeSnapshot() throws SQLException {
        try (var taken = snapshot.executeQuery()) {
            taken.next();
            return taken.getString(1);
        }
    }

    private long[] read() throws SQLException {
        try (var counted = counting.executeQuery()) {
            counted.next();
            long[] counts = new long[tables.size()];
            for (int i = 0; i < counts.length; i++) {
                counts[i] = counted.getLong(i + 1);
            }
            return counts;
        }
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
