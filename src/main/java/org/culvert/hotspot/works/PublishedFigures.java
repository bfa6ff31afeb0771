package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** What others have measured and published, with its citation: what works did elsewhere, and how much is never reported. */
@ApplicationScoped
public class PublishedFigures {
    /**
     * What works of a kind did elsewhere.
     *
     * @param kinds of works that it tells of; none where it tells of any
     * @param reductionPercent on average; null where there is none
     * @param rangeIs what the range is, or what there is instead of a figure
     * @param read how much of the source was read
     */
    public record Elsewhere(
            List<String> kinds,
            String works,
            String measured,
            String animals,
            @Nullable Double reductionPercent,
            @Nullable Double reductionLowPercent,
            @Nullable Double reductionHighPercent,
            @Nullable String rangeIs,
            String design,
            String read,
            String source,
            @Nullable String doi) {}

    /** How many collisions may stand behind one that is reported, as measured somewhere else. */
    public record Unreported(
            String what,
            double low,
            double high,
            String where,
            String read,
            String source,
            @Nullable String doi) {}

    private final List<Elsewhere> elsewhere;
    private final List<Unreported> unreported;

    PublishedFigures() {
        this.elsewhere = read("/works-elsewhere.csv").stream()
                .map(row -> new Elsewhere(
                        row.get("kinds").isBlank()
                                ? List.of()
                                : List.of(row.get("kinds").split(" ")),
                        row.get("works"),
                        row.get("measured"),
                        row.get("animals"),
                        number(row, "reductionPercent"),
                        number(row, "reductionLowPercent"),
                        number(row, "reductionHighPercent"),
                        text(row, "rangeIs"),
                        row.get("design"),
                        row.get("read"),
                        row.get("source"),
                        text(row, "doi")))
                .toList();
        this.unreported = read("/under-reporting.csv").stream()
                .map(row -> new Unreported(
                        row.get("what"),
                        Double.parseDouble(row.get("low")),
                        Double.parseDouble(row.get("high")),
                        row.get("where"),
                        row.get("read"),
                        row.get("source"),
                        text(row, "doi")))
                .toList();
    }

    /** All rows, or those that tell of a kind or of any. */
    List<Elsewhere> elsewhere(@Nullable WorksKind kind) {
        return elsewhere.stream()
                .filter(row ->
                        kind == null || row.kinds().isEmpty() || row.kinds().contains(kind.name()))
                .toList();
    }

    /** Whether there is a figure of this kind alone. */
    boolean knows(WorksKind kind) {
        return elsewhere.stream().anyMatch(row -> row.kinds().contains(kind.name()));
    }

    List<Unreported> unreported() {
        return unreported;
    }

    private static @Nullable Double number(CSVRecord row, String column) {
        return row.get(column).isBlank() ? null : Double.valueOf(row.get(column));
    }

    private static @Nullable String text(CSVRecord row, String column) {
        return row.get(column).isBlank() ? null : row.get(column);
    }

    private static List<CSVRecord> read(String resource) {
        InputStream file = PublishedFigures.class.getResourceAsStream(resource);
        if (file == null) {
            throw new IllegalStateException(resource + " is missing");
        }
        try (Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            return CSVFormat.DEFAULT
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(reader)
                    .getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
