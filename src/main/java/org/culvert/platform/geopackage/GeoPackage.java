package org.culvert.platform.geopackage;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * A GeoPackage as somebody sent it: its layers, and the rows of one.
 *
 * <p>The file may be made to harm. It is opened from a temporary copy for reading alone; stored queries, triggers' and
 * columns' expressions of the file are never run, since only tables are read, and of these only columns that are kept in
 * them; and neither more is read nor more steps are taken than a file of that length needs, as pages that are used over and
 * over would want. What is wrong is said with {@link InvalidException}. Not for use by several threads.
 */
public final class GeoPackage implements AutoCloseable {
    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final String WANTED = "a GeoPackage (OGC 12-128) with a layer of features in a table";
    private static final int LONGEST_VALUE_OCTETS = 32 << 20;
    private static final int LONGEST_NAME = 200;

    /** Steps of SQLite's machine; a row takes some tens of them, and has some tens of octets. */
    private static final int STEPS_AT_ONCE = 10_000;

    private static final long LEAST_STEPS = 10_000_000;
    private static final long STEPS_AN_OCTET = 10;
    private static final int MOST_LAYERS = 1000;
    private static final int MOST_NAMES_SHOWN = 60;

    /**
     * A layer of features.
     *
     * @param table its name
     * @param geometryColumn column that holds the geometries
     * @param srsId number of its reference system within the file: 0 and -1 say that there is none
     * @param organisation who numbers the reference system, such as {@code EPSG}
     * @param code its number there
     * @param definition the reference system in well-known text
     */
    public record Layer(
            String table, String geometryColumn, int srsId, String organisation, int code, String definition) {}

    /** Takes one feature after another. */
    @FunctionalInterface
    public interface Taker {
        /**
         * @param key the row's number in the file
         * @param geometry its geometry as the file has it, or null
         * @param properties values of the columns that were asked for, without those that are null or no plain value
         */
        void take(long key, byte @Nullable [] geometry, ObjectNode properties);
    }

    private final Path file;
    private final long octets;
    private final Connection connection;

    private GeoPackage(Path file, long octets, Connection connection) {
        this.file = file;
        this.octets = octets;
        this.connection = connection;
    }

    /** Takes a copy of what is sent; close it, and the copy is gone. */
    public static GeoPackage open(InputStream sent) {
        Path file = null;
        try {
            file = Files.createTempFile("culvert", ".gpkg");
            long octets = Files.copy(sent, file, StandardCopyOption.REPLACE_EXISTING);
            requireSqlite(file);
            var opened = new GeoPackage(file, octets, connect(file, octets));
            file = null;
            return opened;
        } catch (SQLException broken) {
            throw damaged();
        } catch (IOException broken) {
            throw InvalidException.of("body", "The file could not be read to its end.", WANTED);
        } finally {
            delete(file);
        }
    }

