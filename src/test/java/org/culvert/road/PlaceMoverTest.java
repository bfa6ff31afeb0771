package org.culvert.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.geo.Position;
import org.culvert.road.PlaceMoved.Outcome;
import org.culvert.road.network.LinkMatching;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadLine;
import org.culvert.road.network.RoadNetwork;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Sketches in metres around 30.5 south, 150 east; the numbers are plain geometry. */
class PlaceMoverTest {
    private static final double LATITUDE = -30.5;
    private static final double METRES_EAST = 111_320 * Math.cos(Math.toRadians(LATITUDE));

    private static Position at(double east, double north) {
        return new Position(LATITUDE + north / 111_320, 150 + east / METRES_EAST);
    }

    private static RoadLine line(String name, @Nullable Double start, double... metres) {
        double[] degrees = new double[metres.length];
        for (int i = 0; i < metres.length; i += 2) {
            degrees[i] = at(metres[i], metres[i + 1]).longitude();
            degrees[i + 1] = at(metres[i], metres[i + 1]).latitude();
        }
        return new RoadLine(name, RoadAttributes.named(name), start, degrees);
    }

    private static CurrentRoads roads(int number, @Nullable CurrentRoads before, RoadLine... lines) {
        NetworkBuilder builder = NetworkBuilder.geographic();
        Arrays.asList(lines).forEach(builder::add);
        RoadNetwork network = builder.build().network();
        UUID[] ids =
                Stream.generate(UUID::randomUUID).limit(network.linkCount()).toArray(UUID[]::new);
        UUID[] lasting = ids.clone();
        if (before != null) {
            int[] same = LinkMatching.match(before.network(), network);
            for (int link = 0; link < same.length; link++) {
                lasting[link] = same[link] < 0 ? ids[link] : before.lastingId(same[link]);
            }
        }
        return new CurrentRoads(UUID.randomUUID(), number, network, ids, lasting);
    }

    private static PlacedBefore given(CurrentRoads roads, int link, double along, Position position) {
        return before(roads, link, along, "decimalDegrees", position);
    }

    private static PlacedBefore byChainage(CurrentRoads roads, int link, double along) {
        return before(roads, link, along, "roadAndChainage", roads.network().positionAt(link, along));
    }

    private static PlacedBefore before(CurrentRoads roads, int link, double along, String way, Position position) {
        RoadNetwork network = roads.network();
        return new PlacedBefore(
                way,
                "as said",
                position,
                20,
                network.positionAt(link, along),
                roads.lastingId(link),
                along / network.graph().length(link),
                network.roadOf(link).label(),
                null,
                network.chainageAt(link, along),
                way.equals("roadAndChainage") ? Double.valueOf(100) : null,
                false,
                List.of());
    }

    @Test
    void onALinkThatIsStillThereItStaysWhereItWas() {
        CurrentRoads old = roads(1, null, line("Mill Road", null, 0, 0, 1000, 0));
        CurrentRoads now = roads(2, old, line("Mill Highway", null, 0, 3, 1000, 3));
        PlaceMoved moved = new PlaceMover(now).move(given(old, 0, 400, at(400, 10)));
        assertThat(moved.outcome()).isEqualTo(Outcome.moved);
        assertThat(moved.metres()).isCloseTo(3, within(0.01));
        assertThat(moved.onRoad().roadLinkId()).isEqualTo(now.linkId(0));
        assertThat(moved.onRoad().roadName()).isEqualTo("Mill Highway");
        assertThat(moved.onRoad().metresAlongLink()).isCloseTo(400, within(0.6));
        assertThat(moved.onRoad().offsetMetres()).isCloseTo(7, within(0.05));
        assertThat(moved.onRoad().side()).isEqualTo("left");
    }

    /** A new junction has cut its link: it is put on the piece that lies there. */
    @Test
    void whereTheLinkIsNoMoreItIsPutOnARoadAnew() {
        CurrentRoads old = roads(1, null, line("Mill Road", null, 0, 0, 500, 0, 1000, 0));
        CurrentRoads now =
                roads(2, old, line("Mill Road", null, 0, 0, 500, 0, 1000, 0), line("New Lane", null, 500, 0, 500, 300));
        PlaceMoved moved = new PlaceMover(now).move(given(old, 0, 700, at(700, -8)));
        assertThat(moved.outcome()).isEqualTo(Outcome.moved);
        assertThat(moved.metres()).isCloseTo(0, within(1.0));
        assertThat(moved.onRoad().metresAlongLink()).isCloseTo(200, within(0.6));
        assertThat(moved.onRoad().chainageMetres()).isCloseTo(700, within(1.5));
        assertThat(moved.onRoad().side()).isEqualTo("right");
    }

