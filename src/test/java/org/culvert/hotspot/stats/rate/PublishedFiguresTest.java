package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** The figures of others that go with a report are whole, and none stands without its source and its range or a word on it. */
class PublishedFiguresTest {
    @Test
    void whatWorksDidElsewhereHasSourceMeasureAndRange() throws IOException {
        List<CSVRecord> rows = read("/works-elsewhere.csv");
        assertThat(rows).hasSizeGreaterThan(10);
        for (CSVRecord row : rows) {
            assertThat(row.isConsistent()).as(row.toString()).isTrue();
            for (String column : List.of("works", "measured", "animals", "design", "read", "source")) {
                assertThat(row.get(column)).as("%s of %s", column, row).isNotBlank();
            }
            assertThat(row.get("reductionPercent")
                            + row.get("reductionLowPercent")
                            + row.get("reductionHighPercent")
                            + row.get("rangeIs"))
                    .as(row.toString())
                    .isNotBlank();
            double low = number(row, "reductionLowPercent", 0);
            double high = number(row, "reductionHighPercent", 100);
            assertThat(number(row, "reductionPercent", low)).as(row.toString()).isBetween(low, high);
            assertThat(row.get("source")).as(row.toString()).containsPattern("(19|20)[0-9]{2}");
        }
    }

    /** Huijser and others 2016, Biological Conservation 197, 61-68, abstract: 52.7 % on average, from 0 to 94 %. */
    @Test
    void shortFencesHaveTheirWideRange() throws IOException {
        CSVRecord row = read("/works-elsewhere.csv").stream()
                .filter(one -> one.get("works").equals("fence of 5 km of road or less"))
                .findFirst()
                .orElseThrow();
        assertThat(number(row, "reductionPercent", -1)).isEqualTo(52.7);
        assertThat(number(row, "reductionLowPercent", -1)).isEqualTo(0);
        assertThat(number(row, "reductionHighPercent", -1)).isEqualTo(94);
    }

    @Test
    void underReportingMakesMultipliers() throws IOException {
        for (CSVRecord row : read("/under-reporting.csv")) {
            var multiplier = new UnderReporting(
                    Double.parseDouble(row.get("low")), Double.parseDouble(row.get("high")), row.get("source"));
            assertThat(multiplier.behind(1).high()).isGreaterThan(1);
            assertThat(row.get("where")).isNotBlank();
        }
    }

    private static double number(CSVRecord row, String column, double otherwise) {
        return row.get(column).isBlank() ? otherwise : Double.parseDouble(row.get(column));
    }

    private static List<CSVRecord> read(String resource) throws IOException {
        var stream = Objects.requireNonNull(PublishedFiguresTest.class.getResourceAsStream(resource), resource);
        try (var reader = new InputStreamReader(stream, StandardCharsets.UTF_8)) {
            return CSVFormat.DEFAULT
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(reader)
                    .getRecords();
        }
    }
}
