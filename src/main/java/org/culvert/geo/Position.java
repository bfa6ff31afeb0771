package org.culvert.geo;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A position on WGS 84 in decimal degrees. Immutable.
 *
 * @param latitude degrees north, -90 to 90
 * @param longitude degrees east, -180 to 180
 */
public record Position(double latitude, double longitude) {
    /** @throws CoordinateException if a coordinate is not a number or out of range */
    public Position {
        if (!(latitude >= -90 && latitude <= 90)) {
            throw new CoordinateException(
                    "decimalLatitude",
                    "latitude " + latitude + " is not between -90 and 90",
                    "a latitude in degrees between -90 (south pole) and 90 (north pole)",
                    otherWayRound(latitude, longitude));
        }
        if (!(longitude >= -180 && longitude <= 180)) {
            throw new CoordinateException(
                    "decimalLongitude",
                    "longitude " + longitude + " is not between -180 and 180",
                    "a longitude in degrees between -180 (west) and 180 (east)",
                    null);
        }
    }

    private static @Nullable Position otherWayRound(double latitude, double longitude) {
        boolean legal = Math.abs(longitude) <= 90 && Math.abs(latitude) <= 180;
        return legal ? new Position(longitude, latitude) : null;
    }

    /** Latitude and longitude in this order, seven decimals (about a centimetre), for people. */
    public String asText() {
        return String.format(Locale.ROOT, "%.7f, %.7f", latitude, longitude);
    }
}
