package org.culvert.hotspot;

import io.quarkus.hibernate.orm.panache.Panache;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.Position;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** The hotspots that runs have named for a group, for whoever lets an animal of that group go. */
@ApplicationScoped
public class KnownHotspots {
    /** A season is coming if one of its days is among these: what is let go is about for a while. */
    private static final int COMING_DAYS = 92;

    /** More runs are not looked through: newer ones answer for older. */
    private static final int MOST_RUNS = 500;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    /**
     * A hotspot near a position.
     *
     * @param claim the error rate and the kind of chance, in the run's own sentence
     * @param metres from the position to its nearest point
     */
    public record Near(
            UUID runId,
            int rank,
            String road,
            double fromChainageMetres,
            double toChainageMetres,
            String season,
            int incidents,
            String claim,
            double metres) {}

    /** Those of one group in the coming seasons. */
    public static final class OfGroup {
        private record Named(UUID runId, String season, String claim, HotspotReport.Stretch stretch) {}

        private final List<Named> named = new ArrayList<>();

        /** Nearest first. */
        public List<Near> near(Position position, double withinMetres) {
            LocalPlane plane = LocalPlane.around(position);
            List<Near> near = new ArrayList<>();
            for (Named one : named) {
                double metres = metres(one.stretch(), plane);
                if (metres <= withinMetres) {
                    near.add(new Near(
                            one.runId(),
                            one.stretch().rank(),
                            one.stretch().road(),
                            one.stretch().fromChainageMetres(),
                            one.stretch().toChainageMetres(),
                            one.season(),
                            one.stretch().incidents(),
                            one.claim(),
                            metres));
                }
            }
            near.sort(Comparator.comparingDouble(Near::metres)
                    .thenComparing(Near::runId)
                    .thenComparingInt(Near::rank));
            return near;
        }

        private static double metres(HotspotReport.Stretch stretch, LocalPlane plane) {
            double least = Double.POSITIVE_INFINITY;
            for (double[][] line : stretch.lines()) {
                Coordinate[] coordinates = new Coordinate[line.length];
                for (int i = 0; i < line.length; i++) {
                    double[] xy = plane.forward(line[i][1], line[i][0]);
                    coordinates[i] = new Coordinate(xy[0], xy[1]);
                }
                least = Math.min(
                        least,
                        coordinates.length == 1
                                ? coordinates[0].distance(new Coordinate(0, 0))
                                : FACTORY.createLineString(coordinates)
                                        .distance(FACTORY.createPoint(new Coordinate(0, 0))));
            }
            return least;
        }
    }

    private final HotspotRunService runs;

    KnownHotspots(HotspotRunService runs) {
        this.runs = runs;
    }

    /**
     * From the newest finished run on each season that has a day soon after one; empty where there is none, which is not to say
     * that there are no hotspots.
     *
     * @param taxonGroup key of the group
     */
    @Transactional
    public Optional<OfGroup> find(String taxonGroup, LocalDate day) {
        var known = new OfGroup();
        Set<RunSettings.Season> seen = new HashSet<>();
        List<HotspotRun> finished = Panache.getEntityManager()
                .createQuery(
                        "select r from HotspotRun r where r.id in (select x.runId from RunResult x) order by r.id desc",
                        HotspotRun.class)
                .setMaxResults(MOST_RUNS)
                .getResultList();
        for (HotspotRun run : finished) {
            RunSettings settings = run.settings;
            if (taxonGroup.equals(settings.taxonGroup())
                    && settings.owner() == null
                    && isComing(settings.season(), day)
                    && seen.add(settings.season())) {
                HotspotReport report = runs.getReport(run.id());
                for (HotspotReport.Stretch stretch : report.hotspots()) {
                    known.named.add(new OfGroup.Named(
                            run.id(),
                            settings.season().words(),
                            report.errorRate().sentence(),
                            stretch));
                }
            }
        }
        return seen.isEmpty() ? Optional.empty() : Optional.of(known);
    }

    private static boolean isComing(RunSettings.Season season, LocalDate day) {
        for (int ahead = 0; ahead < COMING_DAYS; ahead++) {
            if (season.has(day.plusDays(ahead))) {
                return true;
            }
        }
        return false;
    }
}
