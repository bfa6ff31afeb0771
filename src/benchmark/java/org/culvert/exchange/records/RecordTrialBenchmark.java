package org.culvert.exchange.records;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import org.culvert.exchange.demo.RoadsForBenchmark;
import org.culvert.exchange.reading.FileSigns;
import org.culvert.exchange.reading.Headings.Field;
import org.culvert.exchange.reading.ReadRow;
import org.culvert.exchange.reading.ReadingSettings;
import org.culvert.exchange.reading.RowReader;
import org.culvert.exchange.reading.TextRows;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.Position;
import org.culvert.road.PlacesForBenchmark;
import org.culvert.road.network.RoadNetwork;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.taxon.TaxonService.TaxonView;
import org.postgresql.PGConnection;

/**
 * A trial of a million old records on the roads of the demo region: from the octets of the file, through reading, looking up and
 * putting on roads, to rows in the database; and beside it a plain copy of the same file into a table of texts, which is
 * what {@code psql}'s {@code \copy} does.
 *
 * <p>{@code RecordTrialBenchmark FOLDER URL USER PASSWORD [ROWS]}: of a database of whoever runs it, in which it makes a schema
 * {@code personal} with the one table.
 */
public final class RecordTrialBenchmark {
    private static final long SEED = 20261129;
    private static final String[] ANIMALS = {
        "grey bush wallaby",
        "Wallabia inventa",
        "long-necked turtle",
        "Turtles",
        "koala",
        "ring-tailed possum",
        "kookaburra",
        "wombat ",
        "Red Fox-bat",
        "unkown",
        "cat",
        "bandycoot"
    };
    private static final List<String> HEADINGS = List.of(
            "id", "date", "time", "road", "km", "latitude", "longitude", "accuracy", "species", "number", "remarks");

    private RecordTrialBenchmark() {}

    public static void main(String[] arguments) throws IOException, SQLException {
        Path file = Files.createDirectories(Path.of(arguments[0])).resolve("records.csv");
        int rows = arguments.length > 4 ? Integer.parseInt(arguments[4]) : 1_000_000;
        RoadNetwork network = RoadsForBenchmark.network();
        write(file, rows, network);
        System.out.printf(Locale.ROOT, "%d rows, %d MB; %d links%n", rows, Files.size(file) >> 20, network.linkCount());
        try (Connection connection = DriverManager.getConnection(arguments[1], arguments[2], arguments[3])) {
            lay(connection);
            for (int round = 1; round <= 3; round++) {
                double reading = read(file);
                double trial = tryOut(file, network, connection);
                double plain = copy(file, connection);
                System.out.printf(
                        Locale.ROOT,
                        "round %d: reading alone %.0f rows/s; trial %.1f s, %.0f rows/s; plain copy %.1f s: %.1f times as long;"
                                + " heap at most %d MB%n",
                        round,
                        rows / reading,
                        trial,
                        rows / trial,
                        plain,
                        trial / plain,
                        heapPeak() >> 20);
            }
        }
    }