    @Test
    void withoutARoadWithinItsUncertaintyItStaysOnTheOldOne() {
        CurrentRoads old = roads(1, null, line("Mill Road", null, 0, 0, 1000, 0));
        CurrentRoads now = roads(2, old, line("Ford Lane", null, 0, 5000, 1000, 5000));
        assertThat(new PlaceMover(now).move(given(old, 0, 400, at(400, 10))).outcome())
                .isEqualTo(Outcome.noRoad);
        assertThat(new PlaceMover(now).move(byChainage(old, 0, 400)).outcome()).isEqualTo(Outcome.noRoad);
        PlaceMoved not = new PlaceMover(now).move(given(old, 0, 400, at(400, 10)));
        assertThat(not.onRoad()).isNull();
        assertThat(not.metres()).isNull();
    }

    /** Where one road was are two now, as near to the place as each other. */
    @Test
    void whatWasSureIsNotMadeDoubtful() {
        CurrentRoads old = roads(1, null, line("Mill Road", null, 0, 0, 1000, 0));
        CurrentRoads now =
                roads(2, old, line("North Road", null, 0, 12, 1000, 12), line("South Road", null, 0, -12, 1000, -12));
        assertThat(new PlaceMover(now).move(given(old, 0, 400, at(400, 0))).outcome())
                .isEqualTo(Outcome.roadInDoubt);
        // With the old road's name on one of them it is that one
        CurrentRoads named =
                roads(2, old, line("Mill Road", null, 0, 12, 1000, 12), line("South Road", null, 0, -12, 1000, -12));
        PlaceMoved moved = new PlaceMover(named).move(given(old, 0, 400, at(400, 0)));
        assertThat(moved.outcome()).isEqualTo(Outcome.moved);
        assertThat(moved.onRoad().roadName()).isEqualTo("Mill Road");
        assertThat(moved.metres()).isCloseTo(12, within(0.05));
    }

    /** Kilometre posts were set anew: "km 0.4" is another place now, and nobody knows which was meant. */
    @Test
    void aChainageThatMeansAnotherPlaceNowIsForAPerson() {
        CurrentRoads old = roads(1, null, line("Mill Road", 0.0, 0, 0, 1000, 0));
        CurrentRoads shifted = roads(2, old, line("Mill Road", 300.0, 0, 0, 1000, 0));
        assertThat(new PlaceMover(shifted).move(byChainage(old, 0, 400)).outcome())
                .isEqualTo(Outcome.otherChainage);
        // A place that was given by its position is where it is, whatever the posts say
        PlaceMoved moved = new PlaceMover(shifted).move(given(old, 0, 400, at(400, 5)));
        assertThat(moved.outcome()).isEqualTo(Outcome.moved);
        assertThat(moved.onRoad().chainageMetres()).isCloseTo(700, within(1.5));
        CurrentRoads same = roads(2, old, line("Mill Road", 10.0, 0, 0, 1000, 0));
        PlaceMoved kept = new PlaceMover(same).move(byChainage(old, 0, 400));
        assertThat(kept.outcome()).isEqualTo(Outcome.moved);
        assertThat(kept.onRoad().chainagePrecisionMetres()).isEqualTo(100);
        assertThat(kept.metres()).isCloseTo(0, within(0.01));
    }

    @Test
    void whatWasInDoubtStaysInDoubtOnTheSameRoads() {
        RoadLine mill = line("Mill Road", null, 0, 12, 1000, 12);
        RoadLine ford = line("Ford Road", null, 0, -12, 1000, -12);
        CurrentRoads old = roads(1, null, mill, ford);
        PlacedBefore sure = given(old, 0, 400, at(400, 0));
        var other =
                new PlacedBefore.OtherPlace(old.lastingId(1), 0.4, old.network().positionAt(1, 400));
        PlacedBefore doubtful = new PlacedBefore(
                sure.givenAs(),
                sure.verbatim(),
                sure.position(),
                20,
                sure.onRoad(),
                sure.lastingId(),
                sure.partOfLink(),
                sure.roadName(),
                null,
                null,
                null,
                true,
                List.of(other));
        CurrentRoads now = roads(2, old, ford, mill);
        PlaceMoved moved = new PlaceMover(now).move(doubtful);
        assertThat(moved.outcome()).isEqualTo(Outcome.moved);
        assertThat(moved.roadInDoubt()).isTrue();
        assertThat(moved.onRoad().roadLinkId()).isEqualTo(now.linkId(1));
        assertThat(moved.otherRoads()).hasSize(1);
        assertThat(moved.otherRoads().get(0).roadLinkId()).isEqualTo(now.linkId(0));
        // Without the one road there is no doubt any more
        CurrentRoads one = roads(3, old, mill);
        PlaceMoved clear = new PlaceMover(one).move(doubtful);
        assertThat(clear.outcome()).isEqualTo(Outcome.moved);
        assertThat(clear.roadInDoubt()).isFalse();
        assertThat(clear.onRoad().roadName()).isEqualTo("Mill Road");
    }
}