    private static void requireSqlite(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            if (!Arrays.equals(in.readNBytes(SQLITE.length), SQLITE)) {
                throw InvalidException.of("body", "This is no GeoPackage: it is no SQLite file.", WANTED);
            }
        }
    }

    private static Connection connect(Path file, long octets) throws SQLException {
        var config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setPragma(SQLiteConfig.Pragma.LIMIT_LENGTH, Integer.toString(LONGEST_VALUE_OCTETS));
        var source = new SQLiteDataSource(config);
        // Nobody else writes to the copy, so that no lock and no log beside it is looked for
        source.setUrl("jdbc:sqlite:" + file.toUri().toString().replace("file:///", "file:/") + "?immutable=1");
        Connection connection = source.getConnection();
        ProgressHandler.setHandler(connection, STEPS_AT_ONCE, new Steps(octets));
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA trusted_schema = OFF");
            statement.execute("PRAGMA cell_size_check = ON");
            statement.execute("PRAGMA mmap_size = 0");
            statement.execute("PRAGMA query_only = ON");
        } catch (SQLException broken) {
            connection.close();
            throw broken;
        }
        return connection;
    }

    /** Ends whatever goes on for longer than a file of some length can need. */
    private static final class Steps extends ProgressHandler {
        private long left;

        Steps(long octets) {
            this.left = LEAST_STEPS + STEPS_AN_OCTET * octets;
        }

        @Override
        protected int progress() {
            left -= STEPS_AT_ONCE;
            return left < 0 ? 1 : 0;
        }
    }

    private static InvalidException damaged() {
        return InvalidException.of("body", "The file is damaged, or no GeoPackage.", WANTED);
    }

    /**
     * The layer that is meant.
     *
     * @param asked its name, or null where the file has one only
     * @throws InvalidException naming {@code layer} where there are several, with their names
     */
    public Layer layer(@Nullable String asked) {
        List<Layer> layers = layers();
        String names = layers.stream().limit(MOST_NAMES_SHOWN).map(Layer::table).collect(Collectors.joining(", "));
        if (asked == null || asked.isBlank()) {
            if (layers.size() == 1) {
                return layers.get(0);
            }
            throw InvalidException.of(
                    layers.isEmpty() ? "body" : "layer",
                    layers.isEmpty() ? "The file has no layer of features." : "The file has several layers.",
                    layers.isEmpty() ? WANTED : "the name of one of them: " + names);
        }
        return layers.stream()
                .filter(layer -> layer.table().equals(asked.strip()))
                .findFirst()
                .orElseThrow(() -> InvalidException.of(
                        "layer",
                        "The file has no layer of features " + asked.strip() + ".",
                        names.isEmpty() ? WANTED : "one of: " + names));
    }

    private List<Layer> layers() {
        for (String table : List.of("gpkg_contents", "gpkg_geometry_columns", "gpkg_spatial_ref_sys")) {
            if (!isTable(table)) {
                throw InvalidException.of("body", "This is no GeoPackage: it has no table " + table + ".", WANTED);
            }
        }
        List<Layer> layers = new ArrayList<>();
        String sql = "SELECT c.table_name, g.column_name, g.srs_id, s.organization, s.organization_coordsys_id,"
                + " s.definition FROM gpkg_contents c JOIN gpkg_geometry_columns g ON g.table_name = c.table_name"
                + " LEFT JOIN gpkg_spatial_ref_sys s ON s.srs_id = g.srs_id"
                + " WHERE c.data_type = 'features' ORDER BY c.table_name LIMIT " + MOST_LAYERS;
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            while (row.next()) {
                String table = text(row, 1);
                String column = text(row, 2);
                if (!table.isEmpty() && table.length() <= LONGEST_NAME) {
                    layers.add(new Layer(table, column, row.getInt(3), text(row, 4), row.getInt(5), text(row, 6)));
                }
            }
        } catch (SQLException broken) {
            throw damaged();
        }
        return layers;
    }

    private static String text(ResultSet row, int column) throws SQLException {
        String text = row.getString(column);
        return text == null ? "" : text;
    }

    /** Whether there is a table of this name that is neither a stored query nor made by a module. */
    private boolean isTable(String name) {
        try (PreparedStatement find =
                connection.prepareStatement("SELECT type, sql FROM sqlite_master WHERE lower(name) = lower(?)")) {
            find.setString(1, name);
            try (ResultSet row = find.executeQuery()) {
                return row.next()
                        && "table".equals(row.getString(1))
                        && !text(row, 2).strip().toUpperCase(Locale.ROOT).startsWith("CREATE VIRTUAL");
            }
        } catch (SQLException broken) {
            throw damaged();
        }
    }

    /** The columns of a layer that hold attributes; those that the file would compute are none. */
    public List<String> columns(Layer layer) {
        if (!isTable(layer.table())) {
            throw InvalidException.of(
                    "layer",
                    "The layer " + layer.table() + " is a stored query, which is not run here.",
                    "a layer whose features are in a table; most programs make one on export");
        }
        List<String> columns = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA table_info(" + quoted(layer.table()) + ")")) {
            while (row.next()) {
                columns.add(text(row, 2));
            }
        } catch (SQLException broken) {
            throw damaged();
        }
        if (!columns.remove(layer.geometryColumn())) {
            throw damaged();
        }
        return columns;
    }

    /**
     * Reads the features of a layer, in the order of their keys.
     *
     * @param wanted columns whose values are wanted; those that it does not have are left out
     */
    public void read(Layer layer, Collection<String> wanted, Taker taker) {
        List<String> columns = columns(layer).stream().filter(wanted::contains).toList();
        String sql = "SELECT _rowid_, " + quoted(layer.geometryColumn())
                + columns.stream().map(column -> ", " + quoted(column)).collect(Collectors.joining())
                + " FROM " + quoted(layer.table()) + " ORDER BY _rowid_";
        long left = octets;
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            while (row.next()) {
                byte[] geometry = row.getObject(2) instanceof byte[] blob ? blob : null;
                ObjectNode properties = JsonNodeFactory.instance.objectNode();
                left -= 2 + (geometry == null ? 0 : geometry.length);
                for (int i = 0; i < columns.size(); i++) {
                    left -= put(properties, columns.get(i), row.getObject(3 + i));
                }
                if (left < 0) {
                    throw InvalidException.of(
                            "body", "More comes out of the file than it is long: it is damaged.", WANTED);
                }
                taker.take(row.getLong(1), geometry, properties);
            }
        } catch (SQLException broken) {
            throw damaged();
        }
    }

    /** @return the least number of octets that the value takes in the file */
    private static int put(ObjectNode properties, String column, @Nullable Object value) {
        if (value instanceof Integer || value instanceof Long) {
            properties.put(column, ((Number) value).longValue());
        } else if (value instanceof Number number) {
            properties.put(column, number.doubleValue());
        } else if (value instanceof String text) {
            properties.put(column, text);
            return text.length();
        }
        return 0;
    }

    private static String quoted(String name) {
        return '"' + name.replace("\"", "\"\"") + '"';
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException broken) {
            throw new IllegalStateException("a file that was read cannot be closed", broken);
        } finally {
            delete(file);
        }
    }

    private static void delete(@Nullable Path file) {
        if (file != null) {
            try {
                Files.deleteIfExists(file);
            } catch (IOException stays) {
                throw new IllegalStateException("a temporary file cannot be deleted", stays);
            }
        }
    }
}
