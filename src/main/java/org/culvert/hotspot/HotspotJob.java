package org.culvert.hotspot;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.micrometer.core.annotation.Timed;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.IntConsumer;
import org.culvert.hotspot.beside.Beside;
import org.culvert.hotspot.beside.DatedEvent;
import org.culvert.hotspot.stats.Chance;
import org.culvert.hotspot.stats.Findings;
import org.culvert.hotspot.stats.Hotspot;
import org.culvert.hotspot.stats.HotspotSearch;
import org.culvert.hotspot.stats.RecordDoubts;
import org.culvert.hotspot.stats.RoadSpan;
import org.culvert.platform.ConflictException;
import org.culvert.platform.CulvertException;
import org.culvert.platform.Job;
import org.culvert.platform.sight.SightModule;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadNetworkService;
import org.culvert.road.RoadNetworkView;
import org.culvert.road.RoadService;
import org.culvert.road.network.LinkTraffic;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.traffic.PeriodTraffic;
import org.culvert.road.traffic.TrafficReader;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Computes a run from its beginning, and keeps what comes out once. */
@ApplicationScoped
class HotspotJob implements Job {
    static final String NAME = "hotspot-run";

    private static final Logger LOG = Logger.getLogger(HotspotJob.class);
    private static final double PATCH_METRES = 1000;
    private static final Duration BETWEEN_NOTES = Duration.ofMillis(500);

    private final HotspotRunService.Runs runs;
    private final HotspotRunService.Progresses progresses;
    private final HotspotRunService.Results results;
    private final HotspotRunService.Cancellations cancellations;
    private final EvidenceReader evidenceReader;
    private final TrafficReader trafficReader;
    private final RoadService roads;
    private final RoadNetworkService networks;
    private final ObjectMapper mapper;
    private final Clock clock;

