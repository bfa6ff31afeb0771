package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.culvert.exchange.reading.Dates.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DatesTest {
    private static final LocalDate LATEST = LocalDate.of(2026, 11, 29);
    private static final Set<Order> ALL = EnumSet.allOf(Order.class);

    /** Written by the formatter of java.time, in each order, padded or not, and read back. */
    @ParameterizedTest
    @CsvSource({
        "yyyy-MM-dd,yearMonthDay",
        "yyyyMMdd,yearMonthDay",
        "yyyy/M/d,yearMonthDay",
        "yyyy-MM-dd'T'HH:mm:ss,yearMonthDay",
        "d/M/yyyy,dayMonthYear",
        "dd.MM.yyyy,dayMonthYear",
        "dd-MM-yy,dayMonthYear",
        "d/M/yyyy H:mm,dayMonthYear",
        "M/d/yyyy,monthDayYear",
        "M/d/yyyy h:mm a,monthDayYear",
        "d MMM yyyy,dayMonthYear",
        "d-MMM-yy,dayMonthYear",
        "MMMM d yyyy,monthDayYear",
        "EEEE d MMMM yyyy,dayMonthYear"
    })
    void whatTheFormatterWritesIsReadBack(String pattern, Order order) {
        var formatter = DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH);
        var random = new Random(1);
        for (int i = 0; i < 300; i++) {
            var day = LocalDate.of(1990, 1, 1).plusDays(random.nextInt(13_000));
            var time = LocalTime.of(random.nextInt(24), random.nextInt(60));
            String cell = day.atTime(time).format(formatter);
            Dates.Day read = Dates.read(cell, order, LATEST).orElseThrow(() -> new AssertionError(cell));
            assertThat(read.date()).as(cell).isEqualTo(day);
            if (pattern.toLowerCase(Locale.ROOT).contains("h:mm") || pattern.contains("HH")) {
                assertThat(read.time()).as(cell).isEqualTo(time);
            } else {
                assertThat(read.time()).as(cell).isNull();
            }
        }
    }

    /** ISO 8601 has the year in front; of the others a cell tells the order only where a figure can be no month. */
    @Test
    void aCellTellsTheOrderOnlyWhereItCan() {
        assertThat(Dates.ordersOf("2024-03-04", LATEST)).isEqualTo(ALL);
        assertThat(Dates.ordersOf("4 March 2024", LATEST)).isEqualTo(ALL);
        assertThat(Dates.ordersOf("03/04/2024", LATEST)).containsExactly(Order.dayMonthYear, Order.monthDayYear);
        assertThat(Dates.ordersOf("25/04/2024", LATEST)).containsExactly(Order.dayMonthYear);
        assertThat(Dates.ordersOf("04/25/2024", LATEST)).containsExactly(Order.monthDayYear);
        assertThat(Dates.ordersOf("31/04/2024", LATEST)).isEmpty();
        assertThat(Dates.ordersOf("29/02/2023", LATEST)).isEmpty();
        assertThat(Dates.ordersOf("29/02/2024", LATEST)).containsExactly(Order.dayMonthYear);
        assertThat(Dates.ordersOf("12/10/26", LATEST))
                .as("the day month year of 2026 only, since December has not been")
                .contains(Order.dayMonthYear)
                .doesNotContain(Order.monthDayYear);
    }

    @ParameterizedTest
    @CsvSource({
        "1/2/3/4",
        "2024",
        "12:30",
        "2024-13-01",
        "00/00/2024",
        "4 Brumaire 2024",
        "3-4/2024",
        "1/1/999",
        "x",
        "25:61"
    })
    void whatIsNoDayIsNone(String cell) {
        assertThat(Dates.ordersOf(cell, LATEST)).isEmpty();
    }

    /** A whole column: one cell tells of all; and Y/M/D among M/D/Y is read by itself. */
    @Test
    void aColumnTellsMoreThanACell() {
        var unclear = new ColumnWays(LATEST);
        List.of("1/2/2024", "3/4/2024", "n/a", " ").forEach(unclear::take);
        assertThat(unclear.orders()).containsExactly(Order.dayMonthYear, Order.monthDayYear);
        assertThat(unclear.missing()).isEqualTo(2);
        var clear = new ColumnWays(LATEST);
        List.of("1/2/2024", "3/4/2024", "2023/7/9", "3/14/2024").forEach(clear::take);
        assertThat(clear.orders()).containsExactly(Order.monthDayYear);
        assertThat(clear.shareOfDays()).isEqualTo(1);
        assertThat(clear.notIn(Order.monthDayYear)).isZero();
        assertThat(clear.notIn(Order.dayMonthYear)).isEqualTo(1);
    }
}
