package org.culvert.platform.personal;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes a database honour the list of erasures, as its owner: for one that was restored, and at every start. */
public final class ListedErasures {
    /**
     * What was done.
     *
     * @param listed lines of the list
     * @param erased people who came back and are gone again
     * @param hidden people who were visible and are hidden again, or the other way round
     */
    public record Honoured(int listed, int erased, int hidden) {
        @Override
        public String toString() {
            return listed + " lines, by which " + erased + " people were erased and " + hidden
                    + " hidden or shown again";
        }
    }

    private ListedErasures() {}

    /** Where the list is: {@code CULVERT_ERASURES}, or else in the data folder. */
    public static Path file(Map<String, String> environment, Path home) {
        String named = environment.get("CULVERT_ERASURES");
        return named == null || named.isBlank() ? home.resolve("erasures") : Path.of(named);
    }

    /**
     * Erases and hides whom the list says and the database does not; one without tables has nobody.
     *
     * @param owner a connection that works as the owner of the tables, in no transaction
     * @throws IllegalStateException where the list has a line that is none
     */
    public static Honoured honour(Connection owner, Path file) throws SQLException, IOException {
        var entries = ErasureList.read(file);
        if (entries.isEmpty() || !isReady(owner)) {
            return new Honoured(entries.size(), 0, 0);
        }
        int erased = 0;
        int hidden = 0;
        owner.setAutoCommit(false);
        try {
            for (ErasureList.Entry entry : entries) {
                switch (entry.what()) {
                    case erased -> erased += erase(owner, entry) ? 1 : 0;
                    case hidden, shown -> hidden += hide(owner, entry);
                }
            }
            owner.commit();
        } catch (SQLException | RuntimeException e) {
            owner.rollback();
            throw e;
        } finally {
            owner.setAutoCommit(true);
        }
        return new Honoured(entries.size(), erased, hidden);
    }

    private static boolean isReady(Connection owner) throws SQLException {
        try (Statement statement = owner.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT to_regprocedure('personal.erase_now(uuid, timestamptz, uuid)') IS NOT NULL")) {
            row.next();
            return row.getBoolean(1);
        }
    }

    private static boolean erase(Connection owner, ErasureList.Entry entry) throws SQLException {
        try (PreparedStatement statement = owner.prepareStatement("SELECT personal.erase_now(?, ?, NULL)")) {
            statement.setObject(1, entry.personId());
            statement.setObject(2, entry.at().atOffset(ZoneOffset.UTC));
            try (ResultSet row = statement.executeQuery()) {
                row.next();
                return row.getBoolean(1);
            }
        }
    }

    /** Later lines of the list undo earlier ones; what the database says since the line was written stands. */
    private static int hide(Connection owner, ErasureList.Entry entry) throws SQLException {
        @Nullable
        OffsetDateTime hiddenAt =
                entry.what() == ErasureList.What.hidden ? entry.at().atOffset(ZoneOffset.UTC) : null;
        int changed = 0;
        for (String table : new String[] {"people", "members"}) {
            try (PreparedStatement statement = owner.prepareStatement("UPDATE personal." + table + """
                     SET hidden_at = ?::timestamptz, version = version + 1, revised_at = ?,
                         revised_by = '01920000-0000-7000-8000-000000000000', revision_reason = 'by the list of erasures'
                    WHERE id = ? AND erased_at IS NULL AND (hidden_at IS NULL) <> (?::timestamptz IS NULL)
                      AND (revised_at IS NULL OR revised_at < ?)
                    """)) {
                statement.setObject(1, hiddenAt);
                statement.setObject(2, entry.at().atOffset(ZoneOffset.UTC));
                statement.setObject(3, entry.personId());
                statement.setObject(4, hiddenAt);
                statement.setObject(5, entry.at().atOffset(ZoneOffset.UTC));
                changed += statement.executeUpdate();
            }
        }
        return changed;
    }
}
