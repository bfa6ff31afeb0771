package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * On a grid of 7 x 7 nodes, 1 km apart: links 0 .. 41 run to the right, row by row, six a row; links 42 .. 83 upwards.
 * Every row and every column is one road.
 */
class HotspotSearchTest {
    private static final Settings SETTINGS = new Settings(300, 50, 199, 1, 0.05, 3);
    private static final Chance PER_KILOMETRE = new Chance.PerKilometre();

    private final RoadGraph graph = Networks.grid(7, 1000);
    private final Chainage chainage = Networks.gridChainage(7, graph);

    /** 60 events anywhere, and eight within 120 m on link 14 (the third road, between 2000 and 3000 m). */
    private List<RoadEvent> planted() {
        List<RoadEvent> events = scattered(60);
        for (int i = 0; i < 8; i++) {
            events.add(new RoadEvent(14, 440 + 15 * i, Recording.EXACT));
        }
        return events;
    }

    /** Events anywhere but on links 14 and 15. */
    private List<RoadEvent> scattered(int count) {
        var random = Networks.random(17);
        List<RoadEvent> events = new ArrayList<>();
        while (events.size() < count) {
            int link = random.nextInt(graph.linkCount());
            if (link != 14 && link != 15) {
                events.add(new RoadEvent(link, 1000 * random.nextDouble(), Recording.EXACT));
            }
        }
        return events;
    }

    private Findings search(List<RoadEvent> events, Chance chance, int threads) {
        return new HotspotSearch(graph, chainage, SETTINGS).search(events, chance, threads, done -> {});
    }

    @Test
    void aPlantedClusterIsFoundOnItsRoadAndTrimmedToItsEvents() {
        List<Hotspot> hotspots = search(planted(), PER_KILOMETRE, 2).hotspots();
        assertThat(hotspots).hasSize(1);
        Hotspot hotspot = hotspots.get(0);
        assertThat(hotspot.rank()).isEqualTo(1);
        assertThat(hotspot.road()).isEqualTo(2);
        assertThat(hotspot.incidents()).isEqualTo(8);
        assertThat(hotspot.fromChainageMetres()).isCloseTo(2400, within(1e-6));
        assertThat(hotspot.toChainageMetres()).isCloseTo(2550, within(1e-6));
        assertThat(hotspot.lengthMetres()).isCloseTo(150, within(1e-6));
        assertThat(hotspot.spans()).containsExactly(new Hotspot.Span(14, 400, 550, 8));
        assertThat(hotspot.expected()).isCloseTo(68 * 150 / 84_000.0, within(1e-9));
        assertThat(hotspot.excess()).isCloseTo(8 - hotspot.expected(), within(1e-12));
        assertThat(hotspot.adjustedP()).isEqualTo(1 / 200.0);
        assertThat(hotspot.intervalLow()).isCloseTo(3.454, within(1e-3));
    }

    @Test
    void theOrderOfTheEventsChangesNothing() {
        List<RoadEvent> events = planted();
        Findings wanted = search(events, PER_KILOMETRE, 1);
        for (int shuffle = 0; shuffle < 5; shuffle++) {
            List<RoadEvent> shuffled = new ArrayList<>(events);
            Collections.shuffle(shuffled, new Random(shuffle));
            same(search(shuffled, PER_KILOMETRE, 2), wanted);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4})
    void theNumberOfThreadsChangesNothing(int threads) {
        List<RoadEvent> reports = planted();
        List<RoadEvent> group = reports.subList(40, 68);
        for (Chance chance : List.of(PER_KILOMETRE, new Chance.PerAllReports(reports))) {
            same(search(group, chance, threads), search(group, chance, 1));
        }
    }

    private static void same(Findings found, Findings wanted) {
        for (int piece = 0; piece < wanted.pieces().count(); piece++) {
            assertThat(found.adjustedP(piece)).isEqualTo(wanted.adjustedP(piece));
            assertThat(found.density(piece)).isEqualTo(wanted.density(piece));
            assertThat(found.expectedDensity(piece)).isEqualTo(wanted.expectedDensity(piece));
        }
        assertThat(found.hotspots()).isEqualTo(wanted.hotspots());
    }

    @Test
    void theDensityIntegratesToTheNumberOfEvents() {
        List<RoadEvent> events = planted();
        events.add(new RoadEvent(3, 500, new Recording(1000, 700)));
        Findings findings = search(events, PER_KILOMETRE, 2);
        double observed = 0;
        double expected = 0;
        for (int piece = 0; piece < findings.pieces().count(); piece++) {
            observed += findings.density(piece) * findings.pieces().length(piece);
            expected += findings.expectedDensity(piece) * findings.pieces().length(piece);
        }
        assertThat(observed).isCloseTo(69, within(1e-5));
        assertThat(expected).isCloseTo(69, within(1e-5));
    }

