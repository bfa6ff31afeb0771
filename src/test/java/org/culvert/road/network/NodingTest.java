package org.culvert.road.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class NodingTest {
    private static final double FAR = 1e9;

    /*
     *          S (100,100)
     *          |
     *  W-------x-------E      no common vertex at x: a mere crossing
     *          |
     *          N
     */
    @Test
    void aMereCrossingIsNoJunction() {
        NetworkBuilder.Built built = Sketch.of()
                .road("Mill Road", "LINESTRING(0 0, 200 0)")
                .road("Ford Lane", "LINESTRING(100 -100, 100 100)")
                .built();
        assertThat(built.report().links()).isEqualTo(2);
        assertThat(built.report().joinedNodes()).isZero();
        assertThat(distance(built.network(), 0, 0, 1, 0)).isInfinite();
    }

    /*
     *          T
     *          |
     *  W-------+-------E      Ford Lane ends at an interior vertex of Mill Road
     */
    @Test
    void aRoadThatEndsAtAnInteriorVertexMakesAJunction() {
        NetworkBuilder.Built built = Sketch.of()
                .road("Mill Road", "LINESTRING(0 0, 100 0, 200 0)")
                .road("Ford Lane", "LINESTRING(100 100, 100 0)")
                .built();
        assertThat(built.report().links()).isEqualTo(3);
        assertThat(built.report().joinedNodes()).isEqualTo(1);
        assertThat(built.report().nodes()).isEqualTo(4);
        assertThat(distance(built.network(), 0, 0, 2, 0)).isEqualTo(200);
        assertThat(built.network().chainageAt(1, 10)).isEqualTo(110);
    }

    @Test
    void twoInteriorVerticesMakeACrossroads() {
        NetworkBuilder.Built built = Sketch.of()
                .road("Mill Road", "LINESTRING(0 0, 100 0, 200 0)")
                .road("Ford Lane", "LINESTRING(100 -100, 100 0, 100 100)")
                .built();
        assertThat(built.report().links()).isEqualTo(4);
        assertThat(degreeAt(built.network(), 0)).isEqualTo(4);
    }

    /*
     *  Overpass: Mill Road's bridge has a vertex above Ford Lane's vertex at (100,0).
     *
     *                    | Ford Lane (ground)
     *   a======B=========x=========B======e      B: abutments, = Mill Road on the ground
     *          (50,0)    |      (150,0)
     */
    @Test
    void anOverpassIsNoJunctionButItsAbutmentsJoinTheRoadOnTheGround() {
        RoadNetwork network = Sketch.of()
                .road("Mill Road", "LINESTRING(0 0, 50 0)")
                .line(bridge("Mill Road"), "LINESTRING(50 0, 100 0, 150 0)")
                .road("Mill Road", "LINESTRING(150 0, 200 0)")
                .road("Ford Lane", "LINESTRING(100 -80, 100 0, 100 80)")
                .network();
        assertThat(network.linkCount()).isEqualTo(4);
        assertThat(distance(network, 0, 0, 2, 50)).isEqualTo(200);
        assertThat(distance(network, 0, 0, 3, 0)).isInfinite();
        assertThat(network.chainageAt(2, 0)).isEqualTo(150);
    }

    @Test
    void aViaductOfTwoPiecesPassesOverAStreetThatIsCutThere() {
        RoadNetwork network = Sketch.of()
                .line(bridge("Mill Road"), "LINESTRING(50 0, 100 0)")
                .line(bridge("Mill Road"), "LINESTRING(100 0, 150 0)")
                .road("Ford Lane", "LINESTRING(100 -80, 100 0)")
                .road("Ford Lane", "LINESTRING(100 0, 100 80)")
                .network();
        assertThat(distance(network, 0, 0, 1, 50)).isEqualTo(100);
        assertThat(distance(network, 2, 0, 3, 80)).isEqualTo(160);
        assertThat(distance(network, 0, 0, 2, 0)).isInfinite();
    }

    @Test
    void aBridgeThatEndsOnAStreetJoinsIt() {
        RoadNetwork network = Sketch.of()
                .line(bridge("Mill Road"), "LINESTRING(0 0, 100 0)")
                .road("Ford Lane", "LINESTRING(100 -80, 100 0, 100 80)")
                .network();
        assertThat(distance(network, 0, 0, 1, 0)).isEqualTo(180);
    }

    @Test
    void aStreetThatEndsBelowABridgeDoesNotJoinIt() {
        RoadNetwork network = Sketch.of()
                .line(bridge("Mill Road"), "LINESTRING(0 0, 100 0, 200 0)")
                .road("Ford Lane", "LINESTRING(100 -80, 100 0)")
                .network();
        assertThat(network.linkCount()).isEqualTo(2);
        assertThat(distance(network, 0, 0, 1, 0)).isInfinite();
    }

    @Test
    void twoBridgesThatShareAnAbutmentBothComeToGround() {
        RoadNetwork network = Sketch.of()
                .line(bridge("Mill Road"), "LINESTRING(0 0, 100 0)")
                .line(bridge("Ramp"), "LINESTRING(0 50, 100 0)")
                .road("Mill Road", "LINESTRING(100 0, 200 0)")
                .network();
        assertThat(distance(network, 0, 0, 2, 100)).isEqualTo(200);
        assertThat(distance(network, 1, 0, 2, 100)).isFinite();
    }

    @Test
    void aTunnelPassesUnderAndComesOutOnItsRoad() {
        RoadNetwork network = Sketch.of()
                .road("Mill Road", "LINESTRING(0 0, 50 0)")
                .line(RoadAttributes.named("Mill Road").atLevel(0, Structure.TUNNEL), "LINESTRING(50 0, 100 0, 150 0)")
                .line(bridge("Ford Lane"), "LINESTRING(100 -80, 100 0, 100 80)")
                .road("Hill Street", "LINESTRING(90 -80, 100 0, 110 80)")
                .network();
        assertThat(network.linkCount()).isEqualTo(4);
        assertThat(distance(network, 0, 0, 1, 100)).isEqualTo(150);
        assertThat(distance(network, 0, 0, 2, 0)).isInfinite();
        assertThat(distance(network, 2, 0, 3, 0)).isInfinite();
    }

    @Test
    void aRingIsOneLinkThatBeginsAndEndsAtItsNode() {
        RoadNetwork network = Sketch.of()
                .road("Round Court", "LINESTRING(0 0, 500 0, 500 500, 0 500, 0 0)")
                .network();
        assertThat(network.linkCount()).isEqualTo(1);
        assertThat(network.graph().from(0)).isEqualTo(network.graph().to(0));
        assertThat(network.graph().degree(network.graph().from(0))).isEqualTo(2);
        assertThat(distance(network, 0, 100, 0, 1900)).isEqualTo(200);
    }

    @Test
    void aLineThatMeetsItselfAtAVertexIsCutThere() {
        RoadNetwork network = Sketch.of()
                .road("Loop Road", "LINESTRING(0 0, 100 0, 200 0, 200 100, 100 100, 100 0)")
                .network();
        assertThat(network.linkCount()).isEqualTo(2);
        assertThat(distance(network, 0, 0, 1, 399)).isEqualTo(101);
        assertThat(network.chainageAt(1, 399)).isEqualTo(499);
    }

    /*
     *   ---->---->----  northbound     a cross-over joins the two carriageways at (100, 0) and (100, 20)
     *        |
     *   ----<----<----  southbound
     */
    @Test
    void carriagewaysAreTwoRoadsJoinedOnlyWhereTheyMeet() {
        RoadNetwork network = Sketch.of()
                .line(way("Pacific Highway", "northbound"), "LINESTRING(0 0, 100 0, 200 0)")
                .line(way("Pacific Highway", "southbound"), "LINESTRING(200 20, 100 20, 0 20)")
                .unnamed("LINESTRING(100 0, 100 20)")
                .network();
        assertThat(network.roads())
                .extracting(Road::fullLabel)
                .containsExactly(
                        "Pacific Highway (northbound)", "Pacific Highway (southbound)", "unnamed road (line 3)");
        assertThat(distance(network, 0, 0, 3, 100)).isEqualTo(220);
        assertThat(network.findRoads("pacific hwy")).hasSize(2);
    }

    @Test
    void repeatedVerticesAndEmptyLinesAreDropped() {
        NetworkBuilder.Built built = Sketch.of()
                .road("Mill Road", "LINESTRING(0 0, 500 0, 500 0, 1000 0)")
                .road("Point Lane", "LINESTRING(7 7, 7 7)")
                .road("Mill Road", "LINESTRING(1000 0, 500 0, 0 0)")
                .built();
        assertThat(built.report().linesUsed()).isEqualTo(1);
        assertThat(built.report().metres()).isEqualTo(1000);
        assertThat(built.report().leftOut())
                .containsOnly(
                        entry("fewer than two different vertices", 1),
                        entry("repeats another line of the same road", 1));
        assertThat(built.report().leftOutExamples().get(0)).startsWith("line 2");
    }

    @Test
    void nothingAtAllIsRefused() {
        assertThatThrownBy(() ->
                        Sketch.of().road("Point Lane", "LINESTRING(7 7, 7 7)").built())
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void linesHeadToTailAreChainedAndAMeasureStartsAfresh() {
        RoadNetwork network = Sketch.of()
                .road("Mill Road", "LINESTRING(200 0, 300 0)")
                .road("Mill Road", "LINESTRING(0 0, 100 0)")
                .road("Mill Road", "LINESTRING(100 0, 200 0)")
                .line(RoadAttributes.named("Mill Road"), 5000.0, "LINESTRING(300 0, 400 0)")
                .road("Mill Road", "LINESTRING(400 0, 500 0)")
                .road("Mill Road", "LINESTRING(900 0, 800 0)")
                .network();
        assertThat(IntStream.range(0, 6).mapToDouble(network::fromChainage))
                .containsExactly(200.0, 0.0, 100.0, 5000.0, 5100.0, 0.0);
    }

    @Test
    void aRingOfLinesStartsAtItsFirstLine() {
        RoadNetwork network = Sketch.of()
                .road("Ring", "LINESTRING(0 0, 100 0)")
                .road("Ring", "LINESTRING(100 0, 100 100)")
                .road("Ring", "LINESTRING(100 100, 0 0)")
                .network();
        assertThat(network.fromChainage(0)).isZero();
        assertThat(network.fromChainage(1)).isEqualTo(100);
        assertThat(network.fromChainage(2)).isEqualTo(200);
    }

    @Test
    void linesDigitisedAgainstEachOtherEachStartFromZero() {
        RoadNetwork network = Sketch.of()
                .road("Mill Road", "LINESTRING(0 0, 100 0)")
                .road("Mill Road", "LINESTRING(300 0, 100 0)")
                .network();
        assertThat(network.fromChainage(1)).isZero();
        assertThat(new RoadFinder(network).atChainage(network.roads(), 50, 0)).hasSize(2);
    }

    @Test
    void longStraightLinesOfLongitudeAndLatitudeKeepToTheirParallel() {
        // 50 km along the parallel of 45 degrees: the geodesic between the ends would run 49 m north of it half-way.
        double[] parallel = {7.0, 45.0, 7.64, 45.0};
        RoadNetwork network = NetworkBuilder.geographic()
                .add(new RoadLine("line 1", RoadAttributes.named("Straight"), null, parallel))
                .build()
                .network();
        assertThat(network.linkCount()).isEqualTo(1);
        double half = network.graph().length(0) / 2;
        assertThat(network.positionAt(0, half).latitude()).isCloseTo(45, within(1e-6));
    }

    private static RoadAttributes bridge(String name) {
        return RoadAttributes.named(name).atLevel(0, Structure.BRIDGE);
    }

    private static RoadAttributes way(String name, String carriageway) {
        return RoadAttributes.named(name).withCarriageway(carriageway);
    }

    private static int degreeAt(RoadNetwork network, int link) {
        return network.graph().degree(network.graph().to(link));
    }

    private static double distance(RoadNetwork network, int link, double metres, int toLink, double toMetres) {
        return NetworkDistances.inMetres(network.graph())
                .between(new LinkPoint(link, metres), new LinkPoint(toLink, toMetres), FAR);
    }
}
