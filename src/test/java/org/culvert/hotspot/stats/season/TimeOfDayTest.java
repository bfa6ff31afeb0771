package org.culvert.hotspot.stats.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.geo.Light;
import org.culvert.geo.Position;
import org.culvert.geo.Sun;
import org.culvert.hotspot.stats.Checks;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class TimeOfDayTest {
    private static final Position BRISBANE = new Position(-27.47, 153.03);

    /**
     * Source: sunrise and sunset by R's maptools 1.1-6, ten sites on nine dates. Two minutes before a sunset it is day, two
     * minutes after it is twilight, and an interval across it has no class.
     */
    @Test
    void classChangesWhereOutsideTablesSaySo() {
        int tried = 0;
        for (CSVRecord row : Checks.csv("sun/sun_maptools.csv")) {
            var position = new Position(Checks.number(row, "lat"), Checks.number(row, "lon"));
            for (String event : List.of("sunrise_utc", "sunset_utc", "civil_dusk_utc")) {
                if (row.get(event).isBlank()) {
                    continue;
                }
                Instant at = instant(row.get(event));
                Light lighter = event.startsWith("civil") ? Light.CIVIL_TWILIGHT : Light.DAY;
                Light darker = event.startsWith("civil") ? Light.NAUTICAL_TWILIGHT : Light.CIVIL_TWILIGHT;
                boolean rising = event.startsWith("sunrise");
                Duration little = Duration.ofMinutes(2);
                if (Math.abs(Sun.elevationDegrees(at.plus(little), position)
                                - Sun.elevationDegrees(at.minus(little), position))
                        < 0.1) {
                    continue;
                }
                tried++;
                String where = row.get("name") + " " + row.get("date") + " " + event;
                assertThat(TimeOfDay.light(TimeBounds.at(at.minus(little)), position))
                        .as(where)
                        .isEqualTo(rising ? darker : lighter);
                assertThat(TimeOfDay.light(TimeBounds.at(at.plus(little)), position))
                        .as(where)
                        .isEqualTo(rising ? lighter : darker);
                assertThat(TimeOfDay.light(new TimeBounds(at.minus(little), at.plus(little)), position))
                        .as(where)
                        .isNull();
            }
        }
        assertThat(tried).isGreaterThan(150);
    }

    private static Instant instant(String utc) {
        return utc.endsWith("Z")
                ? Instant.parse(utc)
                : LocalDateTime.parse(utc.replace(' ', 'T'), DateTimeFormatter.ISO_LOCAL_DATE_TIME)
                        .toInstant(ZoneOffset.UTC);
    }

    /** No source: against the sun looked at every 20 seconds. */
    @Test
    void wholeIntervalHasTheClass() {
        var random = RandomSource.XO_SHI_RO_256_PP.create(9L);
        int known = 0;
        for (int trial = 0; trial < 400; trial++) {
            var position = new Position(random.nextDouble() * 180 - 90, random.nextDouble() * 360 - 180);
            Instant from = Instant.parse("2024-01-01T00:00:00Z").plusSeconds(random.nextInt(86_400 * 366));
            var bounds = new TimeBounds(from, from.plusSeconds(random.nextInt(14 * 3600)));
            @Nullable Light light = TimeOfDay.light(bounds, position);
            Light first = Sun.light(from, position);
            boolean same = true;
            for (Instant at = from; !at.isAfter(bounds.latest()); at = at.plusSeconds(20)) {
                same &= Sun.light(at, position) == first;
            }
            same &= Sun.light(bounds.latest(), position) == first;
            if (light != null) {
                known++;
                assertThat(light).as("trial %s, seed 9", trial).isEqualTo(first);
                assertThat(same).as("trial %s, seed 9", trial).isTrue();
            } else {
                // A touch of less than 20 seconds may be seen by the one and missed by the other, never for long.
                assertThat(same && touchesNothing(bounds, position, first))
                        .as("trial %s, seed 9", trial)
                        .isFalse();
            }
        }
        assertThat(known).isGreaterThan(60);
    }

    private static boolean touchesNothing(TimeBounds bounds, Position position, Light light) {
        for (Instant at = bounds.earliest(); !at.isAfter(bounds.latest()); at = at.plusMillis(500)) {
            if (Sun.light(at, position) != light) {
                return false;
            }
        }
        return true;
    }

    /** No source: from ten in the morning to ten in the morning it was day at both ends and night between. */
    @Test
    void sameClassAtBothEndsIsNotEnough() {
        Instant morning = Instant.parse("2024-05-01T00:00:00Z");
        assertThat(Sun.light(morning, BRISBANE)).isEqualTo(Light.DAY);
        assertThat(TimeOfDay.light(new TimeBounds(morning, morning.plus(Duration.ofDays(1))), BRISBANE))
                .isNull();
        Position pole = new Position(-89.9, 0);
        Instant midwinter = Instant.parse("2024-06-10T00:00:00Z");
        assertThat(TimeOfDay.light(new TimeBounds(midwinter, midwinter.plus(Duration.ofDays(20))), pole))
                .isEqualTo(Light.NIGHT);
    }

    /** Source: the time from sunrise to sunset by R's maptools 1.1-6, to ten minutes. */
    @Test
    void hoursOfDayAreThoseBetweenSunriseAndSunset() {
        int tried = 0;
        for (CSVRecord row : Checks.csv("sun/sun_maptools.csv")) {
            if (row.get("sunrise_utc").isBlank() || row.get("sunset_utc").isBlank() || tried == 25) {
                continue;
            }
            tried++;
            Instant noon = instant(row.get("noon_utc"));
            Duration half = Duration.ofHours(12);
            var position = new Position(Checks.number(row, "lat"), Checks.number(row, "lon"));
            var hours = TimeOfDay.hoursOfLight(noon.minus(half), noon.plus(half), position);
            double day = Duration.between(instant(row.get("sunrise_utc")), instant(row.get("sunset_utc")))
                            .toSeconds()
                    / 3600.0;
            assertThat(Objects.requireNonNull(hours.get(Light.DAY)))
                    .as("%s %s", row.get("name"), row.get("date"))
                    .isCloseTo(day, within(1 / 6.0));
            assertThat(hours.values().stream().mapToDouble(Double::doubleValue).sum())
                    .isCloseTo(24, within(1e-9));
        }
        assertThat(tried).isEqualTo(25);
    }

    @Test
    void unknownIsCountedAndReportsStandForNothing() {
        Instant report = Instant.parse("2024-05-01T00:30:00Z");
        List<TimedCollision> collisions = List.of(
                new TimedCollision(null, report, BRISBANE),
                new TimedCollision(new TimeBounds(report.minus(Duration.ofHours(14)), report), report, BRISBANE),
                new TimedCollision(TimeBounds.at(Instant.parse("2024-04-30T08:10:00Z")), report, BRISBANE),
                new TimedCollision(TimeBounds.at(Instant.parse("2024-04-30T12:00:00Z")), null, BRISBANE),
                new TimedCollision(TimeBounds.at(Instant.parse("2024-04-30T12:00:00Z")), report, null));
        TimeOfDay.LightCounts light = TimeOfDay.countByLight(collisions);
        assertThat(light.unknown()).isEqualTo(3);
        assertThat(light.knownCount()).isEqualTo(2);
        assertThat(light.known()).containsEntry(Light.NIGHT, 1).containsEntry(Light.DAY, 0);
        ZoneId zone = ZoneId.of("Australia/Brisbane");
        TimeOfDay.Hours hours = TimeOfDay.hoursOfCollisions(collisions, zone, Duration.ofHours(1));
        assertThat(hours.unknown()).isEqualTo(2);
        assertThat(hours.hours()).hasSize(3);
        assertThat(hours.hours().get(0)).isCloseTo(18 + 10 / 60.0, within(1e-9));
        assertThat(Objects.requireNonNull(hours.summary()).count()).isEqualTo(3);
        TimeOfDay.Hours reports = TimeOfDay.hoursOfReports(collisions, zone);
        assertThat(reports.hours()).containsOnly(10.5).hasSize(4);
        assertThat(reports.unknown()).isEqualTo(1);
        TimeOfDay.Hours none = TimeOfDay.hoursOfCollisions(new ArrayList<>(), zone, Duration.ofHours(1));
        assertThat(none.summary()).isNull();
        assertThatThrownBy(() -> new TimeBounds(report, report.minusSeconds(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("before the earliest");
    }
}
