package org.culvert.platform.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.culvert.platform.database.DatabaseAccess;
import org.jspecify.annotations.Nullable;

/**
 * Loads a backup into a database without records, in one transaction, and reads every table again to see that it holds what
 * the file says. Foreign keys and triggers are off while it loads, since tables refer to each other in circles, and on again,
 * with every row checked, before anything is kept.
 */
final class Restore {
    /** The server's own account, which the first migration makes; where there is no other, nobody ever entered anything. */
    private static final String OWN_ACCOUNT = "01920000-0000-7000-8000-000000000000";

    private final DatabaseAccess access;
    private final Migrations migrations;
    private final Progress progress;

    Restore(DatabaseAccess access, Progress progress) {
        this.access = access;
        this.migrations = new Migrations(access);
        this.progress = progress;
    }

    void load(BackupFile backup) {
        BackupManifest manifest = backup.manifest();
        try (Connection connection = access.connectAsOwner("culvert restore")) {
            refuseRecords(connection);
            refuseOtherMigrations(manifest, connection);
            progress.say("Laying the tables as they were in schema " + manifest.schemaVersion() + " ...");
            migrations.migrateTo(manifest.schemaVersion());
            TableCopy.settle(connection);
            connection.setAutoCommit(false);
            try {
                load(backup, connection);
                connection.commit();
            } catch (SQLException | IOException | RuntimeException e) {
                connection.rollback();
                throw e;
            }
        } catch (SQLException e) {
            throw new BackupException("Nothing was restored; the database refused it: " + e.getMessage(), e);
        } catch (IOException e) {
            throw new BackupException("Nothing was restored; the backup cannot be read: " + e, e);
        }
    }

    private static void refuseRecords(Connection connection) throws SQLException {
        if (value(connection, "SELECT to_regclass('public.accounts')") == null) {
            String others = value(
                    connection,
                    "SELECT string_agg(c.relname, ', ') FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace"
                            + " WHERE n.nspname IN ('public', 'personal') AND c.relkind IN ('r', 'v', 'm', 'f', 'p')"
                            + " AND NOT EXISTS (SELECT 1 FROM pg_depend d WHERE d.objid = c.oid AND d.deptype = 'e')");
            if (others != null) {
                throw new BackupException("The database holds tables that are not Culvert's (" + others
                        + "). Restore into a database of its own.");
            }
            return;
        }
        String accounts = value(connection, "SELECT count(*) FROM public.accounts WHERE id <> '" + OWN_ACCOUNT + "'");
        if (!"0".equals(accounts)) {
            throw new BackupException(
                    "The database holds records already (" + accounts
                            + " accounts): a backup is restored into an empty one only, so that nothing is ever lost by it."
                            + " Make a new database and name it in CULVERT_DATABASE_URL, or choose a CULVERT_HOME that holds none.");
        }
    }

    private void refuseOtherMigrations(BackupManifest manifest, Connection connection) throws SQLException {
        Map<String, Integer> brought = migrations.checksums();
        String newest = SchemaVersions.latest(brought.keySet());
        if (SchemaVersions.ORDER.compare(manifest.schemaVersion(), newest) > 0) {
            throw new BackupException("The backup is of schema " + manifest.schemaVersion() + ", made by Culvert "
                    + manifest.culvertVersion() + ", and this server knows up to " + newest
                    + ". Restore it with that version of Culvert or a later one.");
        }
        manifest.migrations().forEach((version, checksum) -> {
            if (!checksum.equals(brought.get(version))) {
                throw new BackupException("The backup was made with another migration " + version
                        + " than this server brings, so its tables cannot be laid. Restore it with Culvert "
                        + manifest.culvertVersion() + ".");
            }
        });
        if (value(connection, "SELECT to_regclass('public." + Catalogue.MIGRATIONS + "')") != null) {
            String laid =
                    SchemaVersions.latest(Catalogue.readMigrations(connection).keySet());
            if (SchemaVersions.ORDER.compare(laid, manifest.schemaVersion()) > 0) {
                throw new BackupException("The tables in the database are of schema " + laid
                        + " already, later than the backup's " + manifest.schemaVersion()
                        + ". Restore into a database without tables.");
            }
        }
    }

