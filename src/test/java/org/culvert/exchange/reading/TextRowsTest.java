package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Points of RFC 4180, section 2, by their numbers; and what files have that it has not. */
class TextRowsTest {
    private static List<List<String>> cells(String text, char separator, int columns) {
        List<List<String>> all = new ArrayList<>();
        var rows = new TextRows(new TableStart.Text(text), separator, columns);
        while (rows.next()) {
            all.add(rows.cells());
        }
        return all;
    }

    private static List<List<String>> cells(String text) {
        return cells(text, ',', 0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"\r\n", "\n", "\r"})
    void point1EachRecordIsALineAndOthersThanCrlfEndItToo(String end) {
        assertThat(cells("aaa,bbb,ccc" + end + "zzz,yyy,xxx" + end))
                .containsExactly(List.of("aaa", "bbb", "ccc"), List.of("zzz", "yyy", "xxx"));
    }

    @Test
    void point2TheLastLineMayHaveNoEnd() {
        assertThat(cells("aaa,bbb,ccc\r\nzzz,yyy,xxx"))
                .containsExactly(List.of("aaa", "bbb", "ccc"), List.of("zzz", "yyy", "xxx"));
    }

    @Test
    void point4SpacesArePartOfACellAndTheLastOneHasNoCommaBehind() {
        assertThat(cells(" a , b\nc,\n")).containsExactly(List.of(" a ", " b"), List.of("c", ""));
    }

    @Test
    void point5And6QuotedCellsHoldLineEndsCommasAndQuotes() {
        assertThat(cells("\"aaa\",\"b\r\nbb\",\"c,cc\"\r\nzzz,yyy,xxx"))
                .containsExactly(List.of("aaa", "b\r\nbb", "c,cc"), List.of("zzz", "yyy", "xxx"));
    }

    @Test
    void point7AQuoteWithinQuotesIsDoubled() {
        assertThat(cells("\"aaa\",\"b\"\"bb\",\"\"\"\",\"\"\n")).containsExactly(List.of("aaa", "b\"bb", "\"", ""));
    }

    /** Apache Commons CSV writes and reads 400 tables of cells with all that makes trouble. */
    @Test
    void itReadsWhatTheLibraryReads() throws IOException {
        long seed = 4180;
        var random = new Random(seed);
        String[] bits = {"fox", ",", ";", "\"", "\"\"", "\n", "\r\n", " ", "12,5", "Mill Rd", "", "2", "\u00e9", "日"};
        for (int round = 0; round < 400; round++) {
            char separator = ",;\t|".charAt(random.nextInt(4));
            CSVFormat format =
                    CSVFormat.RFC4180.builder().setDelimiter(separator).get();
            var text = new StringBuilder();
            int columns = 1 + random.nextInt(6);
            try (var printer = new CSVPrinter(text, format)) {
                for (int row = 0; row < 1 + random.nextInt(40); row++) {
                    List<String> cells = new ArrayList<>();
                    for (int i = 0; i < columns; i++) {
                        cells.add("c" + bits[random.nextInt(bits.length)] + bits[random.nextInt(bits.length)]);
                    }
                    printer.printRecord(cells);
                }
            }
            List<List<String>> theirs = format.parse(new StringReader(text.toString())).getRecords().stream()
                    .map(CSVRecord::toList)
                    .toList();
            assertThat(cells(text.toString(), separator, random.nextBoolean() ? columns : 0))
                    .as("seed %d round %d: %s", seed, round, text)
                    .isEqualTo(theirs);
        }
    }

    /** Rows put together again, with their line ends, are the text: nothing is lost between them. */
    @Test
    void theOriginalOfARowIsItsTextAsItStands() {
        String text = "a,\"b \n c\",d\r\n\r\n  x ,\"y\"\"\",z\r\n1,2,3";
        var rows = new TextRows(new TableStart.Text(text), ',', 3);
        List<String> originals = new ArrayList<>();
        List<Long> numbers = new ArrayList<>();
        while (rows.next()) {
            originals.add(rows.original());
            numbers.add(rows.number());
        }
        assertThat(String.join("\r\n", originals)).isEqualTo(text);
        assertThat(numbers)
                .as("a quoted line end makes no row, an empty line does")
                .containsExactly(1L, 2L, 3L, 4L);
    }

    /** Whatever the size of the pieces in which the text comes. */
    @Test
    void piecesOfTheTextMakeNoDifference() {
        String text = "a,\"b \n c\",d\r\nx,\"y\"\"\",z\r\n".repeat(20_000);
        List<List<String>> whole = cells(text);
        var random = new Random(9);
        var inPieces = new TableStart.Text(text);
        var rows = new TextRows(
                (into, from, length) -> inPieces.read(into, from, Math.min(length, 1 + random.nextInt(50))), ',', 3);
        List<List<String>> pieces = new ArrayList<>();
        while (rows.next()) {
            pieces.add(rows.cells());
        }
        assertThat(pieces).isEqualTo(whole).hasSize(40_000);
    }

    @Test
    void aLoneQuoteSwallowsNoOtherRow() {
        var rows = new TextRows(
                new TableStart.Text("1,\"the mill,x\n2,\"a, b\",y\n3,5\" pipe,z\n4,\"Old\" Mill,w\n"), ',', 3);
        List<List<String>> all = new ArrayList<>();
        List<Boolean> broken = new ArrayList<>();
        while (rows.next()) {
            all.add(rows.cells());
            broken.add(rows.isQuoteBroken());
        }
        assertThat(all)
                .containsExactly(
                        List.of("1", "\"the mill", "x"),
                        List.of("2", "a, b", "y"),
                        List.of("3", "5\" pipe", "z"),
                        List.of("4", "\"Old\" Mill", "w"));
        assertThat(broken).containsExactly(true, false, false, true);
    }

    @Test
    void aQuoteThatNeverClosesEndsWithItsLine() {
        List<List<String>> all = cells("1,\"lost\n" + "2,b\n".repeat(200_000), ',', 2);
        assertThat(all).hasSize(200_001);
        assertThat(all.get(0)).containsExactly("1", "\"lost");
    }

    /** A quote that two rows share would make one row of both: there are as many cells as headings in neither. */
    @Test
    void twoLoneQuotesMakeNoRowOfTwo() {
        assertThat(cells("1,\"the mill,x\n2,y,the bridge\"\n", ',', 3))
                .containsExactly(List.of("1", "\"the mill", "x"), List.of("2", "y", "the bridge\""));
    }

    @Test
    void aLineThatNamesTheSeparatorIsNoRow() {
        var rows = new TextRows(new TableStart.Text("sep=;\r\na;b\r\n1;2\r\n"), ',', 0);
        assertThat(rows.next()).isTrue();
        assertThat(rows.cells()).containsExactly("a", "b");
        assertThat(rows.number()).isEqualTo(1);
        assertThat(cells("\"sep=|\"\na|b")).containsExactly(List.of("a", "b"));
        assertThat(cells("september\na,b")).containsExactly(List.of("september"), List.of("a", "b"));
    }

    @Test
    void anEmptyTextHasNoRow() {
        assertThat(cells("")).isEmpty();
        assertThat(cells("\n")).containsExactly(List.of(""));
    }
}
