package org.culvert.exchange.reading;

import java.io.IOException;
import java.io.StringReader;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.culvert.exchange.reading.Headings.Field;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Seconds for 200,000 invented rows: taken apart and read, looked through, and only taken apart by Apache Commons CSV. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx400m")
@Warmup(iterations = 3)
@Measurement(iterations = 5)
public class ReadingBenchmark {
    private static final int ROWS = 200_000;
    private static final LocalDate LATEST = LocalDate.of(2026, 11, 29);
    private static final Axes.Box REGION = new Axes.Box(-31, 150, -29, 153);
    private static final Field[] FIELDS = {
        Field.identifier,
        Field.day,
        Field.time,
        Field.decimalLatitude,
        Field.decimalLongitude,
        Field.road,
        Field.chainage,
        Field.direction,
        Field.scientificName,
        Field.individualCount,
        Field.vitality,
        Field.sex,
        Field.remarks
    };

    private String text = "";
    private List<String> headings = List.of();

    @Setup
    public void write() {
        headings = java.util.Arrays.stream(FIELDS).map(Field::name).toList();
        var random = new Random(5);
        String[] animals = {"Macropus giganteus", "Brushtail possum", "Chelodina longicollis", "koala", "dog", "Wombat"
        };
        var table = new StringBuilder(String.join(",", headings)).append('\n');
        for (int i = 0; i < ROWS; i++) {
            table.append(i)
                    .append(',')
                    .append(LocalDate.of(2005, 1, 1).plusDays(random.nextInt(7000)))
                    .append(String.format(
                            Locale.ROOT,
                            ",%d:%02d,%.5f,%.5f,Road %d,%.1f,%c,%s,%d,%s,%s,\"near the bridge, row %d\"%n",
                            random.nextInt(24),
                            random.nextInt(60),
                            -29 - 2 * random.nextDouble(),
                            150 + 3 * random.nextDouble(),
                            random.nextInt(200),
                            80 * random.nextDouble(),
                            "NSEW".charAt(random.nextInt(4)),
                            animals[random.nextInt(animals.length)],
                            1 + random.nextInt(2),
                            random.nextBoolean() ? "dead" : "alive",
                            random.nextBoolean() ? "F" : "unknown",
                            i));
        }
        text = table.toString();
    }

    @Benchmark
    public int read() {
        Map<Field, Integer> columns = new EnumMap<>(Field.class);
        for (int i = 0; i < FIELDS.length; i++) {
            columns.put(FIELDS[i], i);
        }
        ReadingSettings settings =
                ReadingSettings.of(columns).cause("collisionWithVehicle").settings();
        var reader = new RowReader(settings, headings, LATEST, ZoneId.of("UTC"));
        var signs = new FileSigns(REGION, List.of());
        TextRows rows = rows();
        while (rows.next()) {
            signs.take(reader.read(rows.number(), rows.original(), rows.cells(), rows.isQuoteBroken()));
        }
        return signs.findings().size();
    }

    @Benchmark
    public int lookThrough() {
        var inspection = new TableInspection(headings, LATEST, REGION);
        TextRows rows = rows();
        while (rows.next()) {
            inspection.take(rows.cells(), rows.isQuoteBroken());
        }
        return inspection.proposals().size();
    }

    @Benchmark
    public long beside() throws IOException {
        long cells = 0;
        for (CSVRecord row : CSVFormat.RFC4180.parse(new StringReader(text))) {
            cells += row.size();
        }
        return cells;
    }

    private TextRows rows() {
        var rows = new TextRows(new TableStart.Text(text), ',', FIELDS.length);
        rows.next();
        return rows;
    }
}