    @Test
    void fewerIncidentsThanTheMinimumAreNotNamed() {
        var strict = new Settings(300, 50, 199, 1, 0.05, 9);
        Findings findings = new HotspotSearch(graph, chainage, strict).search(planted(), PER_KILOMETRE, 2, done -> {});
        assertThat(findings.smallestP()).isLessThan(0.05);
        assertThat(findings.hotspots()).isEmpty();
    }

    /** Twenty events beside a junction on one road: the kernel leaks into the crossing road, which had none. */
    @Test
    void aRoadWithoutEventsIsNeverNamed() {
        List<RoadEvent> events = scattered(40);
        for (int i = 0; i < 20; i++) {
            events.add(new RoadEvent(14, 4 + 2 * i, Recording.EXACT));
        }
        Findings findings = search(events, PER_KILOMETRE, 2);
        Pieces pieces = findings.pieces();
        int crossing = 42 + 6 * 2 + 2;
        assertThat(graph.from(crossing)).isEqualTo(graph.from(14));
        assertThat(findings.adjustedP(pieces.at(crossing, 10))).isLessThanOrEqualTo(0.05);
        assertThat(findings.hotspots()).extracting(Hotspot::road).containsExactly(2);
    }

    /** Four events on either side of a border: each side alone names its own part, and the p is that of the whole. */
    @Test
    void clippingToAnAuthorityTrimsAgainAndKeepsTheWholesEvidence() {
        List<RoadEvent> events = scattered(40);
        for (int i = 0; i < 4; i++) {
            events.add(new RoadEvent(14, 930 + 15 * i, Recording.EXACT));
            events.add(new RoadEvent(15, 20 + 15 * i, Recording.EXACT));
        }
        Findings findings = search(events, PER_KILOMETRE, 2);
        assertThat(findings.hotspots()).hasSize(1);
        Hotspot whole = findings.hotspots().get(0);
        assertThat(whole.incidents()).isEqualTo(8);
        assertThat(whole.spans()).extracting(Hotspot.Span::link).containsExactly(14, 15);
        List<Hotspot> clipped = findings.hotspotsOn(link -> link == 15);
        assertThat(clipped).hasSize(1);
        assertThat(clipped.get(0).incidents()).isEqualTo(4);
        assertThat(clipped.get(0).fromChainageMetres()).isCloseTo(3000, within(1e-6));
        assertThat(clipped.get(0).toChainageMetres()).isLessThanOrEqualTo(whole.toChainageMetres());
        assertThat(findings.hotspotsOn(link -> link == 60)).isEmpty();
    }

    @Test
    void ofReportsOfAllAnimalsOnlyWhatIsTheGroupsOwnStandsOut() {
        List<RoadEvent> reports = scattered(300);
        for (int i = 0; i < 40; i++) {
            reports.add(new RoadEvent(14, 400 + 5 * i, Recording.EXACT));
        }
        List<RoadEvent> group = new ArrayList<>(reports.subList(0, 30));
        group.addAll(reports.subList(300, 306));
        var all = new Chance.PerAllReports(reports);
        assertThat(search(group, all, 2).hotspots()).isEmpty();
        assertThat(search(group, PER_KILOMETRE, 2).hotspots()).isNotEmpty();
        List<RoadEvent> keen = new ArrayList<>(reports.subList(0, 30));
        keen.addAll(reports.subList(300, 320));
        assertThat(search(keen, all, 2).hotspots()).extracting(Hotspot::road).containsExactly(2);
    }

    @Test
    void withoutEventsThereIsNothing() {
        Findings findings = search(List.of(), PER_KILOMETRE, 2);
        assertThat(findings.hotspots()).isEmpty();
        assertThat(findings.smallestP()).isEqualTo(1);
    }

    @Test
    void progressCountsEverySimulation() {
        var heard = new AtomicInteger();
        var greatest = new AtomicInteger();
        new HotspotSearch(graph, chainage, SETTINGS).search(planted(), PER_KILOMETRE, 2, done -> {
            heard.incrementAndGet();
            greatest.accumulateAndGet(done, Math::max);
        });
        assertThat(heard).hasValue(199);
        assertThat(greatest).hasValue(199);
    }

    @Test
    void settingsThatMakeNoSenseAreRefused() {
        assertThatThrownBy(() -> new Settings(0, 50, 99, 1, 0.05, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Settings(40, 50, 99, 1, 0.05, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Settings(500, 50, 0, 1, 0.05, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Settings(500, 50, 99, 1, 1, 3)).isInstanceOf(IllegalArgumentException.class);
    }
}
