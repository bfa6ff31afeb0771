package org.culvert.geo;

/** How light it is, by the elevation of the sun's centre above the horizon without refraction. */
public enum Light {
    DAY(-0.833),
    CIVIL_TWILIGHT(-6),
    NAUTICAL_TWILIGHT(-12),
    ASTRONOMICAL_TWILIGHT(-18),
    NIGHT(-90);

    private final double downToDegrees;

    Light(double downToDegrees) {
        this.downToDegrees = downToDegrees;
    }

    /** The elevation at which this class ends, in degrees; it belongs to the class below. */
    public double downToDegrees() {
        return downToDegrees;
    }

    public static Light of(double sunElevationDegrees) {
        for (Light light : values()) {
            if (sunElevationDegrees > light.downToDegrees) {
                return light;
            }
        }
        return NIGHT;
    }
}
