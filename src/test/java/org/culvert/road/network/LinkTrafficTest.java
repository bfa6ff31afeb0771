package org.culvert.road.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.TreeMap;
import org.culvert.road.network.LinkTraffic.Basis;
import org.culvert.road.network.TrafficStation.OfPeriod;
import org.junit.jupiter.api.Test;

/**
 * Traffic along small planar roads; the figures are worked out by hand. Between two years the Highway Safety Manual (AASHTO
 * 2010, part C) has a straight line, from memory.
 */
class LinkTrafficTest {
    /*
     *            B (secondary)          D (secondary)
     *              |                      |
     *   A --(0)----+--(1000)--+--(2000)---+--(3000)-------(4000)   primary; C residential meets it at 2000
     *              |          |
     *                         C
     */
    private static RoadNetwork network() {
        return Sketch.of()
                .line(known("A", "primary", 3000), "LINESTRING (0 0, 1000 0, 2000 0, 3000 0, 4000 0)")
                .line(known("B", "secondary", null), "LINESTRING (1000 0, 1000 900)")
                .line(known("C", "residential", null), "LINESTRING (2000 0, 2000 -900)")
                .line(known("D", "secondary", null), "LINESTRING (3000 0, 3000 900)")
                .network();
    }

    private static RoadAttributes known(String name, String roadClass, Integer aadt) {
        return new RoadAttributes(name, null, roadClass, null, aadt, null, null, 0, Structure.NONE, null, null);
    }

    private static int link(RoadNetwork network, String road, double chainage) {
        for (int link = 0; link < network.linkCount(); link++) {
            if (network.roadOf(link).label().equals(road)
                    && network.fromChainage(link) <= chainage
                    && chainage < network.toChainage(link)) {
                return link;
            }
        }
        throw new AssertionError("no link of " + road + " at " + chainage);
    }

    private static TrafficStation station(
            RoadNetwork network, double chainage, boolean counted, double... yearAndFigure) {
        int link = link(network, "A", chainage);
        return new TrafficStation(
                link, chainage - network.fromChainage(link), new int[0], counted, byYear(yearAndFigure));
    }

    private static TreeMap<Integer, Double> byYear(double... yearAndFigure) {
        TreeMap<Integer, Double> byYear = new TreeMap<>();
        for (int i = 0; i < yearAndFigure.length; i += 2) {
            byYear.put((int) yearAndFigure[i], yearAndFigure[i + 1]);
        }
        return byYear;
    }

    @Test
    void aCountSpeaksForItsRoadUpToTheNextMajorJunctions() {
        RoadNetwork network = network();
        LinkTraffic traffic = LinkTraffic.of(network, List.of(station(network, 1200, true, 2020, 5000)), 2020, 2020);
        // From the junction with B to that with D, past the residential road
        for (double chainage : new double[] {1500, 2500}) {
            int link = link(network, "A", chainage);
            assertThat(traffic.vehiclesPerDay(link)).isEqualTo(5000);
            assertThat(traffic.basis(link)).isEqualTo(Basis.COUNTED);
            assertThat(traffic.station(link)).isZero();
            assertThat(traffic.metresToStation(link)).isCloseTo(chainage - 1200, within(1e-6));
        }
        // Beyond them the file of roads speaks, and of the others nobody
        for (double chainage : new double[] {500, 3500}) {
            assertThat(traffic.vehiclesPerDay(link(network, "A", chainage))).isEqualTo(3000);
            assertThat(traffic.basis(link(network, "A", chainage))).isEqualTo(Basis.ROADS_FILE);
            assertThat(traffic.station(link(network, "A", chainage))).isEqualTo(-1);
        }
        assertThat(traffic.vehiclesPerDay(link(network, "C", 100))).isNaN();
        assertThat(traffic.basis(link(network, "C", 100))).isEqualTo(Basis.UNKNOWN);
        assertThat(traffic.metresByBasis())
                .containsEntry(Basis.COUNTED, 2000.0)
                .containsEntry(Basis.ESTIMATED, 0.0)
                .containsEntry(Basis.ROADS_FILE, 2000.0)
                .containsEntry(Basis.UNKNOWN, 2700.0);
    }

    @Test
    void theNearestCountGoesFirstAndCountedBeforeEstimated() {
        RoadNetwork network = network();
        List<TrafficStation> stations = List.of(
                station(network, 2400, false, 2020, 900),
                station(network, 1100, true, 2020, 5000),
                station(network, 2900, true, 2020, 6000),
                station(network, 3500, false, 2020, 700));
        LinkTraffic traffic = LinkTraffic.of(network, stations, 2020, 2020);
        assertThat(traffic.vehiclesPerDay(link(network, "A", 1500))).isEqualTo(5000);
        assertThat(traffic.vehiclesPerDay(link(network, "A", 2500))).isEqualTo(6000);
        assertThat(traffic.vehiclesPerDay(link(network, "A", 3500))).isEqualTo(700);
        assertThat(traffic.basis(link(network, "A", 3500))).isEqualTo(Basis.ESTIMATED);
    }

