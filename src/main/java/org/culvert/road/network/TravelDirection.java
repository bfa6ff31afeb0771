package org.culvert.road.network;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Directions of travel as people say them: "northbound", "NB", "south-west", "270". */
final class TravelDirection {
    private static final Map<String, Double> COMPASS =
            Map.of("N", 0.0, "NE", 45.0, "E", 90.0, "SE", 135.0, "S", 180.0, "SW", 225.0, "W", 270.0, "NW", 315.0);
    private static final Pattern DEGREES = Pattern.compile("(\\d{1,3})(?: ?(?:\u00b0|DEG(?:REES)?))?");

    private TravelDirection() {}

    /** Degrees clockwise from north, if the words mean a direction of the compass. */
    static Optional<Double> degrees(String words) {
        String plain = words.toUpperCase(Locale.ROOT).strip();
        Matcher number = DEGREES.matcher(plain);
        if (number.matches()) {
            double degrees = Double.parseDouble(number.group(1));
            return degrees <= 360 ? Optional.of(degrees % 360) : Optional.empty();
        }
        String letters = plain.replaceAll("[^A-Z]", "")
                .replaceAll("BOUND$", "")
                .replaceAll("WARDS?$", "")
                .replace("NORTH", "N")
                .replace("SOUTH", "S")
                .replace("EAST", "E")
                .replace("WEST", "W");
        if (letters.endsWith("B")) {
            letters = letters.substring(0, letters.length() - 1);
        }
        return Optional.ofNullable(COMPASS.get(letters));
    }

    /** The angle between two directions, 0 to 180. */
    static double between(double degrees, double other) {
        return Math.abs(Math.IEEEremainder(degrees - other, 360));
    }
}
