package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.csv.CSVRecord;
import org.assertj.core.api.SoftAssertions;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class SunTest {
    private static final long TOLERANCE_SECONDS = 60;

    /** Source: R package maptools 1.1-6, ten sites, nine dates. A blank is no event. */
    @Test
    void sunriseSunsetAndTwilightAgreeWithMaptoolsToAMinute() {
        List<CSVRecord> rows = CheckFiles.rows("sun/sun_maptools.csv");
        assertThat(rows).hasSize(90);
        SoftAssertions all = new SoftAssertions();
        for (CSVRecord row : rows) {
            Sun.Day day = dayOf(row);
            check(all, row, "sunrise_utc", day.sunrise());
            check(all, row, "sunset_utc", day.sunset());
            check(all, row, "civil_dawn_utc", day.civilDawn());
            check(all, row, "civil_dusk_utc", day.civilDusk());
            check(all, row, "nautical_dusk_utc", day.nauticalDusk());
            check(all, row, "noon_utc", day.noon());
        }
        all.assertAll();
    }

    /** Source: an independent script of the same theory, 346 events. */
    @Test
    void timesAgreeWithTheIndependentScriptToAMinute() {
        Map<String, Sun.Day> days = new HashMap<>();
        for (CSVRecord row : CheckFiles.rows("sun/sun_maptools.csv")) {
            days.put(row.get("name") + row.get("date"), dayOf(row));
        }
        List<CSVRecord> rows = CheckFiles.rows("sun/sun_noaa_iterated_python.csv");
        assertThat(rows).hasSize(346);
        for (CSVRecord row : rows) {
            Sun.Day day = Objects.requireNonNull(days.get(row.get("name") + row.get("date")));
            Instant ours = switch (row.get("event")) {
                case "sunrise_utc" -> day.sunrise();
                case "sunset_utc" -> day.sunset();
                case "civil_dawn_utc" -> day.civilDawn();
                default -> day.civilDusk();
            };
            Duration apart =
                    Duration.between(Instant.parse(row.get("utc")), ours).abs();
            assertThat(apart).as(row.toString()).isLessThanOrEqualTo(Duration.ofSeconds(TOLERANCE_SECONDS));
        }
    }

    /** Source: maptools' solar position at 12:00 of the row's zone, refraction included (under 0.07 degrees above 15). */
    @Test
    void elevationAtMiddayAgreesWithMaptools() {
        int checked = 0;
        for (CSVRecord row : CheckFiles.rows("sun/sun_maptools.csv")) {
            double theirs = Double.parseDouble(row.get("sunpos_noon_elev"));
            double ours = Sun.elevationDegrees(midday(row), positionOf(row));
            if (theirs > 15) {
                assertThat(ours).as(row.toString()).isCloseTo(theirs, within(0.07));
                checked++;
            } else {
                assertThat(ours).as(row.toString()).isBetween(theirs - 0.7, theirs + 0.01);
            }
        }
        assertThat(checked).isGreaterThan(60);
    }

    @Test
    void lightFallsWithTheSun() {
        assertThat(Light.of(10)).isEqualTo(Light.DAY);
        assertThat(Light.of(-0.833)).isEqualTo(Light.CIVIL_TWILIGHT);
        assertThat(Light.of(-6)).isEqualTo(Light.NAUTICAL_TWILIGHT);
        assertThat(Light.of(-12)).isEqualTo(Light.ASTRONOMICAL_TWILIGHT);
        assertThat(Light.of(-18)).isEqualTo(Light.NIGHT);
        assertThat(Light.of(-90)).isEqualTo(Light.NIGHT);
    }

    @Test
    void clocksThatChangeDoNotMoveTheSun() {
        Position melbourne = new Position(-37.8136, 144.9631);
        LocalDate change = LocalDate.of(2023, 4, 2);
        Sun.Day local = Sun.day(change, ZoneId.of("Australia/Melbourne"), melbourne);
        Sun.Day fixed = Sun.day(change, ZoneOffset.ofHours(10), melbourne);
        assertThat(Duration.between(local.sunrise(), fixed.sunrise()).abs()).isLessThan(Duration.ofSeconds(1));
    }

    /**
     * Two winter rows of Tromso have blanks where the same rows' elevation at midday shows that there is twilight: the
     * program's first guess fails there. These blanks say nothing.
     */
    private static boolean blankIsAFault(CSVRecord row) {
        double midday = Double.parseDouble(row.get("sunpos_noon_elev"));
        return row.get("civil_dawn_utc").isBlank() && midday > -6 && midday < 0;
    }

    private static void check(SoftAssertions all, CSVRecord row, String name, @Nullable Instant ours) {
        String expected = row.get(name);
        if (expected.isBlank()) {
            if (blankIsAFault(row)) {
                return;
            }
            all.assertThat(ours).as("%s %s", name, row).isNull();
        } else {
            all.assertThat(ours).as("%s %s", name, row).isNotNull();
            if (ours != null) {
                long apart = Math.abs(Duration.between(utc(expected), ours).toSeconds());
                all.assertThat(apart).as("%s %s", name, row).isLessThanOrEqualTo(TOLERANCE_SECONDS);
            }
        }
    }

    private static Sun.Day dayOf(CSVRecord row) {
        return Sun.day(LocalDate.parse(row.get("date")), ZoneId.of(row.get("tz")), positionOf(row));
    }

    private static Instant midday(CSVRecord row) {
        return LocalDate.parse(row.get("date"))
                .atTime(12, 0)
                .atZone(ZoneId.of(row.get("tz")))
                .toInstant();
    }

    private static Position positionOf(CSVRecord row) {
        return new Position(Double.parseDouble(row.get("lat")), Double.parseDouble(row.get("lon")));
    }

    private static Instant utc(String text) {
        return LocalDateTime.parse(text).toInstant(ZoneOffset.UTC);
    }
}