    @Test
    void betweenTwoYearsTrafficRunsOnAStraightLineAndNeverBeyondThem() {
        RoadNetwork network = network();
        TrafficStation station = station(network, 1500, true, 2012, 4000, 2016, 5000, 2018, 4400);
        assertThat(station.ofYear(2012)).hasValue(4000);
        assertThat(station.ofYear(2013)).hasValue(4250);
        assertThat(station.ofYear(2015)).hasValue(4750);
        assertThat(station.ofYear(2017)).hasValue(4700);
        assertThat(station.ofYear(2011)).isEmpty();
        assertThat(station.ofYear(2019)).isEmpty();
        assertThat(station.of(2014, 2016)).isEqualTo(new OfPeriod((4500 + 4750 + 5000) / 3.0, 3));
        // Two of five years are known
        assertThat(station.of(2017, 2021)).isEqualTo(new OfPeriod((4700 + 4400) / 2.0, 2));
        assertThat(station.of(2019, 2021).years()).isZero();

        LinkTraffic partly = LinkTraffic.of(network, List.of(station), 2017, 2021);
        assertThat(partly.vehiclesPerDay(link(network, "A", 2500))).isEqualTo(4550);
        assertThat(partly.years(link(network, "A", 2500))).isEqualTo(2);
        LinkTraffic after = LinkTraffic.of(network, List.of(station), 2019, 2021);
        assertThat(after.basis(link(network, "A", 2500))).isEqualTo(Basis.ROADS_FILE);
        assertThat(after.vehiclesPerDay(link(network, "A", 2500))).isEqualTo(3000);
    }

    @Test
    void aStationOutOfThePeriodHidesNoOtherThatKnowsIt() {
        RoadNetwork network = network();
        LinkTraffic traffic = LinkTraffic.of(
                network,
                List.of(station(network, 1500, true, 2001, 900), station(network, 2800, true, 2020, 5000)),
                2020,
                2020);
        assertThat(traffic.vehiclesPerDay(link(network, "A", 1500))).isEqualTo(5000);
    }

    @Test
    void aCountedStretchSpeaksForItsOwnLinksFirst() {
        RoadNetwork network = network();
        var stretch = new TrafficStation(
                link(network, "A", 1500), 500, new int[] {link(network, "A", 1500)}, true, byYear(2020, 7000));
        LinkTraffic traffic =
                LinkTraffic.of(network, List.of(station(network, 1490, true, 2020, 5000), stretch), 2020, 2020);
        assertThat(traffic.vehiclesPerDay(link(network, "A", 1500))).isEqualTo(7000);
        assertThat(traffic.metresToStation(link(network, "A", 1500))).isZero();
    }

    /*
     *   A (westbound)  <-------------   30 m north
     *   A (eastbound)  ------+------>   a counter at 600
     */
    @Test
    void theCarriagewayBesideHasTheSameTraffic() {
        RoadNetwork network = Sketch.of()
                .line(known("A", "primary", null).withCarriageway("eastbound"), "LINESTRING (0 0, 1000 0)")
                .line(known("A", "primary", null).withCarriageway("westbound"), "LINESTRING (1000 30, 0 30)")
                .line(known("A", "primary", null).withCarriageway("westbound"), "LINESTRING (1000 500, 0 500)")
                .network();
        LinkTraffic traffic = LinkTraffic.of(
                network, List.of(new TrafficStation(0, 600, new int[0], true, byYear(2020, 9000))), 2020, 2020);
        assertThat(traffic.vehiclesPerDay(0)).isEqualTo(9000);
        assertThat(traffic.vehiclesPerDay(1)).isEqualTo(9000);
        assertThat(traffic.basis(1)).isEqualTo(Basis.COUNTED);
        // Half a kilometre away is no other carriageway
        assertThat(traffic.basis(2)).isEqualTo(Basis.UNKNOWN);
    }

    @Test
    void noFurtherThanTwentyKilometres() {
        RoadNetwork network = Sketch.of()
                .line(known("A", "primary", null), "LINESTRING (0 0, 1000 0)")
                .line(known("A", "primary", null), "LINESTRING (1000 0, 30000 0)")
                .line(known("A", "primary", null), "LINESTRING (30000 0, 60000 0)")
                .network();
        LinkTraffic traffic = LinkTraffic.of(
                network, List.of(new TrafficStation(0, 500, new int[0], true, byYear(2020, 9000))), 2020, 2020);
        assertThat(traffic.basis(1)).isEqualTo(Basis.COUNTED);
        assertThat(traffic.metresToStation(1)).isCloseTo(15_000, within(1e-6));
        assertThat(traffic.basis(2)).isEqualTo(Basis.UNKNOWN);
    }

    @Test
    void aMinorRoadEndsAtEveryRoadWithAName() {
        RoadNetwork network = Sketch.of()
                .line(known("C", "residential", null), "LINESTRING (0 0, 500 0, 1000 0)")
                .line(known("E", "residential", null), "LINESTRING (500 0, 500 300)")
                .network();
        LinkTraffic traffic = LinkTraffic.of(
                network, List.of(new TrafficStation(0, 100, new int[0], true, byYear(2020, 300))), 2020, 2020);
        assertThat(traffic.basis(link(network, "C", 100))).isEqualTo(Basis.COUNTED);
        assertThat(traffic.basis(link(network, "C", 700))).isEqualTo(Basis.UNKNOWN);
    }

    @Test
    void theOrderOfUnlikeStationsChangesNothing() {
        RoadNetwork network = network();
        TrafficStation one = station(network, 1100, true, 2020, 5000);
        TrafficStation other = station(network, 2700, true, 2020, 6000);
        LinkTraffic here = LinkTraffic.of(network, List.of(one, other), 2020, 2020);
        LinkTraffic there = LinkTraffic.of(network, List.of(other, one), 2020, 2020);
        for (int link = 0; link < network.linkCount(); link++) {
            assertThat(Double.compare(here.vehiclesPerDay(link), there.vehiclesPerDay(link)))
                    .isZero();
        }
        assertThatThrownBy(() -> new TrafficStation(0, 0, new int[0], true, new TreeMap<>()))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
