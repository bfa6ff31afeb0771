package org.culvert.exchange.geopackage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.WKBWriter;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * Writes a GeoPackage with one layer of features, in degrees on WGS 84, longitude before latitude (OGC 12-128r18, clauses 1
 * and 2.1; the tables are those of its annex C).
 */
public final class GeoPackageFile {
    /** {@code GPKG} in ASCII (requirement 2). */
    private static final int APPLICATION_ID = 0x47504B47;

    /** Version 1.3 (requirement 2). */
    private static final int USER_VERSION = 10300;

    private static final int WGS84 = 4326;
    private static final String GEOMETRY = "geom";
    private static final String KEY = "fid";

    /** What a column holds (table 1 of the standard). */
    public enum Type {
        TEXT,
        INTEGER,
        REAL,
        BOOLEAN,
        /** A day, as ISO 8601 writes it. */
        DATE,
        /** An instant in UTC with its milliseconds. */
        DATETIME;

        public static Type of(@Nullable Object example) {
            if (example instanceof Boolean) {
                return BOOLEAN;
            }
            if (example instanceof Integer || example instanceof Long) {
                return INTEGER;
            }
            return example instanceof Number ? REAL : TEXT;
        }
    }

    public record Column(String name, Type type) {}

    /**
     * A layer.
     *
     * @param table name of its table
     * @param title by which people know it
     * @param description in a sentence or two
     * @param geometryType such as {@code MULTILINESTRING}
     * @param changedAt when what it shows changed last, to the millisecond
     */
    public record Layer(
            String table,
            String title,
            String description,
            String geometryType,
            List<Column> columns,
            Instant changedAt) {}

    /** @param values in the order of the columns */
    public record Feature(int key, @Nullable Geometry geometry, List<@Nullable Object> values) {}

    private GeoPackageFile() {}

    /** The file. It is made in a temporary folder, since SQLite writes to files alone. */
    public static byte[] write(Layer layer, List<Feature> features) {
        try {
            Path folder = Files.createTempDirectory("culvert-gpkg");
            Path file = folder.resolve("layer.gpkg");
            try {
                writeTo(file, layer, features.iterator());
                return Files.readAllBytes(file);
            } finally {
                Files.deleteIfExists(file);
                Files.deleteIfExists(folder);
            }
        } catch (IOException | SQLException e) {
            throw new IllegalStateException("a GeoPackage cannot be written", e);
        }
    }

