package org.culvert.exchange.geopackage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.culvert.exchange.geopackage.GeoPackageFile.Column;
import org.culvert.exchange.geopackage.GeoPackageFile.Feature;
import org.culvert.exchange.geopackage.GeoPackageFile.Layer;
import org.culvert.exchange.geopackage.GeoPackageFile.Type;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKBReader;
import org.locationtech.jts.io.WKTReader;

/** Against the GeoPackage standard, OGC 12-128r18, by its requirements, and GDAL as another reader. */
class GeoPackageFileTest {
    private static final Layer LAYER = new Layer(
            "roads \"near\" here",
            "Roads, near",
            "Two roads; a third that is nowhere.",
            "MULTILINESTRING",
            List.of(
                    new Column("name", Type.TEXT),
                    new Column("lanes", Type.INTEGER),
                    new Column("length \"m\"", Type.REAL),
                    new Column("sealed", Type.BOOLEAN)),
            Instant.parse("2026-11-29T10:00:00Z"));

    @TempDir
    Path folder;

    private static Geometry wkt(String text) throws Exception {
        return new WKTReader().read(text);
    }

    private static List<Feature> features() throws Exception {
        return List.of(
                new Feature(
                        1,
                        wkt("MULTILINESTRING ((150.1 -30.5, 150.25 -30.25), (151 -31, 151.5 -30.75))"),
                        Arrays.asList("Mill Road", 2, 12.5, true)),
                new Feature(
                        7,
                        wkt("MULTILINESTRING ((149.5 -29.5, 149.75 -29.25))"),
                        Arrays.asList(null, null, null, false)),
                new Feature(9, null, Arrays.asList("nowhere ' ; --", 0, -0.5, null)),
                new Feature(10, wkt("MULTILINESTRING EMPTY"), Arrays.asList("empty", 1, 0.0, true)));
    }

    private Connection open(byte[] file) throws Exception {
        Path path = folder.resolve("opened.gpkg");
        Files.write(path, file);
        return DriverManager.getConnection("jdbc:sqlite:" + path);
    }

    private static String one(Connection connection, String sql) throws Exception {
        try (ResultSet row = connection.createStatement().executeQuery(sql)) {
            assertThat(row.next()).as(sql).isTrue();
            return row.getString(1);
        }
    }

    /** Requirements 1 and 2: "SQLite format 3", the application id at octet 68 and the version at octet 60 of the file. */
    @Test
    void req1And2TheFileSaysWhatItIs() throws Exception {
        byte[] file = GeoPackageFile.write(LAYER, features());
        assertThat(new String(file, 0, 15, StandardCharsets.US_ASCII)).isEqualTo("SQLite format 3");
        assertThat(new String(file, 68, 4, StandardCharsets.US_ASCII)).isEqualTo("GPKG");
        assertThat(ByteBuffer.wrap(file, 60, 4).getInt()).isEqualTo(10300);
    }

    /** Requirements 6, 7, 11, 13 and 14. */
    @Test
    void req6And7And11ItsTablesAreWhole() throws Exception {
        try (Connection connection = open(GeoPackageFile.write(LAYER, features()))) {
            assertThat(one(connection, "PRAGMA integrity_check")).isEqualTo("ok");
            try (ResultSet wrong = connection.createStatement().executeQuery("PRAGMA foreign_key_check")) {
                assertThat(wrong.next()).isFalse();
            }
            assertThat(one(
                            connection,
                            "SELECT group_concat(srs_id || organization || organization_coordsys_id) FROM"
                                    + " (SELECT * FROM gpkg_spatial_ref_sys ORDER BY srs_id)"))
                    .isEqualTo("-1NONE-1,0NONE0,4326EPSG4326");
            assertThat(one(
                            connection,
                            "SELECT table_name || '|' || data_type || '|' || last_change || '|' || min_x || '|' || min_y || '|'"
                                    + " || max_x || '|' || max_y || '|' || srs_id FROM gpkg_contents"))
                    .isEqualTo("roads \"near\" here|features|2026-11-29T10:00:00.000Z|149.5|-31.0|151.5|-29.25|4326");
            assertThat(one(
                            connection,
                            "SELECT column_name || geometry_type_name || srs_id || z || m FROM gpkg_geometry_columns"))
                    .isEqualTo("geomMULTILINESTRING432600");
        }
    }

    /** Requirement 19, clause 2.1.3.1: magic, version, flags, system, bounds; then the geometry as ISO WKB. */
    @Test
    void req19AGeometryHasItsHeader() throws Exception {
        Geometry line = wkt("MULTILINESTRING ((150.1 -30.5, 150.25 -30.25))");
        ByteBuffer blob = ByteBuffer.wrap(GeoPackageFile.blob(line)).order(ByteOrder.LITTLE_ENDIAN);
        assertThat(blob.get()).isEqualTo((byte) 'G');
        assertThat(blob.get()).isEqualTo((byte) 'P');
        assertThat(blob.get()).isZero();
        assertThat(blob.get()).as("little endian, bounds in the plane").isEqualTo((byte) 0b0000_0011);
        assertThat(blob.getInt()).isEqualTo(4326);
        assertThat(new double[] {blob.getDouble(), blob.getDouble(), blob.getDouble(), blob.getDouble()})
                .containsExactly(150.1, 150.25, -30.5, -30.25);
        byte[] rest = new byte[blob.remaining()];
        blob.get(rest);
        assertThat(new WKBReader().read(rest)).isEqualTo(line);
        byte[] empty = GeoPackageFile.blob(wkt("MULTILINESTRING EMPTY"));
        assertThat(empty[3]).as("empty, without bounds").isEqualTo((byte) 0b0001_0001);
        assertThat(new WKBReader()
                        .read(Arrays.copyOfRange(empty, 8, empty.length))
                        .isEmpty())
                .isTrue();
    }

    @Test
    void gdalReadsEveryFeatureAndField() throws Exception {
        Path path = folder.resolve("read.gpkg");
        Files.write(path, GeoPackageFile.write(LAYER, features()));
        Process ogrinfo = new ProcessBuilder("ogrinfo", "-ro", "-al", path.toString())
                .redirectErrorStream(true)
                .start();
        String told = new String(ogrinfo.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(ogrinfo.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(told)
                .contains("Layer name: roads \"near\" here", "Geometry: Multi Line String", "Feature Count: 4")
                .contains("Extent: (149.500000, -31.000000) - (151.500000, -29.250000)")
                .contains("FID Column = fid", "Geometry Column = geom", "ID[\"EPSG\",4326]")
                .contains("name: String", "lanes: Integer64", "length \"m\": Real", "sealed: Integer(Boolean)")
                .contains("OGRFeature(roads \"near\" here):7", "name (String) = nowhere ' ; --")
                .contains("MULTILINESTRING ((150.1 -30.5,150.25 -30.25),(151 -31,151.5 -30.75))")
                .doesNotContain("Warning", "ERROR");
    }

    @Test
    void theSameIsTheSameBytesAndALayerMayBeEmpty() throws Exception {
        assertThat(GeoPackageFile.write(LAYER, features())).isEqualTo(GeoPackageFile.write(LAYER, features()));
        try (Connection connection = open(GeoPackageFile.write(LAYER, List.of()))) {
            assertThat(one(connection, "SELECT count(*) FROM \"roads \"\"near\"\" here\""))
                    .isEqualTo("0");
            assertThat(one(connection, "SELECT min_x IS NULL AND max_y IS NULL FROM gpkg_contents"))
                    .isEqualTo("1");
        }
    }
}
