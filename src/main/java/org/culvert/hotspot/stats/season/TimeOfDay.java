package org.culvert.hotspot.stats.season;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.culvert.geo.Light;
import org.culvert.geo.Position;
import org.culvert.geo.Sun;
import org.jspecify.annotations.Nullable;

/**
 * The light and the hour of collisions whose time is known only between two instants.
 *
 * <p>Light is the class of the sun's elevation above the place, in UTC throughout. A collision has a class only if the whole
 * of its interval has that one; else its light is unknown, and it is counted as unknown. Hours are those of the clocks at the
 * place. The time of the report stands in for nothing.
 */
public final class TimeOfDay {
    /** No faster does the sun climb or sink anywhere: a full turn in a day, and a little for its own way along the ecliptic. */
    private static final double DEGREES_A_SECOND = 15.1 / 3600;

    private static final double SECOND = 1;

    private static final Duration LOOK = Duration.ofMinutes(5);

    private TimeOfDay() {}

    /**
     * The class of light that held from the earliest instant to the latest, or null if there was more than one.
     *
     * <p>Between two instants with the same class the sun cannot have left it if it had not the time to reach the class's edge
     * and come back; else the interval is halved. A touch of another class shorter than a second is overlooked.
     */
    public static @Nullable Light light(TimeBounds happened, Position position) {
        Instant earliest = happened.earliest();
        double before = Sun.elevationDegrees(earliest, position);
        Light light = Light.of(before);
        double seconds = happened.width().toMillis() / 1000.0;
        double after = Sun.elevationDegrees(happened.latest(), position);
        return staysIn(light, earliest, position, 0, before, seconds, after) ? light : null;
    }

    private static boolean staysIn(
            Light light, Instant earliest, Position position, double from, double before, double to, double after) {
        if (Light.of(before) != light || Light.of(after) != light) {
            return false;
        }
        double upper = light == Light.DAY ? 90 : Light.values()[light.ordinal() - 1].downToDegrees();
        double lower = light == Light.NIGHT ? -90 : light.downToDegrees();
        double swing = DEGREES_A_SECOND * (to - from) / 2;
        double middleOfBoth = (before + after) / 2;
        boolean cannotRise = light == Light.DAY || middleOfBoth + swing <= upper;
        boolean cannotSink = light == Light.NIGHT || middleOfBoth - swing > lower;
        if ((cannotRise && cannotSink) || to - from <= SECOND) {
            return true;
        }
        double halfway = (from + to) / 2;
        double there = Sun.elevationDegrees(earliest.plus(Duration.ofMillis(Math.round(halfway * 1000))), position);
        return staysIn(light, earliest, position, from, before, halfway, there)
                && staysIn(light, earliest, position, halfway, there, to, after);
    }

    /**
     * How many collisions happened in which light.
     *
     * @param known count of each class of light; classes without any have 0
     * @param unknown how many have no known light: no time, no place, or an interval over more than one class
     */
    public record LightCounts(Map<Light, Integer> known, int unknown) {
        public LightCounts {
            known = Map.copyOf(known);
        }

        public int knownCount() {
            return known.values().stream().mapToInt(Integer::intValue).sum();
        }
    }

    public static LightCounts countByLight(Collection<TimedCollision> collisions) {
        Map<Light, Integer> known = new EnumMap<>(Light.class);
        for (Light light : Light.values()) {
            known.put(light, 0);
        }
        int unknown = 0;
        for (TimedCollision collision : collisions) {
            TimeBounds happened = collision.happened();
            Position position = collision.position();
            Light light = happened == null || position == null ? null : light(happened, position);
            if (light == null) {
                unknown++;
            } else {
                known.merge(light, 1, Integer::sum);
            }
        }
        return new LightCounts(known, unknown);
    }

    /**
     * How many hours each class of light lasted at a place: what the counts of {@link #countByLight} are to be held against, as
     * effort, by {@link AgainstEffort}. To a few minutes a day: the sun is looked at every five minutes.
     *
     * @throws IllegalArgumentException if the end is not after the beginning
     */
    public static Map<Light, Double> hoursOfLight(Instant from, Instant to, Position position) {
        if (!to.isAfter(from)) {
            throw new IllegalArgumentException("the end " + to + " is not after the beginning " + from);
        }
        long steps = Math.max(1, Duration.between(from, to).dividedBy(LOOK));
        double hours = Duration.between(from, to).toMillis() / 3.6e6 / steps;
        Map<Light, Double> total = new EnumMap<>(Light.class);
        for (Light light : Light.values()) {
            total.put(light, 0.0);
        }
        for (long step = 0; step < steps; step++) {
            Instant middle = from.plusMillis(Math.round((step + 0.5) * hours * 3.6e6));
            total.merge(Sun.light(middle, position), hours, Double::sum);
        }
        return total;
    }

    /**
     * Hours of the day, as directions of a circle of 24 hours.
     *
     * @param hours those known, ascending, 0 to less than 24
     * @param summary of those known; null where there is none
     * @param unknown how many have no hour
     */
    public record Hours(List<Double> hours, @Nullable CircularSummary summary, int unknown) {
        public Hours {
            hours = List.copyOf(hours);
        }

        private static Hours of(Collection<@Nullable Instant> instants, ZoneId zone) {
            List<Double> hours = new ArrayList<>();
            int unknown = 0;
            for (Instant instant : instants) {
                if (instant == null) {
                    unknown++;
                } else {
                    LocalTime time = instant.atZone(zone).toLocalTime();
                    hours.add(time.toNanoOfDay() / 3.6e12);
                }
            }
            hours.sort(null);
            if (hours.isEmpty()) {
                return new Hours(hours, null, unknown);
            }
            double[] all = hours.stream().mapToDouble(Double::doubleValue).toArray();
            return new Hours(hours, CircularSummary.of(CircularSample.ofHours(all)), unknown);
        }
    }

    /**
     * The hours at which collisions happened, of those known well enough: the middle of an interval no wider than asked for.
     *
     * @param widest a wider interval has no known hour
     */
    public static Hours hoursOfCollisions(Collection<TimedCollision> collisions, ZoneId zone, Duration widest) {
        List<@Nullable Instant> middles = new ArrayList<>();
        for (TimedCollision collision : collisions) {
            TimeBounds happened = collision.happened();
            if (happened == null || happened.width().compareTo(widest) > 0) {
                middles.add(null);
            } else {
                middles.add(happened.middle());
            }
        }
        return Hours.of(middles, zone);
    }

    /** The hours at which collisions were reported: of the people who report, not of the animals. */
    public static Hours hoursOfReports(Collection<TimedCollision> collisions, ZoneId zone) {
        List<@Nullable Instant> reports = new ArrayList<>();
        for (TimedCollision collision : collisions) {
            reports.add(collision.reported());
        }
        return Hours.of(reports, zone);
    }
}
