package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.culvert.hotspot.SeasonWindowService;
import org.culvert.platform.Actor;
import org.culvert.platform.Region;
import org.culvert.platform.RegionService;
import org.culvert.platform.account.AccountService;
import org.culvert.road.AttributeNames;
import org.culvert.road.RoadNetworkService;
import org.culvert.road.RoadNetworkView;

/** Loads the invented region through the services that everybody's entries go through, part by part. */
@ApplicationScoped
class DemoRegionLoader {
    private static final int BATCH = 250;
    private static final String ALL_OF_IT = "all of it";
    private static final Duration SAY_SOMETHING_EVERY = Duration.ofSeconds(4);

    private static final AttributeNames ROAD_ATTRIBUTES = new AttributeNames(
            "name",
            null,
            "class",
            "speedLimitKmh",
            "km/h",
            "aadt",
            "owner",
            "carriageway",
            "level",
            "bridge",
            null,
            "startMeasureMetres",
            "m",
            null,
            null);

    private final LoadedParts parts;
    private final AccountService accounts;
    private final RegionService regions;
    private final RosterLoader roster;
    private final CarerLoader carers;
    private final RoadNetworkService roads;
    private final ReleaseLoader release;
    private final SeasonWindowService seasons;
    private final SurveyLoader surveys;
    private final WorksLoader works;
    private final CallLoader calls;
    private final HealthStory health;
    private final TodayStory today;
    private final EntityManager entities;
    private final Clock clock;

    DemoRegionLoader(
            LoadedParts parts,
            AccountService accounts,
            RegionService regions,
            RosterLoader roster,
            CarerLoader carers,
            RoadNetworkService roads,
            ReleaseLoader release,
            SeasonWindowService seasons,
            SurveyLoader surveys,
            WorksLoader works,
            CallLoader calls,
            HealthStory health,
            TodayStory today,
            EntityManager entities,
            Clock clock) {
        this.parts = parts;
        this.accounts = accounts;
        this.regions = regions;
        this.roster = roster;
        this.carers = carers;
        this.roads = roads;
        this.release = release;
        this.seasons = seasons;
        this.surveys = surveys;
        this.works = works;
        this.calls = calls;
        this.health = health;
        this.today = today;
        this.entities = entities;
        this.clock = clock;
    }

    /**
     * Loads what is missing.
     *
     * @param say hears every few seconds how far it is
     * @throws IllegalStateException when the database holds what this did not make
     */
    void load(DemoRegion region, Consumer<String> say) {
        requireOwnOrEmpty(region);
        Map<String, String> files = RegionFiles.of(region);
        Settings settings = region.settings();
        parts.once("region", settings.name(), importId -> settle(region));
        parts.once("animals", files.getOrDefault("taxa.csv", ""), importId -> roster.loadAnimals(region));
        parts.once("people", files.getOrDefault("members.csv", ""), importId -> roster.loadPeople(region));
        parts.once("carers", files.getOrDefault("members.csv", ""), importId -> carers.load(region));
        importRoads(settings.name() + " roads", files.getOrDefault("roads.geojson", ""), say);
        parts.once("release", files.getOrDefault("release-sites.csv", ""), importId -> {
            release.load(region);
            DemoReport.enterSeasons(seasons, settings.lastDay(), settings.firstDay());
        });
        parts.once("surveys", settings.name(), importId -> surveys.load(region));
        parts.once("works", settings.name(), importId -> works.load(region));
        loadCalls(region, files.getOrDefault("calls.csv", ""), say);
        parts.once("health", settings.name(), importId -> health.tell(region));
        parts.once("today", settings.name(), importId -> today.tell(region, importId));
        parts.once(ALL_OF_IT, settings.name(), importId -> {});
    }

    /** Whether an earlier start has loaded everything. */
    boolean isLoaded() {
        return parts.all().contains(ALL_OF_IT);
    }

    private void settle(DemoRegion region) {
        Ground ground = region.settings().ground();
        Spot southWest = ground.spot(0, 0);
        Spot northEast = ground.spot(ground.widthMetres(), ground.heightMetres());
        regions.settle(new RegionService.RegionDescription(
                region.settings().name(),
                region.settings().zone().getId(),
                "XX",
                "XX",
                southWest.latitude(),
                southWest.longitude(),
                northEast.latitude(),
                northEast.longitude(),
                true));
    }

    /** An import is a transaction of its own, and a network version is its own note that it is there. */
    private void importRoads(String name, String source, Consumer<String> say) {
        if (roads.listNetworks().stream().anyMatch(network -> network.name().equals(name))) {
            return;
        }
        RoadNetworkView network = Actor.actFor(
                accounts.systemAccount(),
                () -> roads.importNetwork(
                        name,
                        null,
                        ROAD_ATTRIBUTES,
                        new ByteArrayInputStream(source.getBytes(StandardCharsets.UTF_8))));
        say.accept(String.format(
                Locale.ROOT,
                "%,.0f km of road in %,d links, joined at %,d places",
                network.kilometres(),
                network.links(),
                network.joinedNodes()));
    }

    private void loadCalls(DemoRegion region, String source, Consumer<String> say) {
        CallLoader.Task task = CallLoader.Task.of(region);
        Instant now = clock.instant();
        List<Incident> known = region.incidents().stream()
                .filter(incident -> incident.calls().stream()
                        .allMatch(call -> call.received().isBefore(now)))
                .toList();
        List<List<Incident>> batches = new ArrayList<>();
        for (int from = 0; from < known.size(); from += BATCH) {
            batches.add(known.subList(from, Math.min(known.size(), from + BATCH)));
        }
        Set<String> there = parts.all();
        String digest = LoadedParts.digest(source);
        long said = System.nanoTime();
        for (int i = 0; i < batches.size(); i++) {
            List<Incident> batch = batches.get(i);
            String part = String.format(Locale.ROOT, "calls %03d", i);
            if (there.contains(part)) {
                continue;
            }
            parts.once(part, () -> digest, importId -> calls.load(task, batch, importId));
            if (System.nanoTime() - said > SAY_SOMETHING_EVERY.toNanos() || i == batches.size() - 1) {
                said = System.nanoTime();
                say.accept(String.format(
                        Locale.ROOT, "%,d of %,d incidents", Math.min(known.size(), (i + 1) * BATCH), known.size()));
            }
        }
    }

    /** An invented incident among real ones would be evidence of nothing. */
    private void requireOwnOrEmpty(DemoRegion region) {
        Optional<Region> settled = regions.findRegion();
        boolean own = settled.isPresent()
                && settled.get().demo()
                && settled.get().name().equals(region.settings().name())
                && parts.all().contains("region");
        if (own) {
            return;
        }
        long rows = ((Number) entities.createNativeQuery("select (select count(*) from calls)"
                                + " + (select count(*) from organisations) + (select count(*) from taxa)"
                                + " + (select count(*) from road_networks)"
                                + " + (select count(*) from accounts where username <> '" + AccountService.SYSTEM
                                + "')")
                        .getSingleResult())
                .longValue();
        if (settled.isPresent() || rows > 0) {
            throw new IllegalStateException("The demo region is loaded into an empty database only, and this one"
                    + " holds records or accounts already. Start without CULVERT_DEMO, or give the demo a data folder of its own"
                    + " with CULVERT_HOME.");
        }
    }
}
