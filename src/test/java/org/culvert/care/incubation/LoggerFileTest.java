package org.culvert.care.incubation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

class LoggerFileTest {
    private static final ZoneId SYDNEY = ZoneId.of("Australia/Sydney");
    private static final LoggerFile.Form PLAIN = new LoggerFile.Form(null, null, null, SYDNEY);

    private static List<String> wrong(String csv, LoggerFile.Form form) {
        LoggerFile.Read read = LoggerFile.read(csv, form);
        assertThat(read.rows()).as("all or nothing").isEmpty();
        return read.troubles().stream().map(LoggerFile.Trouble::detail).toList();
    }

    private static void assertReads(String csv, LoggerFile.Form form, String at, double celsius) {
        LoggerFile.Read read = LoggerFile.read(csv, form);
        assertThat(read.troubles()).isEmpty();
        assertThat(read.rows())
                .singleElement()
                .satisfies(row -> assertThat(row.at()).isEqualTo(Instant.parse(at)))
                .satisfies(row -> assertThat(row.celsius()).isEqualTo(celsius));
    }

    @Test
    void theSameReadingInTheFormsThatLoggersGiveOut() {
        assertReads("time,temperature\n2026-01-10T12:00:00Z,28.4\n", PLAIN, "2026-01-10T12:00:00Z", 28.4);
        assertReads(
                "\uFEFFtime,humidity,temperature °C\r\n2026-01-10 23:00,80,28.4\r\n\r\n",
                PLAIN,
                "2026-01-10T12:00:00Z",
                28.4);
        assertReads("Zeit/Time;Celsius\n2026-01-10 13:00:00 +0100;28,4", PLAIN, "2026-01-10T12:00:00Z", 28.4);
        assertReads("Date\tTemp\n2026-01-10T22:00+10\t28,4", PLAIN, "2026-01-10T12:00:00Z", 28.4);
        assertReads("time,C\n\"2026-01-10T12:00:00.5Z\",\"28,4\"", PLAIN, "2026-01-10T12:00:00.500Z", 28.4);
        assertReads(
                "t;a;b\n2026-01-10 22:00;1;-0.5",
                new LoggerFile.Form("t", "b", ZoneOffset.ofHours(10), SYDNEY),
                "2026-01-10T12:00:00Z",
                -0.5);
    }

    /** Clocks go back at 3:00 on 5 April 2026 and on at 2:00 on 4 October 2026 in Sydney: the tz database. */
    @Test
    void anHourThatIsTwiceOrNeverIsRefusedWithItsRow() {
        assertThat(wrong("time,temp\n2026-04-05 01:30,28\n2026-04-05 02:30,28\n", PLAIN))
                .singleElement()
                .asString()
                .contains("Row 3", "twice", "+11:00", "+10:00");
        assertThat(wrong("time,temp\n2026-10-04 02:30,28\n", PLAIN))
                .singleElement()
                .asString()
                .contains("Row 2", "leave out");
        assertReads(
                "time,temp\n2026-04-05 02:30,28\n",
                new LoggerFile.Form(null, null, ZoneOffset.ofHours(10), SYDNEY),
                "2026-04-04T16:30:00Z",
                28);
    }

    @Test
    void whatIsWrongIsToldByItsRow() {
        assertThat(wrong("""
                        time,temp
                        2026-01-10T12:00:00Z,28.4

                        2026-01-10T13:00:00Z,warm
                        10/01/2026 14:00,28.4
                        2026-01-10T15:00:00Z,28,4
                        2026-01-10T16:00:00Z,284
                        2026-13-10T16:00:00Z,28.4
                        2026-01-10T12:00:00Z,28.5
                        """, PLAIN))
                .satisfiesExactly(
                        one -> assertThat(one).contains("Row 4", "warm"),
                        one -> assertThat(one).contains("Row 5", "10/01/2026 14:00"),
                        one -> assertThat(one).contains("Row 6", "3 columns"),
                        one -> assertThat(one).contains("Row 7", "284"),
                        one -> assertThat(one).contains("Row 8", "2026-13-10"),
                        one -> assertThat(one).contains("Row 9", "row 2"));
    }

    @Test
    void columnsThatAreNotClearAreAskedFor() {
        assertThat(wrong("when,value\n", PLAIN)).hasSize(2).allMatch(detail -> detail.startsWith("No column"));
        assertThat(wrong("date,time,temp\n", PLAIN)).singleElement().asString().contains("Several columns");
        assertThat(wrong("time,temperature °F\n2026-01-10T12:00:00Z,84\n", PLAIN))
                .singleElement()
                .asString()
                .contains("not in degrees Celsius");
        assertThat(wrong("time,temp\n", PLAIN)).containsExactly("The file has no readings.");
        assertThat(wrong("", PLAIN)).isNotEmpty();
    }

    @Test
    void manyWrongRowsAreCounted() {
        List<String> told = wrong("time,temp\n" + "x,1\n".repeat(500), PLAIN);
        assertThat(told).hasSize(LoggerFile.MOST_TROUBLES + 1);
        assertThat(told.get(told.size() - 1)).contains("480 more");
    }

    @Test
    void rowsSaidTwiceAreReadOnce() {
        LoggerFile.Read read =
                LoggerFile.read("time,temp\n2026-01-10T12:00:00Z,28\n2026-01-10T12:00:00Z,28.0\n", PLAIN);
        assertThat(read.rows()).hasSize(1);
        assertThat(read.repeated()).isEqualTo(1);
    }

    @Test
    void fiftyThousandRowsAreReadAndOneMoreIsTooMany() {
        Instant from = Instant.parse("2026-01-10T00:00:00Z");
        assertThat(LoggerFile.read(LoggerFiles.file(from, LoggerFile.MOST_READINGS, Duration.ofMinutes(1)), PLAIN)
                        .rows())
                .hasSize(LoggerFile.MOST_READINGS);
        assertThat(wrong(LoggerFiles.file(from, LoggerFile.MOST_READINGS + 1, Duration.ofMinutes(1)), PLAIN))
                .singleElement()
                .asString()
                .contains("50000");
    }
}
