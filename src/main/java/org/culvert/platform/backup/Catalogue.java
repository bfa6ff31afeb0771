package org.culvert.platform.backup;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What the database says about its own tables: which there are, and what holds them together. */
final class Catalogue {
    static final String MIGRATIONS = "flyway_schema_history";

    private static final String OURS = """
             n.nspname IN ('public', 'personal')
             AND NOT EXISTS (SELECT 1 FROM pg_depend d WHERE d.objid = c.oid AND d.deptype = 'e')
            """;

    /** A table of ours with its columns, but for those the database computes itself. */
    record Table(String schema, String name, List<String> columns) {
        String sql() {
            return quoted(schema) + "." + quoted(name);
        }

        String columnsSql() {
            return String.join(", ", columns.stream().map(Catalogue::quoted).toList());
        }

        boolean is(BackupManifest.TablePart part) {
            return schema.equals(part.schema()) && name.equals(part.name());
        }
    }

    /** Something that can be taken off a table and put on again. */
    record Attached(String table, String name, String definition) {}

    private Catalogue() {}

    static List<Table> listTables(Connection connection) throws SQLException {
        List<Table> tables = new ArrayList<>();
        String sql = """
                SELECT n.nspname, c.relname, array_agg(a.attname::text ORDER BY a.attnum)
                FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
                JOIN pg_attribute a ON a.attrelid = c.oid
                    AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = ''
                WHERE c.relkind = 'r' AND %s GROUP BY 1, 2 ORDER BY 1, 2
                """.formatted(OURS);
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                String[] columns = (String[]) rows.getArray(3).getArray();
                tables.add(new Table(rows.getString(1), rows.getString(2), List.of(columns)));
            }
        }
        return tables;
    }

    static List<BackupManifest.SequencePart> readSequences(Connection connection) throws SQLException {
        List<String[]> names = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("""
                        SELECT n.nspname, c.relname FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
                        WHERE c.relkind = 'S' AND %s ORDER BY 1, 2
                        """.formatted(OURS))) {
            while (rows.next()) {
                names.add(new String[] {rows.getString(1), rows.getString(2)});
            }
        }
        List<BackupManifest.SequencePart> sequences = new ArrayList<>();
        for (String[] name : names) {
            try (Statement statement = connection.createStatement();
                    ResultSet rows = statement.executeQuery(
                            "SELECT last_value, is_called FROM " + quoted(name[0]) + "." + quoted(name[1]))) {
                rows.next();
                sequences.add(new BackupManifest.SequencePart(name[0], name[1], rows.getLong(1), rows.getBoolean(2)));
            }
        }
        return sequences;
    }

    static List<Attached> listForeignKeys(Connection connection) throws SQLException {
        return listAttached(connection, """
                SELECT format('%%I.%%I', n.nspname, c.relname), k.conname, pg_get_constraintdef(k.oid)
                FROM pg_constraint k JOIN pg_class c ON c.oid = k.conrelid JOIN pg_namespace n ON n.oid = c.relnamespace
                WHERE k.contype = 'f' AND %s ORDER BY 1, 2
                """.formatted(OURS));
    }

    /** Triggers that are in force, but for the database's own. */
    static List<Attached> listTriggers(Connection connection) throws SQLException {
        return listAttached(connection, """
                SELECT format('%%I.%%I', n.nspname, c.relname), t.tgname, pg_get_triggerdef(t.oid)
                FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_namespace n ON n.oid = c.relnamespace
                WHERE NOT t.tgisinternal AND t.tgenabled = 'O' AND c.relkind = 'r' AND %s ORDER BY 1, 2
                """.formatted(OURS));
    }

    private static List<Attached> listAttached(Connection connection, String sql) throws SQLException {
        List<Attached> found = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                found.add(new Attached(rows.getString(1), quoted(rows.getString(2)), rows.getString(3)));
            }
        }
        return found;
    }

    /** Checksum by version of the migrations the database has had. */
    static Map<String, Integer> readMigrations(Connection connection) throws SQLException {
        Map<String, Integer> migrations = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT version, checksum FROM public." + MIGRATIONS
                        + " WHERE success AND version IS NOT NULL AND checksum IS NOT NULL")) {
            while (rows.next()) {
                migrations.put(rows.getString(1), rows.getInt(2));
            }
        }
        return migrations;
    }

    static String quoted(String identifier) {
        return "\"" + identifier.replace("\"", "\"\"") + "\"";
    }
}
