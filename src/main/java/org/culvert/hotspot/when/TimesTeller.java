package org.culvert.hotspot.when;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.culvert.geo.Light;
import org.culvert.geo.Position;
import org.culvert.geo.Sun;
import org.culvert.hotspot.stats.season.TimeOfDay;
import org.culvert.hotspot.stats.season.TimedCollision;
import org.culvert.hotspot.when.CollisionSeasonsView.HourTable;
import org.culvert.hotspot.when.CollisionSeasonsView.LightRow;
import org.culvert.hotspot.when.CollisionSeasonsView.LightTable;
import org.jspecify.annotations.Nullable;

/** Says how light it was and what the clocks showed. */
final class TimesTeller {
    /** Known to the hour. */
    private static final Duration WIDEST = Duration.ofHours(1);

    private static final int HOURS = 24;

    private final Told told;
    private final ZoneId zone;

    TimesTeller(Told told, ZoneId zone) {
        this.told = told;
        this.zone = zone;
    }

    /** @param last day of the year whose light is told */
    LightTable light(List<TimedCollision> collisions, LocalDate last) {
        TimeOfDay.LightCounts counts = TimeOfDay.countByLight(collisions);
        int[] cells = new int[Light.values().length + 1];
        for (Light light : Light.values()) {
            cells[light.ordinal()] = Objects.requireNonNullElse(counts.known().get(light), 0);
        }
        cells[cells.length - 1] = counts.unknown();
        List<@Nullable Integer> shown = told.parts(cells);
        Position middle = told.tells(collisions.size()) ? middle(collisions) : null;
        Map<Light, Double> hours = middle == null ? null : hoursOfAYear(last, middle);
        List<LightRow> rows = new ArrayList<>();
        for (Light light : Light.values()) {
            rows.add(new LightRow(
                    light.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                    shown.get(light.ordinal()),
                    hours == null ? null : share(light, hours)));
        }
        return new LightTable(
                rows,
                shown.get(cells.length - 1),
                "By the height of the sun at the place and instant, for collisions whose instant is known or whose whole"
                        + " interval had one class of light. The share of time is that of a year there.");
    }

    private Map<Light, Double> hoursOfAYear(LocalDate last, Position middle) {
        Instant to = last.plusDays(1).atStartOfDay(zone).toInstant();
        Instant from = last.plusDays(1).minusYears(1).atStartOfDay(zone).toInstant();
        return TimeOfDay.hoursOfLight(from, to, middle);
    }

    private static @Nullable Double share(Light light, Map<Light, Double> hours) {
        double all = hours.values().stream().mapToDouble(Double::doubleValue).sum();
        return Told.rounded(Objects.requireNonNullElse(hours.get(light), 0.0) / all, 2);
    }

    /** The place in the middle of them by latitude, of which light depends most, told to a tenth of a degree. */
    private static @Nullable Position middle(List<TimedCollision> collisions) {
        List<Position> places = new ArrayList<>();
        for (TimedCollision collision : collisions) {
            Position position = collision.position();
            if (position != null) {
                places.add(position);
            }
        }
        places.sort(Comparator.comparingDouble(Position::latitude).thenComparingDouble(Position::longitude));
        if (places.isEmpty()) {
            return null;
        }
        Position middle = places.get(places.size() / 2);
        return new Position(Math.rint(middle.latitude() * 10) / 10, Math.rint(middle.longitude() * 10) / 10);
    }

    /** The sun over a place on the middle day of each month, by the clocks there. */
    List<StretchTimes.SunOfMonth> sun(int year, Position place) {
        List<StretchTimes.SunOfMonth> months = new ArrayList<>();
        for (int month = 1; month <= 12; month++) {
            Sun.Day day = Sun.day(LocalDate.of(year, month, 15), zone, place);
            months.add(new StretchTimes.SunOfMonth(
                    month, hour(day.civilDawn()), hour(day.sunrise()), hour(day.sunset()), hour(day.civilDusk())));
        }
        return months;
    }

    private @Nullable Double hour(@Nullable Instant instant) {
        return instant == null
                ? null
                : Double.valueOf(Math.rint(instant.atZone(zone).toLocalTime().toSecondOfDay() / 36.0) / 100);
    }

    HourTable hoursOfCollisions(List<TimedCollision> collisions) {
        return hours(TimeOfDay.hoursOfCollisions(collisions, zone, WIDEST));
    }

    HourTable hoursOfReports(List<TimedCollision> collisions) {
        return hours(TimeOfDay.hoursOfReports(collisions, zone));
    }

    private HourTable hours(TimeOfDay.Hours hours) {
        int[] cells = new int[HOURS + 1];
        hours.hours().forEach(hour -> cells[Math.min(HOURS - 1, (int) Math.floor(hour))]++);
        cells[HOURS] = hours.unknown();
        List<@Nullable Integer> shown = told.parts(cells);
        var summary = told.tells(hours.hours().size()) ? hours.summary() : null;
        return new HourTable(
                shown.subList(0, HOURS),
                shown.get(HOURS),
                summary == null || Double.isNaN(summary.meanDirectionRadians())
                        ? null
                        : Told.rounded(summary.meanDirectionRadians() / (2 * Math.PI) * HOURS, 1),
                summary == null ? null : Double.valueOf(Told.significant(summary.resultantLength())));
    }
}
