package org.culvert.hotspot;

import java.util.List;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.IntPredicate;
import org.culvert.hotspot.beside.Beside;
import org.culvert.hotspot.beside.IsItLasting;
import org.culvert.hotspot.beside.IsItNew;
import org.culvert.hotspot.beside.RestsOn;
import org.culvert.hotspot.beside.RoadScene;
import org.culvert.hotspot.beside.SecondaryViews;
import org.culvert.hotspot.beside.Sensitivity;
import org.culvert.hotspot.stats.Chance;
import org.culvert.hotspot.stats.Findings;
import org.culvert.hotspot.stats.Hotspot;
import org.culvert.hotspot.stats.HotspotSearch;
import org.culvert.hotspot.stats.RecordDoubts;
import org.culvert.hotspot.stats.Settings;
import org.culvert.platform.ConflictException;

/** Computes what a run says beside its hotspots. */
final class BesideRun {
    private final RunSettings settings;
    private final EvidenceRoads roads;
    private final Evidence evidence;
    private final RecordDoubts doubts;
    private final Function<Evidence, Chance> chances;
    private final int threads;
    private final IntConsumer notes;

    /** @param chances the kind of chance asked for, of any part of the evidence */
    BesideRun(
            RunSettings settings,
            EvidenceRoads roads,
            Evidence evidence,
            RecordDoubts doubts,
            Function<Evidence, Chance> chances,
            int threads,
            IntConsumer notes) {
        this.settings = settings;
        this.roads = roads;
        this.evidence = evidence;
        this.doubts = doubts;
        this.chances = chances;
        this.threads = threads;
        this.notes = notes;
    }

    /** The hotspots of the owner asked for, or all; what is significant is settled on the whole network. */
    static List<Hotspot> hotspots(Findings findings, RunSettings settings, EvidenceRoads roads) {
        return findings.hotspotsOn(ofOwner(settings, roads));
    }

    private static IntPredicate ofOwner(RunSettings settings, EvidenceRoads roads) {
        String owner = settings.owner();
        return owner == null
                ? link -> true
                : link -> owner.equals(roads.network().attributes(link).owner());
    }

    Beside compute(List<Hotspot> hotspots) {
        var scene = new RoadScene(roads.network());
        return new Beside(
                IsItNew.ask(
                        scene,
                        evidence.datedGroup(),
                        settings.periodFrom(),
                        settings.periodTo(),
                        settings.reachMetres(),
                        settings.minimumIncidents(),
                        settings.simulations(),
                        settings.seed(),
                        ofOwner(settings, roads),
                        threads),
                settings.asks(AlsoAsk.PERSISTENCE) ? lasting(hotspots) : null,
                settings.asks(AlsoAsk.SENSITIVITY) ? sensitivity(hotspots) : null,
                settings.asks(AlsoAsk.SECONDARY)
                        ? SecondaryViews.of(
                                scene,
                                roads.chainage(),
                                evidence.datedGroup(),
                                settings.reachMetres(),
                                settings.minimumIncidents(),
                                settings.seed(),
                                threads)
                        : null,
                RestsOn.of(
                        evidence.datedGroup(),
                        evidence.datedReports(),
                        evidence.incidentsByYear(),
                        settings.periodFrom(),
                        settings.periodTo(),
                        doubts));
    }

    private IsItLasting lasting(List<Hotspot> hotspots) {
        int sets = settings.fewerSimulations();
        return IsItLasting.ask(hotspots, settings.periodFrom(), settings.periodTo(), sets, (first, last) -> {
            Evidence part = evidence.within(first, last);
            int collisions = part.datedGroup().size();
            if (collisions < settings.minimumIncidents()) {
                return new IsItLasting.Found(collisions, List.of(), "too few collisions to name a stretch");
            }
            try {
                return new IsItLasting.Found(collisions, search(part, settings.search(1, sets)), null);
            } catch (ConflictException nothingToCompareWith) {
                return new IsItLasting.Found(collisions, List.of(), String.valueOf(nothingToCompareWith.getMessage()));
            }
        });
    }

    private Sensitivity sensitivity(List<Hotspot> hotspots) {
        int sets = settings.fewerSimulations();
        Double sigma = settings.sigmaMetres();
        return Sensitivity.ask(
                hotspots,
                sigma == null ? settings.reachMetres() : sigma,
                sets,
                times -> search(evidence, settings.search(times, sets)));
    }

    private List<Hotspot> search(Evidence part, Settings search) {
        Findings findings = new HotspotSearch(roads.network().graph(), roads.chainage(), roads.carriageways(), search)
                .search(part.group(), chances.apply(part), threads, notes);
        return hotspots(findings, settings, roads);
    }
}
