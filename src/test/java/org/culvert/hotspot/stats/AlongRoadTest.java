package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

class AlongRoadTest {
    private static final Settings SETTINGS = new Settings(150, 25, 99, 3, 0.05, 3);

    /** 0 to 4 km from west to east, with events near one chainage and some elsewhere. */
    private final RoadGraph road = Networks.oneRoad(4, 1000);

    private static List<RoadEvent> near(int link, double metres) {
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            events.add(new RoadEvent(link, metres + 10 * i, Recording.EXACT));
            events.add(new RoadEvent(i % 4, 37 + 113 * i, Recording.EXACT));
        }
        return events;
    }

    private static Findings search(RoadGraph graph, Chainage chainage, List<RoadEvent> events) {
        return new HotspotSearch(graph, chainage, SETTINGS).search(events, new Chance.PerKilometre(), 2, done -> {});
    }

    private static void hangsTogether(List<AlongRoad.Part> parts) {
        for (int i = 1; i < parts.size(); i++) {
            assertThat(parts.get(i).fromChainageMetres())
                    .isCloseTo(parts.get(i - 1).toChainageMetres(), within(1e-9));
        }
    }

    @Test
    void theCurveIsOfTheRoadAroundTheStretchPieceByPiece() {
        Chainage chainage = Networks.oneChainage(road);
        Findings findings = search(road, chainage, near(2, 100));
        Hotspot hotspot = findings.hotspots().get(0);
        List<AlongRoad.Part> parts = new AlongRoad(findings, chainage).curve(hotspot, 1000, 200);
        hangsTogether(parts);
        assertThat(parts.get(0).fromChainageMetres()).isCloseTo(hotspot.fromChainageMetres() - 1000, within(1e-6));
        assertThat(parts.get(parts.size() - 1).toChainageMetres())
                .isCloseTo(hotspot.toChainageMetres() + 1000, within(1e-6));
        for (AlongRoad.Part part : parts) {
            int link = (int) Math.floor(part.fromChainageMetres() / 1000 + 1e-9);
            int piece = findings.pieces().at(link, part.fromChainageMetres() - 1000 * link + 1);
            assertThat(part.density()).isEqualTo(findings.density(piece));
            assertThat(part.expected()).isEqualTo(findings.expectedDensity(piece));
            assertThat(part.significant()).isEqualTo(findings.adjustedP(piece) <= SETTINGS.alpha());
            assertThat(part.envelope()).isGreaterThan(part.expected());
        }
        assertThat(parts.stream().filter(AlongRoad.Part::significant)).isNotEmpty();
    }

    @Test
    void itEndsWhereTheRoadDoes() {
        Chainage chainage = Networks.oneChainage(road);
        Findings findings = search(road, chainage, near(0, 100));
        List<AlongRoad.Part> parts =
                new AlongRoad(findings, chainage).curve(findings.hotspots().get(0), 1000, 200);
        hangsTogether(parts);
        assertThat(parts.get(0).fromChainageMetres()).isZero();
    }

    /** Chainage falls along the links, and the second half of the road is another road. */
    @Test
    void itIsOfOneRoadInOrderOfItsChainage() {
        var chainage = new Chainage(
                new int[] {0, 0, 1, 1},
                new int[4],
                new double[] {9000, 8000, 2000, 1000},
                new double[] {8000, 7000, 1000, 0},
                Networks.lengths(road));
        Findings findings = search(road, chainage, near(1, 400));
        Hotspot hotspot = findings.hotspots().get(0);
        assertThat(hotspot.road()).isZero();
        List<AlongRoad.Part> parts = new AlongRoad(findings, chainage).curve(hotspot, 1000, 200);
        hangsTogether(parts);
        assertThat(parts.get(0).fromChainageMetres()).as("the road's end").isEqualTo(7000);
        assertThat(parts.get(parts.size() - 1).toChainageMetres())
                .isCloseTo(hotspot.toChainageMetres() + 1000, within(1e-6));
    }

    @Test
    void manyPiecesAreToldTogetherByTheOneThatStandsOutMost() {
        Chainage chainage = Networks.oneChainage(road);
        Findings findings = search(road, chainage, near(2, 100));
        Hotspot hotspot = findings.hotspots().get(0);
        List<AlongRoad.Part> all = new AlongRoad(findings, chainage).curve(hotspot, 1000, 200);
        List<AlongRoad.Part> few = new AlongRoad(findings, chainage).curve(hotspot, 1000, 10);
        hangsTogether(few);
        assertThat(few).hasSizeLessThanOrEqualTo(10);
        assertThat(few.get(0).fromChainageMetres()).isEqualTo(all.get(0).fromChainageMetres());
        for (AlongRoad.Part part : few) {
            boolean any = all.stream()
                    .filter(one -> one.fromChainageMetres() >= part.fromChainageMetres()
                            && one.toChainageMetres() <= part.toChainageMetres())
                    .anyMatch(AlongRoad.Part::significant);
            assertThat(part.significant()).isEqualTo(any);
        }
    }

    /** A gap of 2 km in the chainage, and a link that claims the chainage of the one with the stretch on it. */
    @Test
    void gapsStayGapsAndNoChainageComesTwice() {
        var chainage = new Chainage(
                new int[4],
                new int[4],
                new double[] {0, 3000, 3000, 4000},
                new double[] {1000, 4000, 4000, 5000},
                Networks.lengths(road));
        Findings findings = search(road, chainage, near(2, 300));
        Hotspot hotspot = findings.hotspots().stream()
                .filter(one -> one.spans().get(0).link() == 2)
                .findFirst()
                .orElseThrow();
        List<AlongRoad.Part> parts = new AlongRoad(findings, chainage).curve(hotspot, 2600, 200);
        assertThat(parts.stream()
                        .mapToDouble(part -> part.toChainageMetres() - part.fromChainageMetres())
                        .sum())
                .as("what is left of the first link, and two others")
                .isCloseTo(1000 - (hotspot.fromChainageMetres() - 2600) + 2000, within(1e-6));
        assertThat(parts.stream().map(AlongRoad.Part::fromChainageMetres)).doesNotHaveDuplicates();
        assertThat(parts.stream().map(AlongRoad.Part::fromChainageMetres))
                .contains(3000.0)
                .doesNotContain(1000.0);
    }
}
