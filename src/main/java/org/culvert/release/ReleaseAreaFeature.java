package org.culvert.release;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.culvert.release.rules.Barrier;
import org.culvert.release.rules.area.ReleaseArea;
import org.jspecify.annotations.Nullable;

/**
 * The area that rules and maps do not rule out for a case, as a GeoJSON feature (RFC 7946) that GIS programs open.
 *
 * @param type always {@code Feature}
 * @param geometry null where nothing is left, or where nobody knows the origin
 */
public record ReleaseAreaFeature(String type, @Nullable Geometry geometry, Properties properties) {

    /** A size in words, below a hectare in square metres. */
    public static String size(double squareMetres) {
        return squareMetres < 10_000
                ? String.format(Locale.ROOT, "%,.0f m²", squareMetres)
                : String.format(Locale.ROOT, "%,.2f km²", squareMetres / 1e6);
    }

    /** Longitude before latitude, seven decimals; {@code type} is always {@code MultiPolygon}. */
    public record Geometry(String type, double[][][][] coordinates) {}

    /**
     * What the area comes from.
     *
     * @param day for which the rules were asked
     * @param words what there is to say of the whole
     * @param steps what was taken into account, in order, and what was left
     * @param takenOut parts that maps took out, in that order
     * @param emptiedBy which step left nothing, and what would open it; null where something is left
     * @param nearest its point nearest to the origin
     * @param lookFirst where to look first
     * @param foundPlaceFirst what stands before any other site, by the rules: null where the found place is recorded unsuitable
     *     on an allowed ground, or no rule asks
     * @param askFirst parks and properties in it, and jurisdictions across a border
     * @param sites known sites, the most promising first
     */
    public record Properties(
            UUID caseId,
            LocalDate day,
            String jurisdiction,
            String scientificName,
            String words,
            double squareMetres,
            List<ReleaseArea.Step> steps,
            List<TakenOut> takenOut,
            ReleaseArea.@Nullable Step emptiedBy,
            @Nullable Point nearest,
            @Nullable LookFirst lookFirst,
            @Nullable String foundPlaceFirst,
            List<AskFirst> askFirst,
            List<RankedSite> sites,
            String note) {}

    /**
     * A part that is ruled out.
     *
     * @param cut {@code catchment}, {@code excluded}, {@code burnt} or {@code flooded}
     * @param words as its step says it
     */
    public record TakenOut(String cut, String words, Geometry geometry) {}

    /**
     * Land whose keeper, owner or government is asked before.
     *
     * @param kind {@code protectedArea}, {@code property} or {@code jurisdiction}, the last across a border
     * @param squareMetres how much of the area is in it
     * @param geometry that part of the area
     */
    public record AskFirst(String kind, String name, String source, double squareMetres, Geometry geometry) {}

    /** @param metres from the origin */
    public record Point(double decimalLatitude, double decimalLongitude, double metres) {}

    /** Where to look first: nobody has looked there yet. */
    public record LookFirst(
            double decimalLatitude,
            double decimalLongitude,
            double metres,
            boolean onSide,
            @Nullable String water) {}

    /**
     * A known site.
     *
     * @param overall what all tests that may stand in the way come to there today, with nothing said of the hour
     * @param distanceMetres from the origin, centre to centre
     * @param doubtMetres how well that is known
     * @param inArea {@code pass}: all of it lies in the area; {@code fail}: none of it; else {@code cantTell}
     */
    public record RankedSite(
            int rank,
            UUID siteId,
            String name,
            double decimalLatitude,
            double decimalLongitude,
            boolean fitForGroup,
            String overall,
            String inArea,
            double distanceMetres,
            double doubtMetres,
            List<Barrier.Crossed> roadsBetween) {}
}
