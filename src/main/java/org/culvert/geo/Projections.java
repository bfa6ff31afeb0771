package org.culvert.geo;

import java.util.Locale;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.jspecify.annotations.Nullable;

/**
 * Coordinate reference systems by EPSG code or by the names that files carry.
 *
 * <p>Whatever the authority's own order of axes (EPSG 4326, 2193 and 3035 put the north first), callers give and get
 * easting before northing and longitude before latitude: the order is forced here once. The first look-up unpacks the
 * register, which takes seconds: call {@link #warmUp} when starting. Safe for several threads.
 */
public final class Projections {
    private static final Pattern EPSG_NAME = Pattern.compile(
            "(?:(?:urn:(?:x-)?ogc:def:crs:)?EPSG:(?:[0-9.]*:)?|https?://www\\.opengis\\.net/def/crs/EPSG/[0-9.]+/|)([0-9]{4,6})",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern CRS84_NAME = Pattern.compile(
            "(?:(?:urn:(?:x-)?ogc:def:crs:)?OGC:(?:[0-9.]*:)?|https?://www\\.opengis\\.net/def/crs/OGC/[0-9.]+/|)CRS84",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern AXIS =
            Pattern.compile("\\s*,\\s*AXIS\\s*\\[\\s*\"[^\"]*\"\\s*,\\s*([A-Za-z]+)\\s*\\]", Pattern.CASE_INSENSITIVE);
    private static final int LONGEST_TEXT = 20_000;
    private static final int DEEPEST_TEXT = 20;
    private static final ConcurrentHashMap<Integer, Grid> GRIDS = new ConcurrentHashMap<>();
    private static final Grid CRS84 = new Grid("OGC:CRS84", DefaultGeographicCRS.WGS84);

    private Projections() {}

    /** Unpacks the register and reads one projected system, so that no request has to wait for it. */
    public static void warmUp() {
        grid(3857).forward(new Position(0, 0));
    }

    /**
     * The reference system of an EPSG code: projected, or geographic in two dimensions.
     *
     * @throws CoordinateException naming the field {@code epsg} if there is none, or it is of another kind
     */
    public static Grid grid(int epsg) {
        Grid known = GRIDS.get(epsg);
        if (known != null) {
            return known;
        }
        Grid grid = new Grid("EPSG:" + epsg, decoded(epsg));
        GRIDS.put(epsg, grid);
        return grid;
    }

    /**
     * The reference system by a name: {@code EPSG:28356}, {@code urn:ogc:def:crs:EPSG::28356},
     * {@code http://www.opengis.net/def/crs/EPSG/0/28356}, {@code 28356}, or CRS84 in any of these forms.
     *
     * @throws CoordinateException naming the field {@code crs} if the name is not understood or not known
     */
    public static Grid named(String name) {
        String trimmed = name.trim();
        if (CRS84_NAME.matcher(trimmed).matches()) {
            return CRS84;
        }
        Matcher epsg = EPSG_NAME.matcher(trimmed);
        if (!epsg.matches()) {
            throw new CoordinateException(
                    "crs",
                    "the reference system \"" + trimmed + "\" is not understood",
                    "a name such as EPSG:28356, urn:ogc:def:crs:EPSG::28356 or CRS84",
                    null);
        }
        try {
            return grid(Integer.parseInt(epsg.group(1)));
        } catch (CoordinateException unknown) {
            throw new CoordinateException("crs", unknown.whatIsWrong(), unknown.whatWouldBeRight(), null);
        }
    }

    /**
     * A reference system by its well-known text (OGC 01-009), e.g. of a file whose system has no number that the register
     * knows.
     *
     * @param name what to call it
     * @throws CoordinateException naming the field {@code crs} if the text is not understood, the system is of another kind,
     *     or its axes run otherwise than to the east and the north
     */
    public static Grid ofText(String name, String wellKnownText) {
        // An extension means something that only its writer knows: that of Web Mercator moves places by twenty
        // kilometres
        boolean extended = wellKnownText.toUpperCase(Locale.ROOT).contains("EXTENSION[");
        if (extended || wellKnownText.length() > LONGEST_TEXT || deepest(wellKnownText) > DEEPEST_TEXT) {
            throw notUnderstood(name);
        }
        Matcher axis = AXIS.matcher(wellKnownText);
        while (axis.find()) {
            String direction = axis.group(1).toUpperCase(Locale.ROOT);
            if (!direction.equals("EAST") && !direction.equals("NORTH")) {
                throw new CoordinateException(
                        "crs",
                        "an axis of the reference system " + name + " runs to the "
                                + direction.toLowerCase(Locale.ROOT),
                        "a reference system whose coordinates grow to the east and to the north",
                        null);
            }
        }
        // Without axes the first is the one to the east
        CoordinateReferenceSystem crs;
        try {
            crs = CRS.parseWKT(axis.replaceAll(""));
        } catch (FactoryException | IllegalArgumentException unreadable) {
            throw notUnderstood(name);
        }
        boolean usable = crs instanceof ProjectedCRS
                || (crs instanceof GeographicCRS && crs.getCoordinateSystem().getDimension() == 2);
        if (!usable) {
            throw notUnderstood(name);
        }
        try {
            return new Grid(name, crs);
        } catch (CoordinateException noWay) {
            throw new CoordinateException("crs", noWay.whatIsWrong(), noWay.whatWouldBeRight(), null);
        }
    }

    private static CoordinateException notUnderstood(String name) {
        return new CoordinateException(
                "crs",
                "the definition of the reference system " + name + " is not understood",
                "the name of the reference system in the crs parameter, e.g. EPSG:28356",
                null);
    }

    private static int deepest(String text) {
        int depth = 0;
        int deepest = 0;
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            depth += letter == '[' || letter == '(' ? 1 : letter == ']' || letter == ')' ? -1 : 0;
            deepest = Math.max(deepest, depth);
        }
        return deepest;
    }

    private static CoordinateReferenceSystem decoded(int epsg) {
        CoordinateReferenceSystem crs = lookedUp(epsg);
        boolean usable = crs instanceof ProjectedCRS
                || (crs instanceof GeographicCRS && crs.getCoordinateSystem().getDimension() == 2);
        if (crs == null || !usable) {
            throw new CoordinateException(
                    "epsg",
                    crs == null
                            ? "there is no reference system EPSG:" + epsg
                            : "EPSG:" + epsg + " is not a grid or a geographic system in two dimensions",
                    "the EPSG code of a projected or geographic reference system, e.g. 28356 for MGA zone 56 of GDA94",
                    null);
        }
        return crs;
    }

    /** The register answers some codes of other kinds (vertical, engineering) with unchecked exceptions of its own. */
    private static @Nullable CoordinateReferenceSystem lookedUp(int epsg) {
        try {
            return CRS.decode(String.format(Locale.ROOT, "EPSG:%d", epsg), true);
        } catch (FactoryException | IndexOutOfBoundsException | ClassCastException notThere) {
            return null;
        }
    }
}
