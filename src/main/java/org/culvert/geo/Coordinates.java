package org.culvert.geo;

import com.google.openlocationcode.OpenLocationCode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Reads coordinates as people say them: decimal degrees, degrees with minutes and seconds, a grid, a Plus Code.
 *
 * <p>What cannot be is refused with a {@link CoordinateException} that says what is wrong and offers the other reading
 * where there is one. Nothing is corrected by itself. Digits count: {@code -33.87} and {@code -33.8700} are the same
 * position with different uncertainties, so numbers come as text or {@link BigDecimal}.
 */
public final class Coordinates {
    private static final int MOST_DIGITS = 60;

    private Coordinates() {}

    /**
     * Latitude and longitude in decimal degrees on WGS 84. The resolution is that of the finer of the two, since trailing
     * zeros often get lost on the way.
     *
     * @param statedMetres the uncertainty as stated by the caller, or null
     */
    public static CoordinateReading decimal(BigDecimal latitude, BigDecimal longitude, @Nullable Double statedMetres) {
        double lat = latitude.doubleValue();
        double lon = longitude.doubleValue();
        Position position = new Position(lat, lon);
        int decimals = Math.max(0, Math.max(latitude.scale(), longitude.scale()));
        double resolution = Uncertainty.resolutionMetres(lat, Math.pow(10, -decimals));
        return new CoordinateReading(
                position,
                Uncertainty.combined(resolution, statedMetres),
                GivenAs.DECIMAL_DEGREES,
                latitude.toPlainString() + ", " + longitude.toPlainString(),
                null);
    }

    /** As {@link #decimal(BigDecimal, BigDecimal, Double)} from text. */
    public static CoordinateReading decimal(String latitude, String longitude, @Nullable Double statedMetres) {
        return decimal(
                number("decimalLatitude", latitude, "degrees such as -33.8688"),
                number("decimalLongitude", longitude, "degrees such as 151.2093"),
                statedMetres);
    }

    /**
     * A pair of coordinates as text: {@code 33°52'07.7"S 151°12'33.5"E}, {@code S 33 52.128 E 151 12.558},
     * {@code -33.8688, 151.2093}. Without letters the latitude comes first.
     */
    public static CoordinateReading text(String text, @Nullable Double statedMetres) {
        DegreesText pair = DegreesText.read(text);
        Position position = new Position(pair.latitude(), pair.longitude());
        double resolution = Uncertainty.resolutionMetres(pair.latitude(), pair.unitDegrees());
        return new CoordinateReading(
                position, Uncertainty.combined(resolution, statedMetres), pair.givenAs(), text.trim(), null);
    }

    /**
     * UTM or a national grid by EPSG code. The unit of the last digit is that of the decimals, or for whole numbers the
     * number of zeros that both end on: 334400, 6250900 is read as given to 100 m. The register's uncertainty of the shift
     * between datums is added.
     *
     * @throws CoordinateException also where the result is outside the area that the grid is made for
     */
    public static CoordinateReading grid(int epsg, String easting, String northing, @Nullable Double statedMetres) {
        BigDecimal east = number("easting", easting, "metres such as 334368");
        BigDecimal north = number("northing", northing, "metres such as 6250948");
        Grid grid = Projections.grid(epsg);
        if (grid.isGeographic()) {
            throw new CoordinateException(
                    "epsg",
                    "EPSG:" + epsg + " has degrees, not eastings and northings",
                    "decimal degrees in their own fields, or the code of a projected system",
                    null);
        }
        Position position = insideDomain(grid, east.doubleValue(), north.doubleValue());
        if (position == null) {
            Position swapped = insideDomain(grid, north.doubleValue(), east.doubleValue());
            throw new CoordinateException(
                    "easting",
                    "easting " + easting.trim() + " and northing " + northing.trim() + " are not in the area of "
                            + grid.name()
                            + (swapped == null ? "" : "; the other way round they are"),
                    "an easting and a northing inside the area of " + grid.name(),
                    swapped);
        }
        double resolution = Uncertainty.gridResolutionMetres(unitOf(east, north));
        double uncertainty = Uncertainty.combined(resolution, statedMetres) + grid.datumShiftMetres();
        String verbatim = easting.trim() + " " + northing.trim();
        return new CoordinateReading(position, uncertainty, GivenAs.GRID, verbatim, grid.name());
    }

