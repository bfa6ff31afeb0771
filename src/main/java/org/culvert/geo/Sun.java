package org.culvert.geo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/**
 * The sun above a place: its elevation at an instant, and when it rises and sets on a date.
 *
 * <p>The low-precision solar theory of J. Meeus, Astronomical Algorithms (2nd edition 1998), chapters 25 and 28, in the
 * form that the United States' National Oceanic and Atmospheric Administration publishes: good to some hundredths of a
 * degree between 1900 and 2100, so that rise and set come out within seconds at middle latitudes. Elevations are those of
 * the sun's centre without refraction; sunrise and sunset are at -0.833 degrees, which allows for the sun's radius and
 * the usual refraction. Everything is computed in UTC: no jump where clocks change.
 */
public final class Sun {
    private static final double MINUTES_A_DAY = 1440;
    private static final double HALF_DAY_SECONDS = 43_200;

    private Sun() {}

    /** Elevation of the sun's centre in degrees above the horizon, without refraction. */
    public static double elevationDegrees(Instant instant, Position position) {
        return elevation(instant.getEpochSecond() + instant.getNano() * 1e-9, position);
    }

    /** The class of light at an instant. */
    public static Light light(Instant instant, Position position) {
        return Light.of(elevationDegrees(instant, position));
    }

    /** The day of the sun whose noon falls nearest to the middle of a local date. */
    public static Day day(LocalDate date, ZoneId zone, Position position) {
        Instant middle = date.atTime(LocalTime.NOON).atZone(zone).toInstant();
        double noon = middle.getEpochSecond();
        for (int i = 0; i < 3; i++) {
            noon += 60 * minutesToNoon(noon, position);
        }
        return new Day(
                at(noon),
                crossing(noon, -1, Light.DAY, position),
                crossing(noon, 1, Light.DAY, position),
                crossing(noon, -1, Light.CIVIL_TWILIGHT, position),
                crossing(noon, 1, Light.CIVIL_TWILIGHT, position),
                crossing(noon, -1, Light.NAUTICAL_TWILIGHT, position),
                crossing(noon, 1, Light.NAUTICAL_TWILIGHT, position));
    }

    /** The instant on one side of noon at which a class of light ends, or null where the sun does not get there. */
    private static @Nullable Instant crossing(double noon, int side, Light light, Position position) {
        double above = noon;
        double below = noon + side * HALF_DAY_SECONDS;
        double limit = light.downToDegrees();
        if (elevation(above, position) <= limit || elevation(below, position) > limit) {
            return null;
        }
        while (Math.abs(below - above) > 0.01) {
            double middle = (above + below) / 2;
            if (elevation(middle, position) > limit) {
                above = middle;
            } else {
                below = middle;
            }
        }
        return at((above + below) / 2);
    }

    private static Instant at(double epochSeconds) {
        return Instant.EPOCH.plus(Duration.ofMillis(Math.round(epochSeconds * 1000)));
    }

    private static double elevation(double epochSeconds, Position position) {
        Ephemeris sun = Ephemeris.at(epochSeconds);
        double hourAngle = Math.toRadians(trueSolarMinutes(epochSeconds, sun, position) / 4 - 180);
        double latitude = Math.toRadians(position.latitude());
        double sine = Math.sin(latitude) * Math.sin(sun.declination)
                + Math.cos(latitude) * Math.cos(sun.declination) * Math.cos(hourAngle);
        return Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, sine))));
    }

    private static double minutesToNoon(double epochSeconds, Position position) {
        double minutes = 720 - trueSolarMinutes(epochSeconds, Ephemeris.at(epochSeconds), position);
        return Math.IEEEremainder(minutes, MINUTES_A_DAY);
    }

    private static double trueSolarMinutes(double epochSeconds, Ephemeris sun, Position position) {
        double utcMinutes = Math.IEEEremainder(epochSeconds, 86_400) / 60;
        return utcMinutes + sun.equationOfTimeMinutes + 4 * position.longitude();
    }

    private record Ephemeris(double declination, double equationOfTimeMinutes) {
        private static final double J2000_EPOCH_SECONDS =
                LocalDate.of(2000, 1, 1).atTime(12, 0).toEpochSecond(ZoneOffset.UTC);

        static Ephemeris at(double epochSeconds) {
            double t = (epochSeconds - J2000_EPOCH_SECONDS) / 86_400 / 36_525;
            double meanLongitude = Math.toRadians(280.46646 + t * (36_000.76983 + 0.0003032 * t));
            double anomaly = Math.toRadians(357.52911 + t * (35_999.05029 - 0.0001537 * t));
            double eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
            double centre = Math.sin(anomaly) * (1.914602 - t * (0.004817 + 0.000014 * t))
                    + Math.sin(2 * anomaly) * (0.019993 - 0.000101 * t)
                    + Math.sin(3 * anomaly) * 0.000289;
            double node = Math.toRadians(125.04 - 1934.136 * t);
            double apparent = meanLongitude + Math.toRadians(centre - 0.00569 - 0.00478 * Math.sin(node));
            double obliquity = Math.toRadians(23
                    + (26 + (21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))) / 60) / 60
                    + 0.00256 * Math.cos(node));
            double y = Math.pow(Math.tan(obliquity / 2), 2);
            double equation = y * Math.sin(2 * meanLongitude)
                    - 2 * eccentricity * Math.sin(anomaly)
                    + 4 * eccentricity * y * Math.sin(anomaly) * Math.cos(2 * meanLongitude)
                    - 0.5 * y * y * Math.sin(4 * meanLongitude)
                    - 1.25 * eccentricity * eccentricity * Math.sin(2 * anomaly);
            return new Ephemeris(Math.asin(Math.sin(obliquity) * Math.sin(apparent)), 4 * Math.toDegrees(equation));
        }
    }

    /**
     * One day of the sun at a place. What does not happen (polar day, polar night, white nights) is null.
     *
     * @param noon when the sun stands highest
     */
    public record Day(
            Instant noon,
            @Nullable Instant sunrise,
            @Nullable Instant sunset,
            @Nullable Instant civilDawn,
            @Nullable Instant civilDusk,
            @Nullable Instant nauticalDawn,
            @Nullable Instant nauticalDusk) {}
}
