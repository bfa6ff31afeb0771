package org.culvert.hotspot.stats;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.culvert.road.network.RoadGraph;

/** Values from outside the project, as they came. */
public final class Checks {
    private Checks() {}

    public static List<CSVRecord> csv(String path) {
        var stream = Objects.requireNonNull(Checks.class.getResourceAsStream("/checks/" + path), path);
        try (var reader = new InputStreamReader(stream, StandardCharsets.UTF_8)) {
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

    /** Rows of numbers without headings. */
    public static double[][] matrix(String path) {
        try (var stream = Objects.requireNonNull(Checks.class.getResourceAsStream("/checks/" + path), path)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(line -> Arrays.stream(line.split(",", -1))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toArray(double[][]::new);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static JsonNode json(String path) {
        try (var stream = Objects.requireNonNull(Checks.class.getResourceAsStream("/checks/" + path), path)) {
            return new ObjectMapper().readTree(stream);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static double[] numbers(JsonNode array) {
        double[] numbers = new double[array.size()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = array.get(i).asDouble();
        }
        return numbers;
    }

    public static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    public static double[] column(List<CSVRecord> rows, String column) {
        return rows.stream().mapToDouble(row -> number(row, column)).toArray();
    }

    /** The small network: 9 nodes, 10 links, a loop, a Y, dead ends. Links are numbered as in the file, less one. */
    public static RoadGraph smallNetwork() {
        List<CSVRecord> segments = csv("net_small/segments.csv");
        return new RoadGraph(
                9,
                segments.stream()
                        .mapToInt(row -> Integer.parseInt(row.get("from")) - 1)
                        .toArray(),
                segments.stream()
                        .mapToInt(row -> Integer.parseInt(row.get("to")) - 1)
                        .toArray(),
                column(segments, "length"));
    }
}
