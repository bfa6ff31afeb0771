package org.culvert.release.rules.area;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.PlaneShapes;
import org.culvert.release.rules.Barrier;
import org.culvert.release.rules.Separation;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.release.rules.Verdict;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * Known sites in the order in which they are worth looking at: what the tests say first, then whether it is fit for the kind of
 * animal, then whether it lies in the area, then how great a barrier the roads between are, then how near it is.
 */
public final class SiteRanking {
    private SiteRanking() {}

    /**
     * A site to be ranked.
     *
     * @param key its identifier: of two that are alike in everything the lesser goes first
     * @param fitForKind whether it is entered as fit for the animal's group; unknown counts as not
     * @param verdict what all tests come to there
     * @param barrier the roads between it and the origin
     */
    public record Candidate(
            String key, String name, UncertainPosition at, boolean fitForKind, Verdict verdict, Barrier barrier) {}

    /**
     * A site with its place in the order.
     *
     * @param inArea whether all of it is in the area, none of it, or neither
     */
    public record Ranked(int rank, Candidate candidate, Separation separation, Verdict inArea) {}

    /** @return all candidates, whatever order they came in */
    public static List<Ranked> rank(UncertainPosition origin, ReleaseArea area, List<Candidate> candidates) {
        LocalPlane plane = LocalPlane.around(origin.position());
        Inside inside = new Inside(PlaneShapes.toPlane(area.shape(), plane));
        record Weighed(Ranked site, Barrier.Weight weight) {}
        List<Weighed> unordered = new ArrayList<>();
        for (Candidate candidate : candidates) {
            var site = new Ranked(0, candidate, origin.to(candidate.at()), inside.says(candidate.at(), plane));
            unordered.add(new Weighed(site, candidate.barrier().weight()));
        }
        unordered.sort(Comparator.<Weighed>comparingInt(
                        one -> order(one.site.candidate().verdict()))
                .thenComparingInt(one -> one.site.candidate().fitForKind() ? 0 : 1)
                .thenComparingInt(one -> order(one.site.inArea()))
                .thenComparing(Weighed::weight)
                .thenComparingDouble(one -> one.site.separation().distanceMetres())
                .thenComparing(one -> one.site.candidate().key()));
        List<Ranked> ranked = new ArrayList<>();
        for (Weighed one : unordered) {
            ranked.add(new Ranked(ranked.size() + 1, one.site.candidate(), one.site.separation(), one.site.inArea()));
        }
        return List.copyOf(ranked);
    }

    private static int order(Verdict verdict) {
        return switch (verdict) {
            case pass -> 0;
            case cantTell -> 1;
            case fail -> 2;
        };
    }

    /** Whether a circle lies in an area. */
    private static final class Inside {
        private static final GeometryFactory FACTORY = new GeometryFactory();

        private final Geometry area;
        private final @Nullable IndexedPointInAreaLocator locator;
        private final @Nullable IndexedFacetDistance border;

        Inside(Geometry area) {
            this.area = area;
            this.locator = area.isEmpty() ? null : new IndexedPointInAreaLocator(area);
            this.border = area.isEmpty() ? null : new IndexedFacetDistance(area.getBoundary());
        }

        Verdict says(UncertainPosition place, LocalPlane plane) {
            if (locator == null || border == null || !plane.covers(place.position())) {
                return Verdict.fail;
            }
            double[] xy = plane.forward(place.position());
            var point = new Coordinate(xy[0], xy[1]);
            boolean centreIn = locator.locate(point) != Location.EXTERIOR;
            boolean near = area.getEnvelopeInternal().distance(new org.locationtech.jts.geom.Envelope(point))
                    <= place.uncertaintyMetres();
            if (!centreIn && !near) {
                return Verdict.fail;
            }
            boolean meetsBorder = place.uncertaintyMetres() > 0
                    && border.isWithinDistance(FACTORY.createPoint(point), place.uncertaintyMetres());
            if (meetsBorder) {
                return Verdict.cantTell;
            }
            return centreIn ? Verdict.pass : Verdict.fail;
        }
    }
}
