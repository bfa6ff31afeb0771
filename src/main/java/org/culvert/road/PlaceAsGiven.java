package org.culvert.road;

import java.util.Locale;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * A place as somebody gave it: exactly one way of saying it, and hints.
 *
 * @param decimalDegrees latitude and longitude as given, as texts so that the number of digits is kept
 * @param degreesMinutesSeconds both coordinates in one text with hemisphere letters, such as {@code 33°51'31"S
 *     151°12'53"E}
 * @param grid easting and northing in a projected system named by its EPSG code
 * @param plusCode a full Plus Code, or a short one
 * @param roadAndChainage a road and a distance along it in kilometres, as said, such as {@code 12.4}
 * @param crossingRoads two roads that meet there
 * @param uncertaintyMetres the caller's own doubt in metres where one was stated
 * @param roadName a road the place is said to be on, to decide between roads that are equally near
 * @param direction a compass direction of travel or a carriageway, to decide likewise
 */
public record PlaceAsGiven(
        @Nullable DecimalDegrees decimalDegrees,
        @Nullable String degreesMinutesSeconds,
        @Nullable Grid grid,
        @Nullable String plusCode,
        @Nullable RoadAndChainage roadAndChainage,
        @Nullable CrossingRoads crossingRoads,
        @Nullable Double uncertaintyMetres,
        @Nullable String roadName,
        @Nullable String direction) {

    /**
     * A position that is known in degrees of WGS 84, to the sixth digit, which is 0.1 m.
     *
     * @param uncertaintyMetres how well it is known, or null
     * @param roadName a road it is said to be on, or null
     */
    public static PlaceAsGiven at(
            double latitude, double longitude, @Nullable Double uncertaintyMetres, @Nullable String roadName) {
        return new PlaceAsGiven(
                new DecimalDegrees(
                        String.format(Locale.ROOT, "%.6f", latitude), String.format(Locale.ROOT, "%.6f", longitude)),
                null,
                null,
                null,
                null,
                null,
                uncertaintyMetres,
                roadName,
                null);
    }

    /** The same with the caller's own doubt. */
    PlaceAsGiven knownWithin(double metres) {
        return new PlaceAsGiven(
                decimalDegrees,
                degreesMinutesSeconds,
                grid,
                plusCode,
                roadAndChainage,
                crossingRoads,
                metres,
                roadName,
                direction);
    }

    public record DecimalDegrees(String latitude, String longitude) {
        public DecimalDegrees {
            require("latitude", latitude);
            require("longitude", longitude);
        }
    }

    /** Easting before northing whatever the system's own order is. */
    public record Grid(int epsg, String easting, String northing) {
        public Grid {
            require("easting", easting);
            require("northing", northing);
        }
    }

    public record RoadAndChainage(
            String road,
            String chainageKilometres,
            @Nullable String carriageway) {
        public RoadAndChainage {
            require("road", road);
            require("chainageKilometres", chainageKilometres);
        }
    }

    public record CrossingRoads(String road, String crossingRoad) {
        public CrossingRoads {
            require("road", road);
            require("crossingRoad", crossingRoad);
        }
    }

    /** What was sent may leave out anything. */
    private static void require(String field, @Nullable String said) {
        if (said == null) {
            throw InvalidException.of(field, "This is missing.", "what was said of it, as a text");
        }
    }
}