    /**
     * A Plus Code (Open Location Code): the middle of its cell, half the diagonal as resolution. A short one needs a
     * position near which to look. What stands after the code ("46J5+FP Sydney") is kept and not used.
     */
    public static CoordinateReading plusCode(String code, @Nullable Position reference, @Nullable Double statedMetres) {
        String trimmed = code.trim();
        int blank = trimmed.indexOf(' ');
        String alone = (blank < 0 ? trimmed : trimmed.substring(0, blank)).toUpperCase(Locale.ROOT);
        if (!OpenLocationCode.isValidCode(alone)) {
            throw new CoordinateException(
                    "plusCode",
                    "\"" + trimmed + "\" is not a Plus Code",
                    "a code such as 4RRH46J5+FP, or 46J5+FP with a position near which to look",
                    null);
        }
        OpenLocationCode read = new OpenLocationCode(alone);
        if (read.isShort()) {
            if (reference == null) {
                throw new CoordinateException(
                        "plusCode",
                        "the Plus Code " + alone + " is a short one and could be anywhere",
                        "the full code with eight characters before the +, or a position near which to look",
                        null);
            }
            read = read.recover(reference.latitude(), reference.longitude());
        }
        OpenLocationCode.CodeArea cell = read.decode();
        Position middle = new Position(cell.getCenterLatitude(), cell.getCenterLongitude());
        double halfDiagonal = Geodesy.metresBetween(
                        new Position(cell.getSouthLatitude(), cell.getWestLongitude()),
                        new Position(cell.getNorthLatitude(), cell.getEastLongitude()))
                / 2;
        return new CoordinateReading(
                middle, Uncertainty.combined(halfDiagonal, statedMetres), GivenAs.PLUS_CODE, trimmed, null);
    }

    /**
     * Other readings of a legal position that lies outside a region: latitude and longitude swapped, a sign left out. Empty
     * if the position is inside, or no other reading is. To be shown to a person, not applied.
     */
    public static List<CoordinateDoubt> doubts(Position position, Bounds region) {
        List<CoordinateDoubt> doubts = new ArrayList<>();
        if (region.contains(position)) {
            return doubts;
        }
        double latitude = position.latitude();
        double longitude = position.longitude();
        if (Math.abs(longitude) <= 90) {
            offer(doubts, region, longitude, latitude, "latitude and longitude may be swapped");
        }
        offer(doubts, region, -latitude, longitude, "the latitude may lack its sign, or have the wrong one");
        offer(doubts, region, latitude, -longitude, "the longitude may lack its sign, or have the wrong one");
        offer(doubts, region, -latitude, -longitude, "both coordinates may lack their sign, or have the wrong one");
        if (Math.abs(longitude) <= 90) {
            offer(doubts, region, -longitude, latitude, "swapped, and the latitude may lack its sign");
            offer(doubts, region, longitude, -latitude, "swapped, and the longitude may lack its sign");
        }
        return doubts;
    }

    private static void offer(
            List<CoordinateDoubt> doubts, Bounds region, double latitude, double longitude, String reason) {
        Position other = new Position(latitude, longitude);
        if (region.contains(other)) {
            doubts.add(new CoordinateDoubt(reason, other));
        }
    }

    private static @Nullable Position insideDomain(Grid grid, double easting, double northing) {
        try {
            Position position = grid.inverse(easting, northing);
            if (!grid.domain().grownBy(1).contains(position)) {
                return null;
            }
            // Far outside its area a projection can come back somewhere else: only what returns is meant.
            EastingNorthing back = grid.forward(position);
            return Math.hypot(back.easting() - easting, back.northing() - northing) < 1 ? position : null;
        } catch (CoordinateException outside) {
            return null;
        }
    }

    private static double unitOf(BigDecimal easting, BigDecimal northing) {
        int decimals = Math.max(easting.scale(), northing.scale());
        if (decimals > 0) {
            return Math.pow(10, -decimals);
        }
        int zeros = Math.min(trailingZeros(easting), trailingZeros(northing));
        return Math.pow(10, Math.min(zeros, 5));
    }

    private static int trailingZeros(BigDecimal whole) {
        return whole.signum() == 0 ? 5 : -Math.min(0, whole.stripTrailingZeros().scale());
    }

    private static BigDecimal number(String field, String text, String right) {
        String trimmed = text.trim().replace('\u2212', '-');
        try {
            if (trimmed.length() > MOST_DIGITS || trimmed.indexOf('e') >= 0 || trimmed.indexOf('E') >= 0) {
                throw new NumberFormatException();
            }
            return new BigDecimal(trimmed);
        } catch (NumberFormatException notANumber) {
            throw new CoordinateException(
                    field,
                    "\"" + (trimmed.length() > MOST_DIGITS ? trimmed.substring(0, MOST_DIGITS) : trimmed)
                            + "\" is not a number",
                    right + ", with a point as decimal mark",
                    null);
        }
    }
}
