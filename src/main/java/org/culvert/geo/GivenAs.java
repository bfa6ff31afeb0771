package org.culvert.geo;

/** How a place was given. */
public enum GivenAs {
    DECIMAL_DEGREES("decimal degrees"),
    DEGREES_DECIMAL_MINUTES("degrees decimal minutes"),
    DEGREES_MINUTES_SECONDS("degrees minutes seconds"),
    GRID("easting northing"),
    PLUS_CODE("Plus Code"),
    ROAD_AND_CHAINAGE("road and chainage"),
    CROSSING_ROADS("crossing roads");

    private final String words;

    GivenAs(String words) {
        this.words = words;
    }

    /** In words, as Darwin Core's {@code verbatimCoordinateSystem} takes it. */
    public String words() {
        return words;
    }
}
