package org.culvert.exchange.demo;

import org.jspecify.annotations.Nullable;

/**
 * A place as a caller gave it; only what belongs to its kind is filled in.
 *
 * @param text the place in the caller's own words or figures
 * @param chainageKm as it was said, so that {@code 12} and {@code 12.0} differ
 * @param uncertaintyMetres what the caller's telephone said, or null
 */
record GivenPlace(
        Kind kind,
        String text,
        @Nullable String decimalLatitude,
        @Nullable String decimalLongitude,
        @Nullable Integer uncertaintyMetres,
        @Nullable String gridCode,
        @Nullable Long easting,
        @Nullable Long northing,
        @Nullable String plusCode,
        @Nullable String roadName,
        @Nullable String carriageway,
        @Nullable String chainageKm,
        @Nullable String crossingRoadName) {

    enum Kind {
        DECIMAL_DEGREES("decimalDegrees"),
        DEGREES_MINUTES_SECONDS("degreesMinutesSeconds"),
        GRID("grid"),
        PLUS_CODE("plusCode"),
        ROAD_AND_CHAINAGE("roadAndChainage"),
        CROSSING_ROADS("crossingRoads"),
        NONE("none");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    static GivenPlace decimalDegrees(
            String latitude, String longitude, @Nullable Integer uncertaintyMetres, @Nullable String roadName) {
        return new GivenPlace(
                Kind.DECIMAL_DEGREES,
                latitude + ", " + longitude,
                latitude,
                longitude,
                uncertaintyMetres,
                null,
                null,
                null,
                null,
                roadName,
                null,
                null,
                null);
    }

    static GivenPlace degreesMinutesSeconds(String text) {
        return new GivenPlace(
                Kind.DEGREES_MINUTES_SECONDS, text, null, null, null, null, null, null, null, null, null, null, null);
    }

    static GivenPlace grid(long easting, long northing) {
        return new GivenPlace(
                Kind.GRID,
                "57J " + easting + ' ' + northing,
                null,
                null,
                null,
                PlaceText.GRID,
                easting,
                northing,
                null,
                null,
                null,
                null,
                null);
    }

    static GivenPlace plusCode(String code) {
        return new GivenPlace(Kind.PLUS_CODE, code, null, null, null, null, null, null, code, null, null, null, null);
    }

    static GivenPlace roadAndChainage(String road, @Nullable String carriageway, String km) {
        return new GivenPlace(
                Kind.ROAD_AND_CHAINAGE,
                road + (carriageway == null ? "" : ' ' + carriageway) + " at km " + km,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                road,
                carriageway,
                km,
                null);
    }

    static GivenPlace crossing(String road, String other) {
        return new GivenPlace(
                Kind.CROSSING_ROADS,
                "where " + road + " meets " + other,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                road,
                null,
                null,
                other);
    }

    static GivenPlace none(String words) {
        return new GivenPlace(Kind.NONE, words, null, null, null, null, null, null, null, null, null, null, null);
    }
}