    private static long heapPeak() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == java.lang.management.MemoryType.HEAP)
                .map(MemoryPoolMXBean::getPeakUsage)
                .mapToLong(java.lang.management.MemoryUsage::getUsed)
                .sum();
    }

    private static void write(Path file, int rows, RoadNetwork network) throws IOException {
        var random = new SplittableRandom(SEED);
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            out.write(String.join(",", HEADINGS) + "\r\n");
            for (int i = 1; i <= rows; i++) {
                int link = random.nextInt(network.linkCount());
                double metres = random.nextDouble() * network.graph().length(link);
                Position on = network.positionAt(link, metres);
                LocalPlane plane = LocalPlane.around(on);
                Position at = plane.inverse(random.nextDouble(-12, 12), random.nextDouble(-12, 12));
                String road = network.roadOf(link).named() && random.nextInt(3) > 0
                        ? network.roadOf(link).label()
                        : "";
                LocalDate day = LocalDate.of(2015, 1, 1).plusDays(random.nextInt(4000));
                boolean byChainage = !road.isEmpty() && random.nextInt(5) == 0;
                boolean nowhere = !road.isEmpty() && random.nextInt(30) == 0;
                out.write(String.format(
                        Locale.ROOT,
                        "R%07d,%s,%s,%s,%s,%s,%s,%s,%s,%d,%s\r\n",
                        i,
                        random.nextInt(500) == 0 ? "n/a" : day,
                        random.nextInt(3) == 0 ? "" : LocalTime.of(random.nextInt(24), random.nextInt(60)),
                        road.indexOf(',') < 0 ? road : '"' + road + '"',
                        byChainage ? String.format(Locale.ROOT, "%.1f", network.chainageAt(link, metres) / 1000) : "",
                        byChainage || nowhere ? "" : String.format(Locale.ROOT, "%.5f", at.latitude()),
                        byChainage || nowhere ? "" : String.format(Locale.ROOT, "%.5f", at.longitude()),
                        random.nextInt(4) == 0 ? "20" : "",
                        ANIMALS[random.nextInt(ANIMALS.length)],
                        1 + random.nextInt(2),
                        random.nextInt(4) == 0 ? "\"on the verge, near \"\"the\"\" culvert\"" : ""));
            }
        }
    }

    private static void lay(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("create schema if not exists personal");
            statement.execute("drop table if exists personal.record_trial_rows, plain");
            statement.execute("""
                    create table personal.record_trial_rows (trial_id uuid not null, number bigint not null,
                        verdict text not null check (verdict in ('right', 'doubtful', 'apart', 'refused')),
                        original text not null, identifier text, happened_at timestamptz, happened_not_before timestamptz,
                        happened_before timestamptz, given_as text, verbatim text, decimal_latitude float8,
                        decimal_longitude float8, coordinate_uncertainty_in_meters float8, road_link_id uuid,
                        road_name text, carriageway text, metres_along_link float8, chainage_metres float8,
                        chainage_precision_metres float8, offset_metres float8, side text,
                        road_is_in_doubt boolean not null default false, other_roads jsonb not null default '[]',
                        taxon_id uuid, taxon_group_id uuid, verbatim_identification text, individual_count integer,
                        vitality text, life_stage text, sex text, cause text, remarks text,
                        findings jsonb not null default '[]', one_with bigint, incident_row bigint,
                        primary key (trial_id, number))
                    """);
            statement.execute("create unlogged table plain ("
                    + String.join(
                            " text, ",
                            HEADINGS.stream()
                                    .map(heading -> '"' + heading + '"')
                                    .toList()) + " text)");
        }
    }

    private static TextRows rows(Reader reader) {
        return new TextRows(
                (into, from, length) -> {
                    try {
                        return reader.read(into, from, length);
                    } catch (IOException e) {
                        throw new UncheckedIOException("the file cannot be read", e);
                    }
                },
                ',',
                HEADINGS.size());
    }

    private static ReadingSettings settings() {
        Map<Field, Integer> columns = new EnumMap<>(Field.class);
        List<Field> fields = List.of(
                Field.identifier,
                Field.day,
                Field.time,
                Field.road,
                Field.chainage,
                Field.decimalLatitude,
                Field.decimalLongitude,
                Field.coordinateUncertaintyInMeters,
                Field.scientificName,
                Field.individualCount,
                Field.remarks);
        for (int i = 0; i < fields.size(); i++) {
            columns.put(fields.get(i), i);
        }
        return ReadingSettings.of(columns)
                .uncertaintyMetres(30.0)
                .cause("collisionWithVehicle")
                .settings();
    }

    private interface Taker {
        void take(ReadRow row);
    }

    private static void each(Path file, FileSigns signs, Taker taker) throws IOException {
        var reader = new RowReader(settings(), HEADINGS, LocalDate.of(2026, 11, 29), ZoneOffset.UTC);
        try (Reader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            TextRows table = rows(text);
            table.next();
            while (table.next()) {
                ReadRow row = reader.read(table.number(), table.original(), table.cells(), table.isQuoteBroken());
                signs.take(row);
                taker.take(row);
            }
        }
    }

    private static double seconds(long begun) {
        return (System.nanoTime() - begun) / 1e9;
    }

    private static double read(Path file) throws IOException {
        long begun = System.nanoTime();
        long[] count = new long[1];
        each(
                file,
                new FileSigns(null, List.of()),
                row -> count[0] += row.findings().size());
        return seconds(begun);
    }

    private static double tryOut(Path file, RoadNetwork network, Connection connection)
            throws IOException, SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("truncate personal.record_trial_rows");
        }
        var judge = new RowJudge(
                animals(),
                PlacesForBenchmark.on(network),
                null,
                ZoneOffset.UTC,
                Set.of("collisionWithVehicle", "unknown"),
                Instant.parse("2026-11-29T00:00:00Z"));
        long begun = System.nanoTime();
        try (var run = new TrialRun(new UUID(0, 7), judge, connection, batch -> {})) {
            each(file, new FileSigns(null, List.of()), run::accept);
            run.finish();
            double seconds = seconds(begun);
            System.out.printf(
                    Locale.ROOT,
                    "%d right, %d doubtful, %d apart, %d refused%n",
                    run.rows(Verdict.right),
                    run.rows(Verdict.doubtful),
                    run.rows(Verdict.apart),
                    run.rows(Verdict.refused));
            return seconds;
        }
    }

    private static AnimalWords animals() {
        List<GroupView> groups = new ArrayList<>();
        List<TaxonView> taxa = new ArrayList<>();
        for (String name : List.of("turtles", "macropods", "koalas", "possums", "birds", "wombats", "flying-foxes")) {
            groups.add(new GroupView(new UUID(2, groups.size()), name, name, null, false, false, false, null));
        }
        for (int i = 0; i < 60; i++) {
            String vernacular =
                    i < ANIMALS.length ? ANIMALS[i].strip() : "invented animal of sort " + (char) ('a' + i % 26) + i;
            if (!vernacular.equals("unkown") && !vernacular.equals("cat") && !vernacular.equals("bandycoot")) {
                taxa.add(new TaxonView(
                        new UUID(3, i),
                        "Inventus primus" + (char) ('a' + i % 26) + i,
                        vernacular,
                        "species",
                        "turtles",
                        new UUID(2, i % 7),
                        null,
                        null,
                        null));
            }
        }
        return new AnimalWords(taxa, groups, List.of());
    }

    private static double copy(Path file, Connection connection) throws IOException, SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("truncate plain");
        }
        long begun = System.nanoTime();
        try (Reader text = Files.newBufferedReader(file)) {
            connection
                    .unwrap(PGConnection.class)
                    .getCopyAPI()
                    .copyIn("copy plain from stdin (format csv, header)", text);
        }
        return seconds(begun);
    }
}
