package org.culvert.care.clock.limit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.ZoneId;
import org.culvert.care.clock.limit.Length.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Outside values: daylight saving in New South Wales begins at 02:00 on the first Sunday in October and ends at 03:00 on the
 * first Sunday in April (Standard Time Act 1987 (NSW)), that is on 4 October and 5 April 2026; standard time is UTC+10.
 */
class LengthTest {
    private static final ZoneId SYDNEY = ZoneId.of("Australia/Sydney");

    @ParameterizedTest
    @CsvSource({
        // Over the beginning: a day of 23 hours
        "2026-10-03T08:00:00Z, 24, hours, 2026-10-04T08:00:00Z",
        "2026-10-03T08:00:00Z, 1, days, 2026-10-04T07:00:00Z",
        "2026-10-03T08:00:00Z, 1, weeks, 2026-10-10T07:00:00Z",
        // Over the end: a day of 25 hours
        "2026-04-04T07:00:00Z, 24, hours, 2026-04-05T07:00:00Z",
        "2026-04-04T07:00:00Z, 1, days, 2026-04-05T08:00:00Z",
        // 02:30 of 4 October is left out: an hour later, 03:30
        "2026-10-02T16:30:00Z, 1, days, 2026-10-03T16:30:00Z",
        // From summer into winter and back again
        "2026-01-15T01:00:00Z, 180, days, 2026-07-14T02:00:00Z",
        "2026-01-15T01:00:00Z, 1, years, 2027-01-15T01:00:00Z",
        // A month that lacks the day ends on its last
        "2026-11-30T01:00:00Z, 3, months, 2027-02-28T01:00:00Z",
        "2024-02-29T01:00:00Z, 1, years, 2025-02-28T01:00:00Z",
        "2026-01-15T01:00:00Z, 6, weeks, 2026-02-26T01:00:00Z",
        "2026-01-15T01:00:00Z, 15, days, 2026-01-30T01:00:00Z"
    })
    void hoursAreExactAndTheRestIsOfTheCalendar(Instant start, int amount, Unit unit, Instant due) {
        assertThat(new Length(amount, unit).after(start, SYDNEY)).isEqualTo(due);
    }

    @Test
    void aLimitLasts() {
        assertThatThrownBy(() -> new Length(0, Unit.days)).isInstanceOf(IllegalArgumentException.class);
    }
}
