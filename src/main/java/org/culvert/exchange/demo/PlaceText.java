package org.culvert.exchange.demo;

import java.util.Locale;

/** The ways people write a point down: degrees, minutes and seconds; a national grid; a Plus Code. */
final class PlaceText {
    /** WGS 84 / UTM zone 57 south. */
    static final String GRID = "EPSG:32757";

    private static final double CENTRAL_MERIDIAN = 159;
    private static final double FLATTENING_N = 0.0016792203863837047;
    private static final double ECCENTRICITY = 0.08181919084262149;
    private static final double RECTIFYING_RADIUS_METRES = 6367449.145823415;
    private static final String PLUS_CODE_DIGITS = "23456789CFGHJMPQRVWX";

    private PlaceText() {}

    static String decimal(double degrees, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", degrees);
    }

    /** Such as {@code 30°12'03.4"S 156°40'12.0"E}. */
    static String degreesMinutesSeconds(Spot spot, int decimals) {
        return sexagesimal(spot.latitude(), decimals, "N", "S")
                + ' '
                + sexagesimal(spot.longitude(), decimals, "E", "W");
    }

    private static String sexagesimal(double degrees, int decimals, String positive, String negative) {
        long scale = decimals == 0 ? 1 : 10;
        long tenths = StrictMath.round(StrictMath.abs(degrees) * 3600 * scale);
        long whole = tenths / (3600 * scale);
        long minutes = tenths / (60 * scale) % 60;
        String seconds = String.format(
                Locale.ROOT, decimals == 0 ? "%02.0f" : "%04.1f", (double) (tenths % (60 * scale)) / scale);
        return String.format(Locale.ROOT, "%d°%02d'%s\"", whole, minutes, seconds)
                + (degrees < 0 ? negative : positive);
    }

    /**
     * Easting and northing in metres on {@link #GRID}, by Krüger's series in the third flattening to its fourth order,
     * which is far below a millimetre within a zone (Karney 2011, doi 10.1007/s00190-011-0445-3).
     */
    static double[] eastingNorthing(Spot spot) {
        double n = FLATTENING_N;
        double[] alpha = {
            n / 2 - 2 * n * n / 3 + 5 * n * n * n / 16 + 41 * n * n * n * n / 180,
            13 * n * n / 48 - 3 * n * n * n / 5 + 557 * n * n * n * n / 1440,
            61 * n * n * n / 240 - 103 * n * n * n * n / 140,
            49561 * n * n * n * n / 161280
        };
        double latitude = StrictMath.toRadians(spot.latitude());
        double turn = StrictMath.toRadians(spot.longitude() - CENTRAL_MERIDIAN);
        double sine = StrictMath.sin(latitude);
        double t = StrictMath.sinh(artanh(sine) - ECCENTRICITY * artanh(ECCENTRICITY * sine));
        double xi = StrictMath.atan2(t, StrictMath.cos(turn));
        double eta = artanh(StrictMath.sin(turn) / StrictMath.sqrt(1 + t * t));
        double east = eta;
        double north = xi;
        for (int j = 1; j <= alpha.length; j++) {
            east += alpha[j - 1] * StrictMath.cos(2 * j * xi) * StrictMath.sinh(2 * j * eta);
            north += alpha[j - 1] * StrictMath.sin(2 * j * xi) * StrictMath.cosh(2 * j * eta);
        }
        return new double[] {
            500_000 + 0.9996 * RECTIFYING_RADIUS_METRES * east, 10_000_000 + 0.9996 * RECTIFYING_RADIUS_METRES * north
        };
    }

    private static double artanh(double value) {
        return 0.5 * StrictMath.log((1 + value) / (1 - value));
    }

    /** The ten digits of the Plus Code whose cell of 1/8000 degree holds the point (Open Location Code 1.0). */
    static String plusCode(Spot spot) {
        long latitude = Math.floorDiv(spot.latitudeE7() + 900_000_000L, 1250L);
        long longitude = Math.floorDiv(spot.longitudeE7() + 1_800_000_000L, 1250L);
        StringBuilder code = new StringBuilder();
        for (int pair = 0; pair < 5; pair++) {
            code.insert(0, PLUS_CODE_DIGITS.charAt((int) (longitude % 20)));
            code.insert(0, PLUS_CODE_DIGITS.charAt((int) (latitude % 20)));
            latitude /= 20;
            longitude /= 20;
        }
        return code.insert(8, '+').toString();
    }
}
