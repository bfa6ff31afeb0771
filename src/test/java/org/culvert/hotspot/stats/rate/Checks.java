package org.culvert.hotspot.stats.rate;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Values from outside the project, as they came. */
final class Checks {
    private Checks() {}

    static JsonNode json(String path) {
        try (InputStream stream = open(path)) {
            return new ObjectMapper().readTree(stream);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<CSVRecord> csv(String path) {
        try (var reader = new InputStreamReader(open(path), StandardCharsets.UTF_8)) {
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

    static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    static int whole(CSVRecord row, String column) {
        return Integer.parseInt(row.get(column));
    }

    private static InputStream open(String path) {
        return Objects.requireNonNull(Checks.class.getResourceAsStream("/checks/" + path), path);
    }
}
