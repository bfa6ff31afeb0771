package org.culvert.animal.photograph;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class PlausibilityTest {
    private static final Instant REPORTED = Instant.parse("2026-01-10T08:00:00Z");
    private static final Instant RECEIVED = Instant.parse("2026-01-10T09:00:00Z");

    private static List<String> place(
            @Nullable Boolean inside, @Nullable Double metres, double uncertainty, @Nullable Double altitude) {
        return new Plausibility().ofPlace(inside, metres, uncertainty, altitude).doubts();
    }

    private static List<String> time(@Nullable String clock, @Nullable String offset, @Nullable String gps) {
        return new Plausibility()
                .ofTime(
                        clock == null ? null : LocalDateTime.parse(clock),
                        offset == null ? null : ZoneOffset.of(offset),
                        gps == null ? null : Instant.parse(gps),
                        ZoneId.of("Australia/Sydney"),
                        REPORTED,
                        RECEIVED)
                .doubts();
    }

    @Test
    void aPlaceIsDoubtedBeyondAKilometreAndBothUncertainties() {
        assertThat(place(true, 1100.0, 100, 120.0)).isEmpty();
        assertThat(place(true, 1101.0, 100, 120.0))
                .hasSize(1)
                .first()
                .asString()
                .contains("1.1 km");
        assertThat(place(null, null, 0, null)).isEmpty();
        assertThat(place(false, null, 0, null)).containsExactly("Its place lies outside the region.");
        assertThat(place(true, 0.0, 0, 8850.0)).isEmpty();
        assertThat(place(true, 0.0, 0, -430.0)).isEmpty();
        assertThat(place(true, 0.0, 0, 12_000.0)).containsExactly("Nobody stands at an altitude of 12000 m.");
    }

    @Test
    void clocksMayDifferByLessThanTenMinutes() {
        // Sydney is 11 hours ahead of UTC in January
        assertThat(time("2026-01-10T19:09:59", null, "2026-01-10T08:00:00Z")).isEmpty();
        assertThat(time("2026-01-10T19:10:00", null, "2026-01-10T08:00:00Z"))
                .hasSize(1)
                .first()
                .asString()
                .contains("read in the region's time zone", "10 min ahead of");
        assertThat(time("2026-01-10T18:00:00", "+10:00", "2026-01-10T08:00:00Z"))
                .isEmpty();
        assertThat(time("2026-01-10T08:00:00", "+11:00", "2026-01-10T08:00:00Z"))
                .hasSize(1)
                .first()
                .asString()
                .contains("11 h 0 min behind")
                .doesNotContain("read in the region's");
    }

    @Test
    void aPictureIsNotOfTheFutureAndNotOld() {
        assertThat(time("2026-01-10T20:11:00", null, null))
                .hasSize(1)
                .first()
                .asString()
                .contains("is ahead of when");
        assertThat(time(null, null, "2026-01-10T09:11:00Z"))
                .hasSize(1)
                .first()
                .asString()
                .contains("satellites");
        assertThat(time(null, null, "2026-01-09T08:00:00Z")).isEmpty();
        assertThat(time(null, null, "2026-01-07T07:00:00Z"))
                .containsExactly("It was taken 3 days before the incident was reported: it may be an older picture.");
        assertThat(time(null, null, null)).isEmpty();
    }
}