    HotspotJob(
            HotspotRunService.Runs runs,
            HotspotRunService.Progresses progresses,
            HotspotRunService.Results results,
            HotspotRunService.Cancellations cancellations,
            EvidenceReader evidenceReader,
            TrafficReader trafficReader,
            RoadService roads,
            RoadNetworkService networks,
            ObjectMapper mapper,
            Clock clock) {
        this.runs = runs;
        this.progresses = progresses;
        this.results = results;
        this.cancellations = cancellations;
        this.evidenceReader = evidenceReader;
        this.trafficReader = trafficReader;
        this.roads = roads;
        this.networks = networks;
        this.mapper = mapper;
        this.clock = clock;
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    @Timed("culvert.hotspot.run")
    public void run(UUID id) {
        RunSettings settings = begin(id);
        if (settings == null) {
            return;
        }
        try {
            keep(compute(id, settings));
        } catch (CancellationException e) {
            // Called off, or else the server is being stopped, and another will begin it anew
            if (!QuarkusTransaction.requiringNew().call(() -> isCancelled(id))) {
                throw e;
            }
            // The interruption was for this run alone
            Thread.interrupted();
            LOG.infof("Hotspot run %s was called off", id);
        } catch (CulvertException e) {
            // Nothing that trying again would mend, such as records that do not fit the question.
            LOG.infof("Hotspot run %s cannot be computed: %s", id, e.getMessage());
            gaveUp(id, String.valueOf(e.getMessage()));
        }
    }

    @Override
    public void gaveUp(UUID id, String reason) {
        QuarkusTransaction.requiringNew().run(() -> {
            RunProgress progress = progresses.findById(id);
            if (progress != null) {
                progress.fail(clock.instant(), reason);
            }
        });
    }

    /** What the run asks for, or null where it is done already. */
    private @Nullable RunSettings begin(UUID id) {
        return QuarkusTransaction.requiringNew().call(() -> {
            HotspotRun run = runs.findById(id);
            if (run == null || results.findById(id) != null || isCancelled(id)) {
                return null;
            }
            RunProgress before = progresses.findById(id);
            if (before == null) {
                progresses.persist(new RunProgress(id, clock.instant()));
            } else {
                before.beginAgain(clock.instant());
            }
            return run.settings;
        });
    }

    private RunResult compute(UUID id, RunSettings settings) {
        CurrentRoads current = roads.current();
        RoadNetwork network = current.network();
        Read read = QuarkusTransaction.requiringNew().call(() -> read(settings, current));
        Evidence evidence = read.evidence();
        PeriodTraffic traffic = read.traffic();
        var evidenceRoads =
                new EvidenceRoads(network, traffic == null ? LinkTraffic.ofRoadsFile(network) : traffic.links());
        Chance chance = chance(settings, evidence, evidenceRoads);
        RecordDoubts doubts = DatedEvent.doubts(evidenceRoads.chainage(), evidence.datedGroup());
        int threads = Runtime.getRuntime().availableProcessors();
        Findings findings = new HotspotSearch(
                        network.graph(), evidenceRoads.chainage(), evidenceRoads.carriageways(), settings.search())
                .search(evidence.group(), chance, threads, notes(id));
        List<Hotspot> hotspots = BesideRun.hotspots(findings, settings, evidenceRoads);
        Beside beside = new BesideRun(
                        settings,
                        evidenceRoads,
                        evidence,
                        doubts,
                        part -> chance(settings, part, evidenceRoads),
                        threads,
                        notes(id))
                .compute(hotspots);
        HotspotReport report = new ReportMaker(network, settings)
                .report(
                        current.number(),
                        networkSha256(current.number()),
                        evidence,
                        traffic == null ? null : traffic.used(),
                        chance,
                        doubts,
                        hotspots,
                        beside);
        String document = write(new CurveMaker(findings, evidenceRoads.chainage(), settings).addTo(report, hotspots));
        return new RunResult(
                id,
                clock.instant(),
                HotspotSearch.VERSION,
                current.number(),
                evidence.sha256(),
                document,
                sha256(document));
    }

    /** What a run takes from the records at one instant. */
    private record Read(Evidence evidence, @Nullable PeriodTraffic traffic) {}

    /** The traffic of the run's years is read where its kind of chance asks for it, and is one of its inputs then. */
    private Read read(RunSettings settings, CurrentRoads current) {
        Evidence evidence = evidenceReader.read(settings, current);
        if (!ChanceKind.usesTraffic(settings.chance())) {
            return new Read(evidence, null);
        }
        PeriodTraffic traffic = trafficReader.find(
                current, settings.periodFrom().getYear(), settings.periodTo().getYear());
        return new Read(evidence.on(sha256(evidence.sha256() + "\ntraffic " + traffic.sha256())), traffic);
    }

    private static Chance chance(RunSettings settings, Evidence evidence, EvidenceRoads roads) {
        ChanceKind kind = ChanceKind.find(settings.chance())
                .orElseThrow(() -> new IllegalStateException("no kind of chance is called " + settings.chance()));
        return switch (kind) {
            case PER_ALL_REPORTS -> perAllReports(evidence);
            case PER_OTHER_SEASONS -> perOtherSeasons(evidence);
            case PER_TRAFFIC -> roads.perTrafficAndClass();
            case PER_TRAFFIC_IN_PATCHES -> new Chance.Patchy(roads.perTrafficAndClass(), PATCH_METRES);
            case PER_SURVEY_EFFORT -> perSurveyEffort(settings, evidence);
            case PER_KILOMETRE -> new Chance.PerKilometre();
            case PER_KILOMETRE_IN_PATCHES -> new Chance.Patchy(new Chance.PerKilometre(), PATCH_METRES);
        };
    }

    private static Chance perSurveyEffort(RunSettings settings, Evidence evidence) {
        List<List<RoadSpan>> passes = evidence.surveys().passes();
        int notPlaced = evidence.surveys().notPlaced();
        if (passes.isEmpty()) {
            throw new ConflictException("No survey of that period and season looked for "
                    + (settings.taxonGroup() == null ? "all animals" : "this group")
                    + (notPlaced == 0
                            ? ""
                            : " on the current roads, which have no place for " + notPlaced + " that did")
                    + ". Enter those that were made, or ask with the chance " + ChanceKind.PER_TRAFFIC.key() + ".");
        }
        if (evidence.group().isEmpty()) {
            throw new ConflictException("No collision of that period and season lies on ground that was surveyed on its"
                    + " day (surveys: " + passes.size() + "): too few to say anything.");
        }
        return new Chance.PerSurveyEffort(passes, notPlaced);
    }

    private static Chance perOtherSeasons(Evidence evidence) {
        if (!evidence.group().isEmpty()
                && evidence.group().size() == evidence.wholeYear().size()) {
            throw new ConflictException("All " + evidence.wholeYear().size()
                    + " collisions of that period are of this season: there is nothing to compare it with.");
        }
        return new Chance.PerOtherSeasons(evidence.wholeYear());
    }

    private static Chance perAllReports(Evidence evidence) {
        if (!evidence.group().isEmpty()
                && evidence.group().size() == evidence.reports().size()) {
            throw new ConflictException(
                    "All " + evidence.reports().size() + " collisions of that period and season are of"
                            + " this group: there is nothing to compare it with. Ask with the chance "
                            + ChanceKind.PER_TRAFFIC.key() + ".");
        }
        return new Chance.PerAllReports(evidence.reports());
    }

    private String networkSha256(int number) {
        return networks.listNetworks().stream()
                .filter(network -> network.number() == number)
                .map(RoadNetworkView::sha256)
                .findFirst()
                .orElse("");
    }

    private String write(HotspotReport report) {
        try {
            return mapper.writer().withAttribute(SightModule.KEPT, true).writeValueAsString(report);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a report cannot be written", e);
        }
    }

    /** Two nodes may have computed the same run; the first to finish is kept, and the other has found the same. */
    private void keep(RunResult result) {
        QuarkusTransaction.requiringNew().run(() -> {
            if (results.findById(result.runId) == null && !isCancelled(result.runId)) {
                results.persist(result);
            }
        });
    }

    private boolean isCancelled(UUID id) {
        return cancellations.count("runId", id) > 0;
    }

    /** Notes now and then how far it has come, and stops the search where it was called off meanwhile. */
    private IntConsumer notes(UUID id) {
        var last = new AtomicReference<>(clock.instant());
        Thread searching = Thread.currentThread();
        return done -> {
            Instant now = clock.instant();
            Instant before = last.get();
            if (Duration.between(before, now).compareTo(BETWEEN_NOTES) >= 0 && last.compareAndSet(before, now)) {
                boolean cancelled = QuarkusTransaction.requiringNew().call(() -> {
                    progresses.update("simulationsDone = ?1 where runId = ?2 and simulationsDone < ?1", done, id);
                    return isCancelled(id);
                });
                if (cancelled) {
                    searching.interrupt();
                }
            }
        };
    }

    private static String sha256(String document) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(document.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
    }
}
