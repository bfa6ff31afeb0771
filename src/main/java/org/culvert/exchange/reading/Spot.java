package org.culvert.exchange.reading;

import org.jspecify.annotations.Nullable;

/**
 * Coordinates as a row gives them, not yet understood. Numbers have a point before their decimals and no marks between the
 * thousands, whatever the file has, and as many digits as in the file.
 *
 * @param first latitude in degrees, or easting; null where it is a text
 * @param second longitude in degrees, or northing; null where it is a text
 * @param text both in one cell, with the point as decimal mark: degrees in any form, or a Plus Code; null otherwise
 * @param epsg of a grid; null otherwise
 */
public record Spot(
        Kind kind,
        @Nullable String first,
        @Nullable String second,
        @Nullable String text,
        @Nullable Integer epsg) {
    /** In which form. */
    public enum Kind {
        decimalDegrees,
        text,
        grid,
        plusCode
    }

    public static Spot decimalDegrees(String latitude, String longitude) {
        return new Spot(Kind.decimalDegrees, latitude, longitude, null, null);
    }

    public static Spot text(String text) {
        return new Spot(Kind.text, null, null, text, null);
    }

    public static Spot grid(int epsg, String easting, String northing) {
        return new Spot(Kind.grid, easting, northing, null, epsg);
    }

    public static Spot plusCode(String code) {
        return new Spot(Kind.plusCode, null, null, code, null);
    }
}
