package org.culvert.geo;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Reads tables of outside values from the test resources. */
public final class CheckFiles {
    private CheckFiles() {}

    /** Rows of a CSV file under {@code checks}, by the names of its first row; lines that begin with # are remarks. */
    public static List<CSVRecord> rows(String path) {
        return parsed(path, CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true));
    }

    /** Rows of a CSV file under {@code checks} that has no names. */
    public static List<CSVRecord> rowsWithoutNames(String path) {
        return parsed(path, CSVFormat.DEFAULT.builder());
    }

    public static List<String> lines(String path) {
        return text("/checks/" + path).lines().toList();
    }

    /** A test resource by its whole path. */
    public static String text(String path) {
        try (InputStream in = Objects.requireNonNull(CheckFiles.class.getResourceAsStream(path), path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static List<CSVRecord> parsed(String path, CSVFormat.Builder format) {
        InputStream in = Objects.requireNonNull(CheckFiles.class.getResourceAsStream("/checks/" + path), path);
        try (Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8)) {
            return format.setCommentMarker('#').get().parse(reader).getRecords();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