    private void load(BackupFile backup, Connection connection) throws SQLException, IOException {
        BackupManifest manifest = backup.manifest();
        List<Catalogue.Table> tables = Catalogue.listTables(connection).stream()
                .filter(table -> !table.name().equals(Catalogue.MIGRATIONS))
                .toList();
        refuseOtherTables(tables, manifest);
        execute(
                connection,
                "LOCK TABLE "
                        + String.join(
                                ", ", tables.stream().map(Catalogue.Table::sql).toList())
                        + " IN ACCESS EXCLUSIVE MODE");
        // Once more, now that nobody else can write: a server may have begun on this database meanwhile.
        refuseRecords(connection);
        List<Catalogue.Attached> keys = Catalogue.listForeignKeys(connection);
        List<Catalogue.Attached> triggers = Catalogue.listTriggers(connection);
        for (Catalogue.Attached key : keys) {
            execute(connection, "ALTER TABLE " + key.table() + " DROP CONSTRAINT " + key.name());
        }
        for (Catalogue.Attached trigger : triggers) {
            execute(connection, "ALTER TABLE " + trigger.table() + " DISABLE TRIGGER " + trigger.name());
        }
        execute(
                connection,
                "TRUNCATE "
                        + String.join(
                                ", ", tables.stream().map(Catalogue.Table::sql).toList()));
        int done = 0;
        for (BackupManifest.TablePart part : manifest.tables()) {
            try (InputStream in = backup.read(part)) {
                RowTally loaded = TableCopy.copyIn(connection, part, in);
                if (!loaded.content().equals(part.content())) {
                    throw new BackupException("The table " + part.name() + " changed in the file while it was read.");
                }
            }
            progress.after("Restoring", ++done, manifest.tables().size(), part);
        }
        progress.say("Checking what was loaded ...");
        for (Catalogue.Attached trigger : triggers) {
            execute(connection, "ALTER TABLE " + trigger.table() + " ENABLE TRIGGER " + trigger.name());
        }
        for (Catalogue.Attached key : keys) {
            execute(
                    connection,
                    "ALTER TABLE " + key.table() + " ADD CONSTRAINT " + key.name() + " " + key.definition());
        }
        compare(connection, manifest);
        restoreSequences(connection, manifest);
    }

    private static void refuseOtherTables(List<Catalogue.Table> tables, BackupManifest manifest) {
        for (BackupManifest.TablePart part : manifest.tables()) {
            if (tables.stream().noneMatch(table -> table.is(part))) {
                throw new BackupException("The backup has a table " + part.name() + " that its schema "
                        + manifest.schemaVersion() + " does not have here. Nothing was restored.");
            }
        }
        for (Catalogue.Table table : tables) {
            if (manifest.tables().stream().noneMatch(table::is)) {
                throw new BackupException("The backup lacks the table " + table.name() + ", which its schema "
                        + manifest.schemaVersion() + " has. Nothing was restored.");
            }
        }
    }

    /** Reads every table again as the database now holds it. */
    private static void compare(Connection connection, BackupManifest manifest) throws SQLException, IOException {
        Map<BackupManifest.TablePart, RowTally.Content> held = new HashMap<>();
        for (BackupManifest.TablePart part : manifest.tables()) {
            var table = new Catalogue.Table(part.schema(), part.name(), part.columns());
            held.put(
                    part,
                    TableCopy.copyOut(connection, table, OutputStream.nullOutputStream())
                            .content());
        }
        held.forEach((part, content) -> {
            if (!content.equals(part.content())) {
                throw new BackupException("The table " + part.name() + " does not hold what was loaded into it ("
                        + content.rows() + " rows of " + part.rows() + "). Nothing was restored.");
            }
        });
    }

    private static void restoreSequences(Connection connection, BackupManifest manifest) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("SELECT setval(?::regclass, ?, ?)")) {
            for (BackupManifest.SequencePart sequence : manifest.sequences()) {
                statement.setString(1, Catalogue.quoted(sequence.schema()) + "." + Catalogue.quoted(sequence.name()));
                statement.setLong(2, sequence.lastValue());
                statement.setBoolean(3, sequence.called());
                statement.execute();
            }
        }
    }

    /** Brings what was loaded to the schema of this build. */
    void migrateForward() {
        migrations.migrateForward();
    }

    /**
     * Ends what a person was signed in by, and links that may have been used since. Tokens stay: programs hold them, and
     * whoever lost one revokes it.
     */
    void endSignIns() {
        try (Connection connection = access.connectAsOwner("culvert restore")) {
            connection.setAutoCommit(false);
            execute(connection, "UPDATE public.sessions SET ended_at = now() WHERE ended_at IS NULL");
            execute(
                    connection,
                    "UPDATE public.one_time_links SET expires_at = now() WHERE used_at IS NULL AND expires_at > now()");
            connection.commit();
        } catch (SQLException e) {
            throw new BackupException(
                    "The records are restored, but sessions of then are not ended: " + e.getMessage()
                            + ". Restore again, into another empty database.",
                    e);
        }
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static @Nullable String value(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            return rows.next() ? rows.getString(1) : null;
        }
    }
}
