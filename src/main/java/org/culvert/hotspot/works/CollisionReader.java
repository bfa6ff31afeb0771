package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.UUID;
import org.culvert.call.CollisionReport;
import org.culvert.hotspot.Evidence.LeftOut;
import org.culvert.hotspot.PeriodReports;
import org.culvert.hotspot.RoadDoubt;
import org.culvert.hotspot.RunSettings;
import org.culvert.platform.RegionService;
import org.culvert.road.CurrentRoads;
import org.jspecify.annotations.Nullable;

/** Reads the collisions of a period with their days and places, each incident once. */
@ApplicationScoped
class CollisionReader {
    /** A place less sure than this says little of a stretch; twice the usual reach of a run. */
    static final double LARGEST_UNCERTAINTY_METRES = 1000;

    private static final Duration LONGEST_DOUBT = Duration.ofDays(31);

    private final PeriodReports incidents;
    private final RegionService regions;

    CollisionReader(PeriodReports incidents, RegionService regions) {
        this.incidents = incidents;
        this.regions = regions;
    }

    /**
     * @param from first day
     * @param to last day, included
     * @param taxonGroup key of the group that is asked about, or null for all animals
     */
    Collisions read(
            LocalDate from, LocalDate to, RunSettings.Season season, @Nullable String taxonGroup, CurrentRoads roads) {
        ZoneId zone = regions.zone();
        var reading = new Reading(season, taxonGroup, zone, roads);
        List<CollisionReport> reports = incidents.list(
                from.atStartOfDay(zone).toInstant(),
                to.plusDays(1).atStartOfDay(zone).toInstant());
        reports.forEach(reading::take);
        return reading.collisions(reports.size());
    }

    private static final class Reading {
        private final RunSettings.Season season;
        private final @Nullable String taxonGroup;
        private final ZoneId zone;
        private final CurrentRoads roads;
        private final RoadDoubt doubt;
        private final Map<LeftOut, Integer> leftOut = new EnumMap<>(LeftOut.class);
        private final List<Collisions.Placed> placed = new ArrayList<>();
        private final TreeSet<LocalDate> reportDays = new TreeSet<>();
        private int timedByReport;
        private int placedByJunction;

        Reading(RunSettings.Season season, @Nullable String taxonGroup, ZoneId zone, CurrentRoads roads) {
            this.season = season;
            this.taxonGroup = taxonGroup;
            this.zone = zone;
            this.roads = roads;
            this.doubt = new RoadDoubt(roads.network().graph(), roads::findLink);
            for (LeftOut reason : LeftOut.WITHOUT_SURVEYS) {
                leftOut.put(reason, 0);
            }
        }

        void take(CollisionReport report) {
            reportDays.add(recorded(report));
            LeftOut reason = place(report);
            if (reason != null) {
                leftOut.merge(reason, 1, Integer::sum);
            }
        }

        /** Counts it, or says why not. */
        private @Nullable LeftOut place(CollisionReport report) {
            if (report.joined()) {
                return LeftOut.JOINED;
            }
            if (!report.collision()) {
                return LeftOut.NOT_A_COLLISION;
            }
            LocalDate day = recorded(report);
            if (isDoubtful(report, day)) {
                return LeftOut.TIME_UNKNOWN;
            }
            if (!season.has(day)) {
                return LeftOut.OUT_OF_SEASON;
            }
            if (!report.hasPlace()) {
                return LeftOut.NO_PLACE;
            }
            UUID linkId = report.roadLinkId();
            if (linkId == null) {
                return LeftOut.NO_ROAD;
            }
            OptionalInt link = roads.findLink(linkId);
            if (link.isEmpty()) {
                return LeftOut.OLDER_ROADS;
            }
            double apart = doubt.metresBetweenRoads(report);
            if (Double.isInfinite(apart)) {
                return LeftOut.ROAD_IN_DOUBT;
            }
            double uncertainty = uncertaintyMetres(report, apart);
            if (uncertainty > LARGEST_UNCERTAINTY_METRES) {
                return LeftOut.PLACE_UNSURE;
            }
            boolean ofGroup = taxonGroup == null || report.taxonGroups().contains(taxonGroup);
            placed.add(new Collisions.Placed(
                    day,
                    link.getAsInt(),
                    Objects.requireNonNullElse(report.metresAlongLink(), 0.0),
                    uncertainty,
                    report.taxonGroups(),
                    ofGroup));
            if (!ofGroup) {
                return report.taxonGroups().isEmpty() ? LeftOut.KIND_UNKNOWN : LeftOut.OTHER_KIND;
            }
            timedByReport += report.happenedAt() == null ? 1 : 0;
            placedByJunction += report.roadIsInDoubt() ? 1 : 0;
            return null;
        }

        private LocalDate recorded(CollisionReport report) {
            Instant happened = report.happenedAt();
            return (happened == null ? report.reportedAt() : happened)
                    .atZone(zone)
                    .toLocalDate();
        }

        /** Whether it may as well have been in another year, or out of the season. */
        private boolean isDoubtful(CollisionReport report, LocalDate day) {
            Instant notBefore = report.happenedNotBefore();
            if (report.happenedAt() != null || notBefore == null) {
                return false;
            }
            LocalDate earliest = notBefore.atZone(zone).toLocalDate();
            return Duration.between(notBefore, report.reportedAt()).compareTo(LONGEST_DOUBT) > 0
                    || earliest.getYear() != day.getYear()
                    || season.has(earliest) != season.has(day);
        }

        /** A chainage that was said may lie half a step to either side; a place by a junction as far as the other roads. */
        private static double uncertaintyMetres(CollisionReport report, double apart) {
            Double step = report.chainagePrecisionMetres();
            Double radius = report.coordinateUncertaintyInMeters();
            if (step != null) {
                return Math.max(step / 2, apart);
            }
            return radius == null ? (apart > 0 ? apart : Double.NaN) : Math.max(radius, apart);
        }

        Collisions collisions(int incidentsInPeriod) {
            return new Collisions(
                    placed,
                    reportDays,
                    leftOut,
                    new Collisions.Tally(incidentsInPeriod, timedByReport, placedByJunction),
                    null);
        }
    }
}
