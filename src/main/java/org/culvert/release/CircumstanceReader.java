package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.animal.CaseView;
import org.culvert.geo.Position;
import org.culvert.hotspot.KnownHotspots;
import org.culvert.platform.RegionService;
import org.culvert.release.approvals.ApprovalService;
import org.culvert.release.facts.SpeciesFactService;
import org.culvert.release.fitness.FitnessService;
import org.culvert.release.holds.HoldService;
import org.culvert.release.land.LandService;
import org.culvert.release.rules.Approval;
import org.culvert.release.rules.Barrier;
import org.culvert.release.rules.Circumstances;
import org.culvert.release.rules.Conditions;
import org.culvert.release.rules.FitnessCheck;
import org.culvert.release.rules.Hold;
import org.culvert.release.rules.HotspotNear;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.LandSaid;
import org.culvert.release.rules.LandsAround;
import org.culvert.release.rules.SpeciesFact;
import org.culvert.release.rules.Subject;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.road.RoadService;
import org.culvert.road.network.RoadCrossings;
import org.culvert.road.network.RoadNetwork;
import org.jspecify.annotations.Nullable;

/** Brings together what else is known of an animal and a site: the other rooms' and this room's own records. */
@ApplicationScoped
class CircumstanceReader {
    /** What of the maps lies within this distance of a site or an origin is looked at: common practice, no source. */
    private static final double AROUND_METRES = 20_000;

    /** Where no movement range of a kind is known, hotspots are looked for this far from a site: common practice, no source. */
    private static final double HOTSPOTS_WITHIN_METRES = 2_000;

    private final HoldService holds;
    private final FitnessService fitness;
    private final SpeciesFactService facts;
    private final ApprovalService approvals;
    private final LandService lands;
    private final RoadService roads;
    private final KnownHotspots hotspots;
    private final RegionService region;
    private final Clock clock;

    CircumstanceReader(
            HoldService holds,
            FitnessService fitness,
            SpeciesFactService facts,
            ApprovalService approvals,
            LandService lands,
            RoadService roads,
            KnownHotspots hotspots,
            RegionService region,
            Clock clock) {
        this.holds = holds;
        this.fitness = fitness;
        this.facts = facts;
        this.approvals = approvals;
        this.lands = lands;
        this.roads = roads;
        this.hotspots = hotspots;
        this.region = region;
        this.clock = clock;
    }

    /** What is known of a case, before a place is named. */
    OfCase of(CaseView told, Subject subject, LocalDate day) {
        return new OfCase(told, subject, day);
    }

    /** What is known of one case on one day; reads what many places share once. */
    final class OfCase {
        private final Subject subject;
        private final LocalDate day;
        private final List<Hold> held;
        private final @Nullable FitnessCheck signed;
        private final List<SpeciesFact> published;
        private final List<Approval> ofCase;
        private final int daysInCare;
        private final KnownHotspots.@Nullable OfGroup named;
        private final @Nullable RoadNetwork network;
        private final @Nullable RoadCrossings crossings;

        private OfCase(CaseView told, Subject subject, LocalDate day) {
            this.subject = subject;
            this.day = day;
            this.held = holds.activeHolds(told.id(), clock.instant());
            this.signed = fitness.latest(told.id()).orElse(null);
            this.published = facts.factsOf(subject.scientificName(), day);
            this.ofCase = approvals.forCase(told.id(), day);
            this.daysInCare = (int)
                    ChronoUnit.DAYS.between(told.foundAt().atZone(region.zone()).toLocalDate(), day);
            this.named = hotspots.find(subject.taxonGroup(), day).orElse(null);
            this.network = roads.findCurrent().map(current -> current.network()).orElse(null);
            this.crossings = network == null ? null : new RoadCrossings(network);
        }

        List<SpeciesFact> facts() {
            return published;
        }

        /** How far an individual of its kind goes, by what is published; infinite where nothing is. */
        double movementRangeMetres() {
            return SpeciesFact.movementRangeMetres(published).orElse(Double.POSITIVE_INFINITY);
        }

        /** The land of the maps within some distance of the origin. */
        List<Land> landsWithin(double metres) {
            UncertainPosition origin = subject.origin().at();
            return origin == null ? List.of() : lands.around(origin.position(), metres, day);
        }

        /** All that is known of one place. */
        Circumstances at(Target target, Conditions conditions) {
            UncertainPosition site = target.at();
            UncertainPosition origin = subject.origin().at();
            List<Land> near = new ArrayList<>(lands.around(site.position(), AROUND_METRES, day));
            if (origin != null) {
                for (Land land : lands.around(origin.position(), origin.uncertaintyMetres(), day)) {
                    if (near.stream().noneMatch(land::equals)) {
                        near.add(land);
                    }
                }
            }
            List<Approval> ofSite = target.siteId() == null ? List.of() : approvals.forSite(target.siteId(), day);
            return at(target, conditions, new LandsAround(near, site.position()), ofSite);
        }

        /** The land of the maps around an origin that is known and around all places within some distance of it. */
        LandsAround landsAroundAll(double metres) {
            UncertainPosition origin = subject.origin().at();
            if (origin == null) {
                throw new IllegalStateException("nobody knows the origin");
            }
            return new LandsAround(landsWithin(metres + AROUND_METRES), origin.position());
        }

        /** What stands of the approvals of all sites, by site. */
        Map<UUID, List<Approval>> approvalsOfSites() {
            return approvals.ofAllSites(day);
        }

        /** The same as of one place, with what many places share read before. */
        Circumstances at(Target target, Conditions conditions, LandsAround laid, List<Approval> ofSite) {
            UncertainPosition origin = subject.origin().at();
            List<LandSaid> said = laid.said(origin, target.at());
            List<Approval> given =
                    Stream.concat(ofCase.stream(), ofSite.stream()).toList();
            return new Circumstances(
                    given,
                    held,
                    signed,
                    published,
                    said,
                    barrier(origin, target.at().position()),
                    hotspotsNear(target.at()),
                    daysInCare,
                    conditions);
        }

        private @Nullable Barrier barrier(@Nullable UncertainPosition origin, Position site) {
            if (network == null || crossings == null || origin == null) {
                return null;
            }
            return Barrier.between(network, crossings, origin.position(), site, origin.uncertaintyMetres());
        }

        private @Nullable List<HotspotNear> hotspotsNear(UncertainPosition site) {
            if (named == null) {
                return null;
            }
            double range = movementRangeMetres();
            double within = (Double.isInfinite(range) ? HOTSPOTS_WITHIN_METRES : range) + site.uncertaintyMetres();
            return named.near(site.position(), within).stream()
                    .map(near -> new HotspotNear(
                            near.runId(),
                            near.rank(),
                            near.road(),
                            near.fromChainageMetres(),
                            near.toChainageMetres(),
                            near.season(),
                            near.incidents(),
                            near.claim(),
                            near.metres()))
                    .toList();
        }
    }
}
