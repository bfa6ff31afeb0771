package org.culvert.platform.geopackage;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;
import org.sqlite.SQLiteDataSource;

/** GeoPackages for tests, made by SQLite's own statements; the tables are those of OGC 12-128r18, annex C. */
public final class Packages {
    /** The three tables without which there is no GeoPackage. */
    public static final String TABLES = """
            CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT, srs_id INTEGER PRIMARY KEY, organization TEXT,
                organization_coordsys_id INTEGER, definition TEXT, description TEXT);
            CREATE TABLE gpkg_contents (table_name TEXT PRIMARY KEY, data_type TEXT, identifier TEXT, description TEXT,
                last_change DATETIME, min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER);
            CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT, geometry_type_name TEXT, srs_id INTEGER,
                z TINYINT, m TINYINT);
            INSERT INTO gpkg_spatial_ref_sys VALUES ('WGS 84', 4326, 'EPSG', 4326, 'undefined', '');
            """;

    private Packages() {}

    /** Tells of a layer in degrees; its table is somebody else's to make. */
    public static String layer(String table) {
        return """
                INSERT INTO gpkg_contents (table_name, data_type, srs_id) VALUES ('%1$s', 'features', 4326);
                INSERT INTO gpkg_geometry_columns VALUES ('%1$s', 'geom', 'LINESTRING', 4326, 0, 0);
                """.formatted(table);
    }

    /** A layer with its table, which has a name besides the geometry. */
    public static String table(String table) {
        return layer(table) + "CREATE TABLE " + table
                + " (fid INTEGER PRIMARY KEY, geom LINESTRING, name TEXT, speed INTEGER);\n";
    }

    /** A line from one position to another along a parallel of latitude, as a blob of SQL. */
    public static String line(double fromLongitude, double toLongitude, double latitude) {
        var octets = ByteBuffer.allocate(8 + 9 + 32).order(ByteOrder.LITTLE_ENDIAN);
        octets.put((byte) 'G').put((byte) 'P').put((byte) 0).put((byte) 1).putInt(4326);
        octets.put((byte) 1).putInt(2).putInt(2);
        octets.putDouble(fromLongitude)
                .putDouble(latitude)
                .putDouble(toLongitude)
                .putDouble(latitude);
        return "x'" + HexFormat.of().formatHex(octets.array()) + "'";
    }

    /** The octets of a file in which statements were done, one after the other. */
    public static byte[] made(String statements) {
        try {
            Path folder = Files.createTempDirectory("made");
            Path file = folder.resolve("made.sqlite");
            try {
                var source = new SQLiteDataSource();
                source.setUrl("jdbc:sqlite:" + file);
                try (Connection connection = source.getConnection();
                        Statement statement = connection.createStatement()) {
                    for (String one : statements.split(";\n")) {
                        if (!one.isBlank()) {
                            statement.executeUpdate(one);
                        }
                    }
                }
                return Files.readAllBytes(file);
            } finally {
                Files.deleteIfExists(file);
                Files.deleteIfExists(folder);
            }
        } catch (IOException | SQLException wrong) {
            throw new IllegalStateException(wrong);
        }
    }

    static GeoPackage open(byte[] octets) {
        return GeoPackage.open(new ByteArrayInputStream(octets));
    }
}
