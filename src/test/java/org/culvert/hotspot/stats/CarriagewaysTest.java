package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

/**
 * A road of 30 km whose middle 10 km are divided. Chainage of the second carriageway starts from 0 at its own start.
 *
 * <pre>
 *                ,--- link 1 (strand 0) ---.
 *   ---link 0---o                           o---link 3---
 *                `--- link 2 (strand 1) ---'
 * </pre>
 */
class CarriagewaysTest {
    private static final Settings SETTINGS = new Settings(300, 50, 199, 5, 0.05, 3);

    private final RoadGraph divided = new RoadGraph(
            4, new int[] {0, 1, 1, 2}, new int[] {1, 2, 2, 3}, new double[] {10_000, 10_000, 10_000, 10_000});
    private final Chainage chainage = new Chainage(
            new int[4],
            new int[] {0, 0, 1, 0},
            new double[] {0, 10_000, 0, 20_000},
            new double[] {10_000, 20_000, 10_000, 30_000},
            Networks.lengths(divided));
    private final Carriageways carriageways = (link, metres) -> switch (link) {
        case 1 -> new Carriageways.Place(2, metres);
        case 2 -> new Carriageways.Place(1, metres);
        default -> null;
    };

    /** Three on one carriageway, four beside them on the other, and a sparse scatter. */
    private List<RoadEvent> events(boolean joined) {
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            events.add(new RoadEvent(joined || i % 2 == 1 ? 1 : 2, 4010 + 30 * i, Recording.EXACT));
        }
        for (int i = 0; i < 20; i++) {
            events.add(new RoadEvent(i % 2 == 0 ? 0 : 3, 480 * i, Recording.EXACT));
        }
        return events;
    }

    @Test
    void aClusterOnBothCarriagewaysIsOneHotspot() {
        List<Hotspot> hotspots = new HotspotSearch(divided, chainage, carriageways, SETTINGS)
                .search(events(false), new Chance.PerKilometre(), 2, done -> {})
                .hotspots();
        assertThat(hotspots).hasSize(1);
        Hotspot hotspot = hotspots.get(0);
        assertThat(hotspot.incidents()).isEqualTo(7);
        assertThat(hotspot.spans()).extracting(Hotspot.Span::link).containsExactlyInAnyOrder(1, 2);
        assertThat(hotspot.spans()).extracting(Hotspot.Span::incidents).containsExactlyInAnyOrder(3, 4);
        assertThat(hotspot.lengthMetres()).isCloseTo(200, within(1e-6));
        assertThat(hotspot.fromChainageMetres()).isCloseTo(4000, within(1e-6));
        assertThat(hotspot.toChainageMetres()).isCloseTo(4200, within(1e-6));
    }

    /** Where the kernel sees no end of the division, two carriageways of half the events each are as one road of all. */
    @Test
    void twoCarriagewaysAreAsSurprisingAsOneRoad() {
        var pieces = new Pieces(divided, 50);
        var twins = new Twins(pieces, carriageways);
        var kernel = KernelRows.of(new RoadKernel.Epanechnikov(300));
        Responses responses = Responses.build(pieces, chainage, twins, kernel, 50, events(false), true, 1);
        double[] field = new double[pieces.count()];
        for (RoadEvent event : events(false)) {
            responses.addTo(responses.row(event), field, new int[pieces.count()], 0);
        }
        NullModel.Moments moments = new RedrawnPlaces(responses, events(false), new int[pieces.count()]).moments();

        var one = new Pieces(Networks.oneRoad(3, 10_000), 50);
        var plain = new Twins(one, Carriageways.NONE);
        Chainage oneChainage = Networks.oneChainage(Networks.oneRoad(3, 10_000));
        List<RoadEvent> joined = events(true).stream()
                .map(event -> new RoadEvent(event.link() == 3 ? 2 : event.link(), event.metres(), event.recording()))
                .toList();
        Responses joinedResponses = Responses.build(one, oneChainage, plain, kernel, 50, joined, true, 1);
        double[] joinedField = new double[one.count()];
        for (RoadEvent event : joined) {
            joinedResponses.addTo(joinedResponses.row(event), joinedField, new int[one.count()], 0);
        }
        int at = pieces.at(1, 4100);
        assertThat(field[at]).isCloseTo(joinedField[one.at(1, 4100)] / 2, within(1e-9));
        assertThat(field[pieces.at(2, 4100)]).isEqualTo(field[at]);
        // an event counts half, so the scaled count is that of the joined road
        double scaled = field[at] * moments.mean()[at] / moments.variance()[at];
        NullModel.Moments joinedMoments = new RedrawnPlaces(joinedResponses, joined, new int[one.count()]).moments();
        int joinedAt = one.at(1, 4100);
        assertThat(scaled)
                .isCloseTo(
                        joinedField[joinedAt]
                                * joinedMoments.mean()[joinedAt]
                                / joinedMoments.variance()[joinedAt],
                        within(1e-2 * scaled));
    }

    @Test
    void withoutTheJoiningEitherCarriagewayIsARoadOfItsOwn() {
        List<Hotspot> hotspots = new HotspotSearch(divided, chainage, SETTINGS)
                .search(events(false), new Chance.PerKilometre(), 2, done -> {})
                .hotspots();
        assertThat(hotspots)
                .allSatisfy(hotspot -> assertThat(hotspot.incidents()).isLessThan(7));
    }
}
