package org.culvert.care.incubation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RateModelTest {
    static final RateModel PIG_NOSED =
            new RateModel(23.5, 446, 28, 32, 0.02, true, "446 degree days above 23.5 °C.", "derived from three times");
    static final Instant SET = Instant.parse("2026-01-10T00:00:00Z");

    static TemperatureSeries hourly(Instant from, double days, DoubleUnaryOperator celsiusOnDay) {
        List<TemperatureSeries.Reading> readings = new ArrayList<>();
        for (int hour = 0; hour <= days * 24; hour++) {
            readings.add(new TemperatureSeries.Reading(
                    from.plus(Duration.ofHours(hour)), celsiusOnDay.applyAsDouble(hour / 24.0)));
        }
        return TemperatureSeries.of(readings);
    }

    private static double days(RateModel.Development development) {
        return Duration.between(SET, Objects.requireNonNull(development.completeAt()))
                        .toMillis()
                / 86_400_000.0;
    }

    /**
     * Development of Carettochelys insculpta was complete after 53, 69 and 101 days at 32, 30 and 28 °C: studies of
     * Carettochelys, whose abstracts were read. The model states an error of 2 per cent.
     */
    @ParameterizedTest
    @CsvSource({"32, 53", "30, 69", "28, 101"})
    void publishedTimesLieWithinTheStatedError(double celsius, double published) {
        RateModel.Development development =
                PIG_NOSED.develop(hourly(SET, 110, day -> celsius), SET, SET.plus(Duration.ofDays(110)));
        assertThat(development.done()).isEqualTo(1);
        assertThat(days(development)).isCloseTo(published, within(published * PIG_NOSED.statedError()));
        assertThat(days(development)).isCloseTo(PIG_NOSED.daysAt(celsius), within(0.001));
    }

    /** A rate that is a straight line sees the mean alone, whatever the swing: whole days of a swing change nothing. */
    @Test
    void aDailySwingWithinTheRangeDevelopsAsItsMean() {
        TemperatureSeries swinging = hourly(SET, 20, day -> 30 + 1.8 * Math.sin(2 * Math.PI * day));
        RateModel.Development development = PIG_NOSED.develop(swinging, SET, SET.plus(Duration.ofDays(20)));
        assertThat(development.done()).isCloseTo(20 / PIG_NOSED.daysAt(30), within(0.0005));
    }

    /** From 28 °C to 32 °C in ten days: the mean of 30 °C for ten days, by the area of a trapezium. */
    @Test
    void aRampIsTheAreaUnderIt() {
        TemperatureSeries ramp = TemperatureSeries.of(List.of(
                at(0, 28),
                at(1, 28.4),
                at(2, 28.8),
                at(3, 29.2),
                at(4, 29.6),
                at(5, 30.0),
                at(6, 30.4),
                at(7, 30.8),
                at(8, 31.2),
                at(9, 31.6),
                at(10, 32)));
        assertThat(PIG_NOSED.develop(ramp, SET, SET.plus(Duration.ofDays(10))).done())
                .isCloseTo(65.0 / 446, within(1e-9));
    }

    @Test
    void whatIsStillToComeGoesOnAsInTheLastWeek() {
        TemperatureSeries record = hourly(SET, 20, day -> day < 10 ? 32 : 30);
        RateModel.Development development = PIG_NOSED.develop(record, SET, SET.plus(Duration.ofDays(20)));
        double done = 10 / PIG_NOSED.daysAt(32) + 10 / PIG_NOSED.daysAt(30);
        assertThat(development.done()).isCloseTo(done, within(0.001));
        assertThat(days(development)).isCloseTo(20 + (1 - done) * PIG_NOSED.daysAt(30), within(0.1));
    }

    @Test
    void aGapIsNotKnownAndNeitherIsARecordThatEndedLongAgo() {
        Instant now = SET.plus(Duration.ofDays(10));
        List<TemperatureSeries.Reading> holed = new ArrayList<>();
        hourly(SET, 10, day -> 30).readings().stream()
                .filter(reading -> Duration.between(SET, reading.at()).toHours() < 100
                        || Duration.between(SET, reading.at()).toHours() > 136)
                .forEach(holed::add);
        RateModel.Development development = PIG_NOSED.develop(TemperatureSeries.of(holed), SET, now);
        assertThat(development.completeAt()).isNull();
        assertThat(development.notKnown()).contains("2026-01-14T03:00:00Z", "2026-01-15T17:00:00Z", "36 hours");
        assertThat(PIG_NOSED.develop(hourly(SET, 8, day -> 30), SET, now).notKnown())
                .contains("36 hours");
        assertThat(PIG_NOSED
                        .develop(hourly(SET.plus(Duration.ofHours(37)), 8, day -> 30), SET, now)
                        .notKnown())
                .contains("36 hours");
        assertThat(PIG_NOSED.develop(TemperatureSeries.of(List.of()), SET, now).notKnown())
                .contains("No temperature");
    }

    @Test
    void outsideOfWhereItHoldsItSaysNothing() {
        RateModel.Development development =
                PIG_NOSED.develop(hourly(SET, 10, day -> day == 5 ? 33 : 30), SET, SET.plus(Duration.ofDays(10)));
        assertThat(development.completeAt()).isNull();
        assertThat(development.notKnown()).contains("33.0 °C", "28.0 to 32.0");
    }

    @Test
    void theOrderOfReadingsChangesNothingAndSeveralAtOnceAreTheirMean() {
        Random random = new Random(20261129);
        for (int round = 0; round < 50; round++) {
            double level = 29 + 2 * random.nextDouble();
            List<TemperatureSeries.Reading> readings =
                    new ArrayList<>(hourly(SET, 30, day -> level + 0.5 * random.nextGaussian() / 3)
                            .readings());
            Instant now = SET.plus(Duration.ofDays(30));
            RateModel.Development inOrder = PIG_NOSED.develop(TemperatureSeries.of(readings), SET, now);
            Collections.shuffle(readings, random);
            assertThat(PIG_NOSED.develop(TemperatureSeries.of(readings), SET, now))
                    .isEqualTo(inOrder);
        }
        assertThat(TemperatureSeries.of(List.of(at(0, 28), at(0, 30), at(1, 29)))
                        .readings())
                .containsExactly(at(0, 29), at(1, 29));
    }

    static TemperatureSeries.Reading at(double day, double celsius) {
        return new TemperatureSeries.Reading(SET.plusSeconds(Math.round(day * 86_400)), celsius);
    }
}
