package org.culvert.platform.geopackage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.platform.InvalidException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class GeoPackageTest {
    private static final int PAGE = 512;
    private static final int INNER_PAGE_OF_A_TABLE = 5;

    /** A stored query that has no end. */
    private static final String ENDLESS =
            " AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT i AS fid, x'00' AS geom FROM n"
                    + " WHERE i < 0;\n";

    private static final String ROADS = Packages.TABLES + Packages.table("roads")
            + "INSERT INTO roads VALUES (7, " + Packages.line(150, 150.1, -30.5) + ", 'Mill Road', 80);\n"
            + "INSERT INTO roads VALUES (3, NULL, NULL, NULL);\n";

    private static List<String> read(byte[] octets, String... wanted) {
        List<String> read = new ArrayList<>();
        try (GeoPackage file = Packages.open(octets)) {
            file.read(
                    file.layer(null),
                    List.of(wanted),
                    (long key, byte[] geometry, ObjectNode properties) ->
                            read.add(key + " " + (geometry == null ? 0 : geometry.length) + " " + properties));
        }
        return read;
    }

    private static InvalidException.FieldError refused(byte[] octets) {
        try {
            read(octets, "name");
        } catch (InvalidException refused) {
            return refused.errors().get(0);
        }
        throw new AssertionError("it was read");
    }

    @Test
    void rowsComeInTheOrderOfTheirKeysWithWhatWasAskedFor() {
        assertThat(read(Packages.made(ROADS), "name", "speed", "nothing"))
                .containsExactly("3 0 {}", "7 49 {\"name\":\"Mill Road\",\"speed\":80}");
        assertThat(read(Packages.made(ROADS))).containsExactly("3 0 {}", "7 49 {}");
        try (GeoPackage file = Packages.open(Packages.made(ROADS))) {
            assertThat(file.columns(file.layer("roads"))).containsExactly("fid", "name", "speed");
        }
    }

    @Test
    void severalLayersAreNamed() {
        byte[] several = Packages.made(ROADS + Packages.table("paths"));
        try (GeoPackage file = Packages.open(several)) {
            assertThat(file.layer("paths").table()).isEqualTo("paths");
            assertThatThrownBy(() -> file.layer("rivers"))
                    .isInstanceOfSatisfying(
                            InvalidException.class,
                            refused -> assertThat(refused.errors().get(0))
                                    .satisfies(
                                            error -> assertThat(error.field()).isEqualTo("layer"))
                                    .satisfies(
                                            error -> assertThat(error.wanted()).contains("paths, roads")));
        }
        assertThat(refused(several).field()).isEqualTo("layer");
        assertThat(refused(several).wanted()).contains("paths, roads");
    }

    @Test
    void whatIsNoGeoPackageIsRefused() {
        assertThat(refused(new byte[0]).detail()).contains("no SQLite file");
        assertThat(refused("{\"type\":\"FeatureCollection\"}".getBytes(StandardCharsets.UTF_8))
                        .detail())
                .contains("no SQLite file");
        assertThat(refused(Packages.made("CREATE TABLE a (b);\n")).detail()).contains("no table gpkg_contents");
        assertThat(refused(Packages.made(Packages.TABLES)).detail()).contains("no layer");
        assertThat(refused(Packages.made(Packages.TABLES + Packages.layer("roads")))
                        .field())
                .isEqualTo("layer");
        assertThat(refused(Packages.made(Packages.TABLES + Packages.layer("roads") + "CREATE TABLE roads (a);\n"))
                        .detail())
                .contains("damaged");
        byte[] roads = Packages.made(ROADS);
        assertThat(refused(Arrays.copyOf(roads, 100)).field()).isEqualTo("body");
        assertThat(refused(Arrays.copyOf(roads, roads.length / 2)).detail()).contains("damaged");
    }

    @Test
    @Timeout(60)
    void storedQueriesAreNotRun() {
        assertThat(refused(Packages.made(Packages.TABLES + Packages.layer("roads") + "CREATE VIEW roads" + ENDLESS))
                        .detail())
                .contains("stored query");
        assertThat(refused(Packages.made("CREATE VIEW gpkg_contents" + ENDLESS)).detail())
                .contains("no table gpkg_contents");
        String virtual = "CREATE VIRTUAL TABLE roads USING rtree(fid, geom, b);\n";
        assertThat(refused(Packages.made(Packages.TABLES + Packages.layer("roads") + virtual))
                        .detail())
                .contains("stored query");
    }

    @Test
    void columnsThatTheFileWouldComputeAreNone() {
        String computed = Packages.TABLES + Packages.layer("roads")
                + "CREATE TABLE roads (fid INTEGER PRIMARY KEY, geom BLOB, name TEXT AS (hex(zeroblob(10000000))));\n"
                + "INSERT INTO roads (fid) VALUES (1);\n";
        assertThat(read(Packages.made(computed), "name")).containsExactly("1 0 {}");
        String geometry = Packages.TABLES + Packages.layer("roads")
                + "CREATE TABLE roads (fid INTEGER PRIMARY KEY, name TEXT, geom BLOB AS (zeroblob(10000000)));\n";
        assertThat(refused(Packages.made(geometry)).detail()).contains("damaged");
    }

    /** Each page of the tree lists the next one many times: short as a file, endless as a table. */
    @Test
    @Timeout(60)
    void pagesThatAreUsedOverAndOverAreFound() {
        var rows = new StringBuilder("PRAGMA page_size = 512;\nBEGIN;\n" + Packages.TABLES + Packages.table("roads"));
        for (int i = 1; i <= 4000; i++) {
            rows.append("INSERT INTO roads VALUES (%s, %s, 'M', 1);\n".formatted(i, Packages.line(150, 151, -30)));
        }
        byte[] file = Packages.made(rows + "COMMIT;\n");
        List<Integer> inner = new ArrayList<>();
        List<Integer> children = new ArrayList<>();
        for (int page = 1; page <= file.length / PAGE; page++) {
            // The file's own header comes before the first page
            if (file[PAGE * (page - 1)] == INNER_PAGE_OF_A_TABLE) {
                inner.add(page);
                pointers(file, page).forEach(pointer -> children.add(number(file, pointer)));
            }
        }
        inner.sort(Comparator.comparing(page -> children.contains(page) ? 1 : 0));
        int leaf = number(file, pointers(file, inner.get(inner.size() - 1)).get(0));
        for (int i = 0; i < inner.size(); i++) {
            int next = i + 1 < inner.size() ? inner.get(i + 1) : leaf;
            for (int pointer : pointers(file, inner.get(i))) {
                ByteBuffer.wrap(file).putInt(pointer, next);
            }
        }
        assertThat(inner).hasSizeBetween(5, 18);
        assertThat(refused(file).detail()).contains("More comes out of the file than it is long");
    }

    /** Where a page says which pages are below it (SQLite's file format, section 1.6). */
    private static List<Integer> pointers(byte[] file, int page) {
        int at = PAGE * (page - 1);
        List<Integer> pointers = new ArrayList<>();
        pointers.add(at + 8);
        for (int cell = 0; cell < ByteBuffer.wrap(file).getShort(at + 3); cell++) {
            pointers.add(at + ByteBuffer.wrap(file).getShort(at + 12 + 2 * cell));
        }
        return pointers;
    }

    private static int number(byte[] file, int at) {
        return ByteBuffer.wrap(file).getInt(at);
    }

    @Test
    @Timeout(120)
    void whateverOctetsAreChangedReadingEnds() {
        byte[] roads = Packages.made(ROADS);
        int read = 0;
        int refused = 0;
        for (int seed = 1; seed <= 400; seed++) {
            UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
            byte[] changed = roads.clone();
            for (int i = random.nextInt(1, 40); i > 0; i--) {
                // The first octets alone say that it is SQLite
                changed[random.nextInt(16, changed.length)] = (byte) random.nextInt(256);
            }
            try {
                read(changed, "name", "speed");
                read++;
            } catch (InvalidException wrong) {
                assertThat(wrong.errors()).as("seed %s", seed).hasSize(1);
                refused++;
            }
        }
        assertThat(read).isPositive();
        assertThat(refused).isPositive();
    }

    @Test
    void nothingIsLeftBehind() throws IOException {
        long before = left();
        read(Packages.made(ROADS), "name");
        refused(new byte[3000]);
        refused(Arrays.copyOf(Packages.made(ROADS), 5000));
        assertThat(left()).isEqualTo(before);
    }

    private static long left() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(file -> file.getFileName().toString().matches("culvert.*\\.gpkg.*"))
                    .count();
        }
    }

    @Test
    void aLargeFileIsReadWithinWhatIsAllowed() {
        var rows = new StringBuilder("BEGIN;\n" + Packages.TABLES + Packages.table("roads"));
        for (int i = 1; i <= 30_000; i++) {
            rows.append("INSERT INTO roads VALUES (%s, %s, '', NULL);\n".formatted(i, Packages.line(150, 151, -30)));
        }
        assertThat(read(Packages.made(rows + "COMMIT;\n"), "name", "speed")).hasSize(30_000);
    }
}
