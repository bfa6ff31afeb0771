package org.culvert.clinic.profile;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Instants on the days on which clocks change are those of the IANA time zone database, as its tables say beside each. */
class OpeningHoursTest {
    private static final ZoneId SYDNEY = ZoneId.of("Australia/Sydney");
    private static final ZoneId LORD_HOWE = ZoneId.of("Australia/Lord_Howe");
    private static final OpeningHours WEEKDAYS = new OpeningHours(Arrays.stream(DayOfWeek.values())
            .filter(day -> day.compareTo(DayOfWeek.SATURDAY) < 0)
            .map(day -> span(day, "08:00", "18:00"))
            .toList());

    private static OpeningHours.Span span(DayOfWeek day, String opens, String closes) {
        return new OpeningHours.Span(day, LocalTime.parse(opens), LocalTime.parse(closes));
    }

    private static Instant sydney(String local) {
        return LocalDateTime.parse(local).atZone(SYDNEY).toInstant();
    }

    @Test
    void itIsOpenFromTheMinuteItOpensToTheMinuteItCloses() {
        // 2026-11-27 is a Friday
        assertThat(WEEKDAYS.openUntil(sydney("2026-11-27T07:59:59"), SYDNEY)).isEmpty();
        assertThat(WEEKDAYS.openUntil(sydney("2026-11-27T08:00:00"), SYDNEY)).contains(sydney("2026-11-27T18:00:00"));
        assertThat(WEEKDAYS.openUntil(sydney("2026-11-27T18:00:00"), SYDNEY)).isEmpty();
        assertThat(WEEKDAYS.opensNext(sydney("2026-11-27T07:00:00"), SYDNEY)).contains(sydney("2026-11-27T08:00:00"));
        assertThat(WEEKDAYS.opensNext(sydney("2026-11-27T18:00:00"), SYDNEY)).contains(sydney("2026-11-30T08:00:00"));
        assertThat(new OpeningHours(List.of()).opensNext(sydney("2026-11-27T18:00:00"), SYDNEY))
                .isEmpty();
    }

    @Test
    void aNightIsTwoSpansAndOneOpening() {
        var night = new OpeningHours(
                List.of(span(DayOfWeek.FRIDAY, "20:00", "00:00"), span(DayOfWeek.SATURDAY, "00:00", "06:00")));
        assertThat(night.openUntil(sydney("2026-11-27T23:00:00"), SYDNEY)).contains(sydney("2026-11-28T06:00:00"));
        var always = new OpeningHours(Arrays.stream(DayOfWeek.values())
                .map(day -> span(day, "00:00", "00:00"))
                .toList());
        assertThat(always.openUntil(sydney("2026-11-27T23:00:00"), SYDNEY)).isPresent();
        assertThat(always.findOverlap()).isEmpty();
    }

    /** New South Wales put its clocks forward at 02:00 on 2026-10-04, a Sunday, and back at 03:00 on 2026-04-05. */
    @Test
    void aSpanOverTheHourThatIsLeftOutIsAnHourShorter() {
        var early = new OpeningHours(List.of(span(DayOfWeek.SUNDAY, "01:00", "04:00")));
        assertThat(early.openUntil(Instant.parse("2026-10-03T15:00:00Z"), SYDNEY))
                .contains(Instant.parse("2026-10-03T17:00:00Z"));
        assertThat(early.openUntil(Instant.parse("2026-04-04T14:00:00Z"), SYDNEY))
                .contains(Instant.parse("2026-04-04T18:00:00Z"));
        // 02:30 is not on the clocks of that day: it opens half an hour after they jumped to 03:00
        var gone = new OpeningHours(List.of(span(DayOfWeek.SUNDAY, "02:30", "06:00")));
        assertThat(gone.opensNext(Instant.parse("2026-10-03T15:00:00Z"), SYDNEY))
                .contains(Instant.parse("2026-10-03T16:30:00Z"));
    }

    /** Lord Howe Island moves its clocks by half an hour: from UTC+10:30 to UTC+11 at 02:00 on 2026-10-04. */
    @Test
    void whereClocksMoveByHalfAnHourSoDoesTheSpan() {
        var early = new OpeningHours(List.of(span(DayOfWeek.SUNDAY, "01:00", "04:00")));
        assertThat(early.openUntil(Instant.parse("2026-10-03T14:30:00Z"), LORD_HOWE))
                .contains(Instant.parse("2026-10-03T17:00:00Z"));
    }

    @Test
    void spansOfOneDayMayMeetAndNotOverlap() {
        var meeting = List.of(span(DayOfWeek.MONDAY, "08:00", "12:00"), span(DayOfWeek.MONDAY, "12:00", "18:00"));
        assertThat(new OpeningHours(meeting).findOverlap()).isEmpty();
        assertThat(new OpeningHours(meeting).openUntil(sydney("2026-11-30T09:00:00"), SYDNEY))
                .contains(sydney("2026-11-30T18:00:00"));
        var overlapping = List.of(span(DayOfWeek.MONDAY, "11:00", "18:00"), span(DayOfWeek.MONDAY, "08:00", "12:00"));
        assertThat(new OpeningHours(overlapping).findOverlap()).isPresent();
        assertThat(new OpeningHours(List.of(
                                span(DayOfWeek.MONDAY, "22:00", "00:00"), span(DayOfWeek.MONDAY, "23:00", "23:30")))
                        .findOverlap())
                .isPresent();
    }
}
