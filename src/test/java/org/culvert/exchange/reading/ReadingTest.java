package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.culvert.exchange.reading.Numbers.Mark;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReadingTest {
    /** Tables written by Apache Commons CSV, with cells that hold every separator, quotes and line ends. */
    @ParameterizedTest
    @EnumSource(Separator.class)
    void theSeparatorIsToldFromTheRows(Separator separator) throws IOException {
        var random = new Random(3);
        String[] bits = {"fox", ",", ";", "\t", "|", "\"", "\n", " 12,5 ", "Mill Rd", "", "2", "adult", "x"};
        for (int round = 0; round < 200; round++) {
            var text = new StringBuilder();
            CSVFormat format =
                    CSVFormat.RFC4180.builder().setDelimiter(separator.sign()).get();
            int cells = 2 + random.nextInt(8);
            int rows = 12 + random.nextInt(20);
            try (var printer = new CSVPrinter(text, format)) {
                for (int row = 0; row < rows; row++) {
                    List<String> cellsOfRow = new ArrayList<>();
                    for (int i = 0; i < cells; i++) {
                        cellsOfRow.add("c" + bits[random.nextInt(bits.length)] + bits[random.nextInt(bits.length)]);
                    }
                    printer.printRecord(cellsOfRow);
                }
            }
            Separator.Fit best = Separator.fits(text.toString(), true).get(0);
            assertThat(best).as(text.toString()).isEqualTo(new Separator.Fit(separator, cells, 1));
            List<CSVRecord> read =
                    format.parse(new StringReader(text.toString())).getRecords();
            assertThat(read).hasSize(rows).allMatch(row -> row.size() == cells);
        }
    }

    @Test
    void aTableOfOneColumnHasNoSeparator() {
        assertThat(Separator.fits("place\nmill\nbridge\n", true)).allMatch(fit -> fit.cells() == 1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "  ",
                "\u00a0",
                "N/A",
                "n/a  ",
                "Unknown",
                "-",
                "?",
                "keine Angabe",
                "inconnu",
                "不明",
                "\ufeff"
            })
    void whatSaysNothingIsMissing(String cell) {
        assertThat(Missing.isMissing(cell)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "fox", "no", "none seen", "nana"})
    void whatSaysSomethingIsNot(String cell) {
        assertThat(Missing.isMissing(cell)).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-33.8568 | point | -33.8568",
                "-33,8568 | comma | -33.8568",
                "1,234 | point | 1234",
                "1,234 | comma | 1.234",
                "1.234.567,8 | comma | 1234567.8",
                "1,234,567.8 | point | 1234567.8",
                "12 345,6 | comma | 12345.6",
                "1'234.5 | point | 1234.5",
                "−5 | point | -5",
                "+.5 | point | 0.5",
                "007 | point | 7"
            })
    void numbersAreReadWithEitherMark(String cell, Mark mark, BigDecimal number) {
        assertThat(Numbers.read(cell, mark))
                .hasValueSatisfying(read -> assertThat(read).isEqualByComparingTo(number));
    }

    @Test
    void whichMarkIsToldOnlyByWhatHasOne() {
        assertThat(Numbers.marksOf("12.5")).containsExactly(Mark.point);
        assertThat(Numbers.marksOf("12,5")).containsExactly(Mark.comma);
        assertThat(Numbers.marksOf("1,234")).containsExactly(Mark.point, Mark.comma);
        assertThat(Numbers.marksOf("12")).containsExactly(Mark.point, Mark.comma);
        assertThat(List.of("1,23,456", "12.5.3", "-", ".", "12a", "1e5", "", "NaN"))
                .allMatch(cell -> Numbers.marksOf(cell).isEmpty());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "10K | 10 | 1 | ''",
                "12.4 km | 12.4 | 0.1 | ''",
                "Mill Road 12,4km north | 12.4 | 0.1 | Mill Road north",
                "KM 12+400 | 12.4 | 0.1 | ''",
                "A7 km 12+437 southbound | 12.437 | 0.001 | A7 southbound",
                "Ch 12400 | 12.4 | 0.001 | ''",
                "Chainage: 3200m, Creek Way | 3.2 | 0.001 | Creek Way",
                "km 8 | 8 | 1 | ''",
                "3.25 kilometres past the bridge | 3.25 | 0.01 | past the bridge"
            })
    void chainagesAreFoundWithinWords(String words, BigDecimal kilometres, BigDecimal step, String rest) {
        assertThat(Chainages.read(words)).hasValueSatisfying(told -> {
            assertThat(told.kilometres()).isEqualByComparingTo(kilometres);
            assertThat(told.stepKilometres()).isEqualByComparingTo(step);
            assertThat(told.rest()).isEqualTo(rest);
        });
    }

    /** A house, a limit of speed, a stretch and a route are no place along a road. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "12 Mill Road",
                "60 km/h zone",
                "80 kmh",
                "km 3 to km 5",
                "Route 66",
                "4.2",
                "Kings Road",
                "400 block of Main St"
            })
    void aNumberIsNotAlwaysAChainage(String words) {
        assertThat(Chainages.read(words)).isEmpty();
    }

    private static final Axes.Box REGION = new Axes.Box(-31, 150, -29, 153);

    @Test
    void swappedAxesAreToldOfAWholeFile() {
        var right = new Axes(REGION);
        var swapped = new Axes(REGION);
        var few = new Axes(REGION);
        var elsewhere = new Axes(REGION);
        for (int i = 0; i < 100; i++) {
            double latitude = -30.9 + i * 0.01;
            double longitude = 150.1 + i * 0.02;
            right.take(latitude, longitude);
            swapped.take(i == 7 ? latitude : longitude, i == 7 ? longitude : latitude);
            elsewhere.take(longitude - 100, latitude);
            if (i < 4) {
                few.take(longitude, latitude);
            }
        }
        right.take(0, 0);
        assertThat(right.standing()).isEqualTo(Axes.Standing.right);
        assertThat(swapped.standing()).isEqualTo(Axes.Standing.swapped);
        assertThat(swapped.counts()).containsExactly(100, 1, 99, 0);
        assertThat(few.standing()).isEqualTo(Axes.Standing.unclear);
        assertThat(elsewhere.standing()).isEqualTo(Axes.Standing.unclear);
    }
}