    /**
     * Writes the file as its features come.
     *
     * @param file that does not exist yet, or is empty
     */
    public static void writeTo(Path file, Layer layer, Iterator<Feature> features) throws SQLException {
        var config = new SQLiteConfig();
        config.setApplicationId(APPLICATION_ID);
        config.setUserVersion(USER_VERSION);
        // The file is thrown away where anything fails
        config.setJournalMode(SQLiteConfig.JournalMode.OFF);
        config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
        var source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file);
        try (Connection connection = source.getConnection()) {
            connection.setAutoCommit(false);
            try (Statement statement = connection.createStatement()) {
                for (String sql : TABLES) {
                    statement.executeUpdate(sql);
                }
                statement.executeUpdate(table(layer));
            }
            register(connection, layer, insert(connection, layer, features));
            connection.commit();
        }
    }

    private static void register(Connection connection, Layer layer, Envelope all) throws SQLException {
        try (PreparedStatement systems =
                connection.prepareStatement("INSERT INTO gpkg_spatial_ref_sys VALUES (?, ?, ?, ?, ?, ?)")) {
            row(systems, "Undefined Cartesian SRS", -1, "NONE", -1, "undefined", "of no system, in a plane");
            row(systems, "Undefined geographic SRS", 0, "NONE", 0, "undefined", "of no system, on a globe");
            row(systems, "WGS 84 geodetic", WGS84, "EPSG", WGS84, WKT, "longitude and latitude in decimal degrees");
        }
        try (PreparedStatement contents = connection.prepareStatement(
                "INSERT INTO gpkg_contents VALUES (?, 'features', ?, ?, ?, ?, ?, ?, ?, ?)")) {
            boolean empty = all.isNull();
            row(
                    contents,
                    layer.table(),
                    layer.title(),
                    layer.description(),
                    instant(layer.changedAt()),
                    empty ? null : all.getMinX(),
                    empty ? null : all.getMinY(),
                    empty ? null : all.getMaxX(),
                    empty ? null : all.getMaxY(),
                    WGS84);
        }
        try (PreparedStatement columns =
                connection.prepareStatement("INSERT INTO gpkg_geometry_columns VALUES (?, ?, ?, ?, 0, 0)")) {
            row(columns, layer.table(), GEOMETRY, layer.geometryType(), WGS84);
        }
    }

    /** @return the box of all geometries */
    private static Envelope insert(Connection connection, Layer layer, Iterator<Feature> features) throws SQLException {
        var all = new Envelope();
        String marks = "?, ".repeat(layer.columns().size() + 1) + '?';
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT INTO " + quoted(layer.table()) + " VALUES (" + marks + ")")) {
            while (features.hasNext()) {
                Feature feature = features.next();
                List<@Nullable Object> values = new ArrayList<>();
                values.add(feature.key());
                Geometry geometry = feature.geometry();
                values.add(geometry == null ? null : blob(geometry));
                values.addAll(feature.values());
                row(insert, values.toArray());
                if (geometry != null) {
                    all.expandToInclude(geometry.getEnvelopeInternal());
                }
            }
        }
        return all;
    }

    /** An instant as a column of the type DATETIME has it. */
    public static String instant(Instant instant) {
        return instant.truncatedTo(ChronoUnit.MILLIS).toString().replaceFirst(":(\\d\\d)Z$", ":$1.000Z");
    }

    private static void row(PreparedStatement statement, @Nullable Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            Object value = values[i];
            statement.setObject(i + 1, value instanceof Boolean yes ? Integer.valueOf(yes ? 1 : 0) : value);
        }
        statement.executeUpdate();
    }

    private static String table(Layer layer) {
        var sql = new StringBuilder("CREATE TABLE " + quoted(layer.table()) + " (" + quoted(KEY)
                + " INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, " + quoted(GEOMETRY) + ' ' + layer.geometryType());
        for (Column column : layer.columns()) {
            sql.append(", ").append(quoted(column.name())).append(' ').append(column.type());
        }
        return sql.append(')').toString();
    }

    private static String quoted(String name) {
        return '"' + name.replace("\"", "\"\"") + '"';
    }

    /** Header and well-known binary (clause 2.1.3): little endian, with the bounds in the plane. */
    static byte[] blob(Geometry geometry) {
        byte[] wkb = new WKBWriter(2, ByteOrderValues.LITTLE_ENDIAN).write(geometry);
        boolean empty = geometry.isEmpty();
        ByteBuffer blob = ByteBuffer.allocate(8 + (empty ? 0 : 32) + wkb.length).order(ByteOrder.LITTLE_ENDIAN);
        blob.put("GP".getBytes(StandardCharsets.US_ASCII));
        blob.put((byte) 0);
        blob.put((byte) (empty ? 0b0001_0001 : 0b0000_0011));
        blob.putInt(WGS84);
        if (!empty) {
            Envelope box = geometry.getEnvelopeInternal();
            blob.putDouble(box.getMinX()).putDouble(box.getMaxX());
            blob.putDouble(box.getMinY()).putDouble(box.getMaxY());
        }
        return blob.put(wkb).array();
    }

    private static final String WKT =
            "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563,AUTHORITY[\"EPSG\",\"7030\"]],"
                    + "AUTHORITY[\"EPSG\",\"6326\"]],PRIMEM[\"Greenwich\",0,AUTHORITY[\"EPSG\",\"8901\"]],"
                    + "UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\",\"9122\"]],AUTHORITY[\"EPSG\",\"4326\"]]";

    private static final List<String> TABLES = List.of("""
            CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT NOT NULL, srs_id INTEGER PRIMARY KEY,
                organization TEXT NOT NULL, organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL,
                description TEXT)""", """
            CREATE TABLE gpkg_contents (table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL,
                identifier TEXT UNIQUE, description TEXT DEFAULT '',
                last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
                min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER,
                CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id))""", """
            CREATE TABLE gpkg_geometry_columns (table_name TEXT NOT NULL, column_name TEXT NOT NULL,
                geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL, z TINYINT NOT NULL, m TINYINT NOT NULL,
                CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
                CONSTRAINT uk_gc_table_name UNIQUE (table_name),
                CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
                CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id))""");
}
