package org.culvert.release;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.culvert.animal.CaseView;
import org.culvert.geo.Position;
import org.culvert.release.rules.Subject;
import org.culvert.release.rules.area.FirstPlace;
import org.culvert.release.rules.area.ReleaseArea;
import org.culvert.release.rules.area.SiteRanking;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Tells an area that was found as a GeoJSON feature. */
final class AreaFeatures {
    /** A degree to seven decimals is known to a centimetre. */
    private static final double DEGREE = 1e7;

    private AreaFeatures() {}

    /** Of an animal that has no area, and why. */
    static ReleaseAreaFeature without(
            CaseView told, LocalDate day, String jurisdiction, Subject subject, String words) {
        return new ReleaseAreaFeature(
                "Feature",
                null,
                new ReleaseAreaFeature.Properties(
                        told.id(),
                        day,
                        jurisdiction,
                        subject.scientificName(),
                        words,
                        0,
                        List.of(),
                        List.of(),
                        null,
                        null,
                        null,
                        null,
                        List.of(),
                        List.of(),
                        AssessmentService.NOTE));
    }

    static ReleaseAreaFeature of(
            CaseView told,
            LocalDate day,
            String jurisdiction,
            Subject subject,
            ReleaseArea area,
            Optional<FirstPlace> first,
            @Nullable String foundPlaceFirst,
            List<SiteRanking.Ranked> ranked) {
        ReleaseArea.Nearest nearest = area.nearest();
        String words = nearest == null
                ? "Nothing is left of the area: "
                        + area.findEmptying().map(ReleaseArea.Step::words).orElse("")
                : ReleaseAreaFeature.size(area.squareMetres())
                        + " are not ruled out by what is entered here. What nobody entered is not taken out of it.";
        return new ReleaseAreaFeature(
                "Feature",
                area.isEmpty() ? null : geometry(area.shape()),
                new ReleaseAreaFeature.Properties(
                        told.id(),
                        day,
                        jurisdiction,
                        subject.scientificName(),
                        words,
                        area.squareMetres(),
                        area.steps(),
                        area.takenOut().stream()
                                .map(part -> new ReleaseAreaFeature.TakenOut(
                                        part.cut().name(), part.words(), geometry(part.shape())))
                                .toList(),
                        area.findEmptying().orElse(null),
                        nearest == null
                                ? null
                                : new ReleaseAreaFeature.Point(
                                        nearest.position().latitude(),
                                        nearest.position().longitude(),
                                        nearest.metres()),
                        first.map(place -> new ReleaseAreaFeature.LookFirst(
                                        place.position().latitude(),
                                        place.position().longitude(),
                                        place.metres(),
                                        place.onSide(),
                                        place.water()))
                                .orElse(null),
                        foundPlaceFirst,
                        area.askFirst().stream().map(AreaFeatures::askFirst).toList(),
                        ranked.stream().map(AreaFeatures::site).toList(),
                        AssessmentService.NOTE));
    }

    private static ReleaseAreaFeature.RankedSite site(SiteRanking.Ranked one) {
        Position at = one.candidate().at().position();
        return new ReleaseAreaFeature.RankedSite(
                one.rank(),
                UUID.fromString(one.candidate().key()),
                one.candidate().name(),
                at.latitude(),
                at.longitude(),
                one.candidate().fitForKind(),
                one.candidate().verdict().name(),
                one.inArea().name(),
                one.separation().distanceMetres(),
                one.separation().doubtMetres(),
                one.candidate().barrier().roads());
    }

    private static ReleaseAreaFeature.AskFirst askFirst(ReleaseArea.AskFirst asked) {
        return new ReleaseAreaFeature.AskFirst(
                asked.kind(), asked.name(), asked.source(), asked.squareMetres(), geometry(asked.shape()));
    }

    private static ReleaseAreaFeature.Geometry geometry(Geometry shape) {
        double[][][][] polygons = new double[shape.getNumGeometries()][][][];
        for (int i = 0; i < polygons.length; i++) {
            Polygon polygon = (Polygon) shape.getGeometryN(i);
            polygons[i] = new double[1 + polygon.getNumInteriorRing()][][];
            polygons[i][0] = ring(polygon.getExteriorRing(), true);
            for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
                polygons[i][1 + hole] = ring(polygon.getInteriorRingN(hole), false);
            }
        }
        return new ReleaseAreaFeature.Geometry("MultiPolygon", polygons);
    }

    /** Exterior rings counterclockwise and interior ones clockwise (RFC 7946, section 3.1.6). */
    private static double[][] ring(LineString ring, boolean exterior) {
        Coordinate[] corners = ring.getCoordinates();
        boolean counterclockwise = Orientation.isCCW(corners);
        double[][] positions = new double[corners.length][];
        for (int i = 0; i < corners.length; i++) {
            Coordinate corner = corners[counterclockwise == exterior ? i : corners.length - 1 - i];
            positions[i] =
                    new double[] {Math.round(corner.x * DEGREE) / DEGREE, Math.round(corner.y * DEGREE) / DEGREE};
        }
        return positions;
    }
}
