package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.culvert.platform.InvalidException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The examples of OGC 17-069r4, 7.15.4, and what clients send. */
class TimeSpanTest {
    private static final ZoneId SYDNEY = ZoneId.of("Australia/Sydney");

    private static TimeSpan parse(String text) {
        return TimeSpan.parse(text, SYDNEY);
    }

    @Test
    void theExamplesOfTheStandard() {
        Instant first = Instant.parse("2018-02-12T00:00:00Z");
        Instant last = Instant.parse("2018-03-18T12:31:12Z");
        assertThat(parse("2018-02-12T23:20:50Z").from()).isEqualTo(Instant.parse("2018-02-12T23:20:50Z"));
        assertThat(parse("2018-02-12T00:00:00Z/2018-03-18T12:31:12Z")).isEqualTo(new TimeSpan(first, last));
        assertThat(parse("2018-02-12T00:00:00Z/..")).isEqualTo(new TimeSpan(first, null));
        assertThat(parse("../2018-03-18T12:31:12Z")).isEqualTo(new TimeSpan(null, last));
        assertThat(parse("/2018-03-18T12:31:12Z")).isEqualTo(new TimeSpan(null, last));
    }

    @Test
    void yearsThatNobodyMeansAreOpenEnds() {
        Instant at = Instant.parse("2018-02-12T00:00:00Z");
        assertThat(parse("2018-02-12T00:00:00Z/9999-12-31T00:00:00Z")).isEqualTo(new TimeSpan(at, null));
        assertThat(parse("0000-01-01T00:00:00Z/2018-02-12T00:00:00Z")).isEqualTo(new TimeSpan(null, at));
        assertThat(parse("0000-01-01/9999-12-31")).isEqualTo(TimeSpan.EVER);
    }

    @Test
    void aDayIsOneOfTheRegionAndEndsAreIncluded() {
        TimeSpan day = parse("2026-11-25");
        assertThat(day.meets(Instant.parse("2026-11-24T13:00:00Z"))).isTrue();
        assertThat(day.meets(Instant.parse("2026-11-24T12:59:59Z"))).isFalse();
        assertThat(day.meets(Instant.parse("2026-11-25T12:59:59.999999Z"))).isTrue();
        assertThat(day.meets(Instant.parse("2026-11-25T13:00:00Z"))).isFalse();
        assertThat(day.meets(LocalDate.parse("2026-11-25"), SYDNEY)).isTrue();
        assertThat(day.meets(LocalDate.parse("2026-11-24"), SYDNEY)).isFalse();
        assertThat(day.meets(LocalDate.parse("2026-11-26"), SYDNEY)).isFalse();
        assertThat(day.meets((Instant) null)).isTrue();
        assertThat(parse("2026-11-25/2026-11-26").meets(LocalDate.parse("2026-11-26"), SYDNEY))
                .isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "..",
                "../..",
                "/",
                "2026",
                "2026-13-01",
                "2026-02-30",
                "2026-01-01T25:00:00Z",
                "x/y",
                "2026-01-01T00:00:00Z/2025-01-01T00:00:00Z",
                "2026-01-01T00:00:00",
                "+2026-01-01",
                "2026-01-01/../.."
            })
    void whatIsNeitherIsRefusedByName(String text) {
        assertThatThrownBy(() -> parse(text))
                .isInstanceOfSatisfying(
                        InvalidException.class,
                        refused -> assertThat(refused.errors().get(0).field()).isEqualTo("datetime"));
    }
}
