package org.culvert.road.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.culvert.geo.CoordinateException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RoadFinderTest {
    @ParameterizedTest
    @CsvSource({
        "12.4, 12400, 100",
        "12, 12000, 1000",
        "12.400, 12400, 1",
        "km 12.4, 12400, 100",
        "12.4 km, 12400, 100",
        "12.4KM, 12400, 100",
        "12+400, 12400, 100",
        "12+450, 12450, 10",
        "K12+456, 12456, 1",
        "12400 m, 12400, 100",
        "0.0, 0, 100"
    })
    void chainageCarriesThePrecisionOfItsDigits(String text, double metres, double precision) {
        ChainageReading reading = ChainageReading.read(text);
        assertThat(reading.metres()).isEqualTo(metres);
        assertThat(reading.precisionMetres()).isEqualTo(precision);
        assertThat(reading.uncertaintyMetres()).isEqualTo(precision / 2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "twelve", "12,4", "-3", "12+4000", "km"})
    void otherChainageIsRefused(String text) {
        assertThatThrownBy(() -> ChainageReading.read(text))
                .isInstanceOfSatisfying(
                        CoordinateException.class,
                        refused -> assertThat(refused.field()).isEqualTo("chainageKm"));
    }

    @ParameterizedTest
    @CsvSource({
        "Mill Rd, Mill Road",
        "MILL ROAD, mill road",
        "mill rd., Mill Road",
        "Pacific Hwy, Pacific Highway",
        "St Kilda Rd, Saint Kilda Road",
        "Mill St, Mill Street",
        "Rue Saint-Andr\u00e9, rue saint andre",
        "Hauptstr., Hauptstra\u00dfe",
        "Havixbecker Str., Havixbecker Strasse",
        "The Avenue, avenue",
        "O'Brien Ave, OBrien Avenue",
        "N Terrace Dr, North Terrace Drive"
    })
    void namesAreComparedAsPeopleWriteThem(String one, String other) {
        assertThat(RoadNames.comparable(one)).isEqualTo(RoadNames.comparable(other));
    }

    @Test
    void differentRoadsStayDifferent() {
        assertThat(RoadNames.comparable("Mill Road")).isNotEqualTo(RoadNames.comparable("Mill Lane"));
        assertThat(RoadNames.comparable("North Mill Road")).isNotEqualTo(RoadNames.comparable("Mill Road"));
    }

    @Test
    void roadsAreFoundByNameAndByNumber() {
        RoadNetwork network = Sketch.of()
                .line(RoadAttributes.named("Pacific Highway").withRef("A1;B23"), "LINESTRING(0 0, 100 0)")
                .line(RoadAttributes.UNKNOWN.withRef("A 10"), "LINESTRING(0 50, 100 50)")
                .unnamed("LINESTRING(0 90, 100 90)")
                .network();
        assertThat(network.findRoads("a1")).extracting(Road::label).containsExactly("Pacific Highway");
        assertThat(network.findRoads("B 23")).hasSize(1);
        assertThat(network.findRoads("A10")).extracting(Road::label).containsExactly("A 10");
        assertThat(network.findRoads("unnamed road (line 3)")).isEmpty();
        assertThat(network.suggestRoads("pac", 5)).extracting(Road::label).containsExactly("Pacific Highway");
        assertThat(network.suggestRoads("", 5)).isEmpty();
    }

    @Test
    void aChainageIsFoundOnEveryCarriageway() {
        RoadNetwork network = Sketch.of()
                .line(RoadAttributes.named("M1").withCarriageway("N"), 12000.0, "LINESTRING(0 0, 1000 0, 2000 0)")
                .line(RoadAttributes.named("M1").withCarriageway("S"), 12000.0, "LINESTRING(0 20, 2000 20)")
                .road("Bridge Street", "LINESTRING(1000 0, 1000 -200)")
                .network();
        RoadFinder finder = new RoadFinder(network);
        List<LinkPoint> places = finder.atChainage(network.findRoads("M1"), 13500, 0);
        assertThat(places).containsExactly(new LinkPoint(1, 500), new LinkPoint(2, 1500));
        assertThat(finder.atChainage(network.findRoads("M1"), 13000, 0))
                .as("a node is one place")
                .hasSize(2);
        assertThat(finder.atChainage(network.findRoads("M1"), 14040, 50))
                .containsExactly(new LinkPoint(1, 1000), new LinkPoint(2, 2000));
        assertThat(finder.atChainage(network.findRoads("M1"), 14060, 50)).isEmpty();
        assertThat(finder.chainageRanges(network.road(0))).containsExactly(12000, 14000);
    }

    @Test
    void junctionsOfADividedRoadAreOne() {
        RoadNetwork network = Sketch.of()
                .line(RoadAttributes.named("M1").withCarriageway("N"), "LINESTRING(0 0, 1000 0, 2000 0)")
                .line(RoadAttributes.named("M1").withCarriageway("S"), "LINESTRING(2000 20, 1000 20, 0 20)")
                .road("Mill Road", "LINESTRING(1000 -200, 1000 0, 1000 20, 1000 300)")
                .road("Mill Road", "LINESTRING(2000 -200, 2000 0)")
                .network();
        List<RoadFinder.Crossing> crossings =
                new RoadFinder(network).crossings(network.findRoads("mill rd"), network.findRoads("m1"));
        assertThat(crossings).hasSize(2);
        assertThat(crossings.get(0).spreadMetres()).isEqualTo(20);
        assertThat(crossings.get(0).sharesNode()).isTrue();
        assertThat(crossings.get(1).spreadMetres()).isZero();
    }

    @Test
    void roadsThatOnlyPassOverEachOtherAreFoundToo() {
        RoadNetwork network = Sketch.of()
                .road("Mill Road", "LINESTRING(0 0, 400 0)")
                .line(RoadAttributes.named("M1").atLevel(1, Structure.BRIDGE), "LINESTRING(100 -50, 100 50)")
                .network();
        List<RoadFinder.Crossing> crossings =
                new RoadFinder(network).crossings(network.findRoads("Mill Road"), network.findRoads("M1"));
        assertThat(crossings)
                .containsExactly(new RoadFinder.Crossing(new LinkPoint(0, 100), new LinkPoint(1, 50), 0, false));
        assertThat(new RoadFinder(network).crossings(network.findRoads("Mill Road"), List.of()))
                .isEmpty();
    }

    @Test
    void theCourseOfAStretchBeginsAndEndsWhereItIsCut() {
        RoadNetwork network =
                Sketch.of().road("Mill Road", "LINESTRING(0 0, 100 0, 100 100)").network();
        assertThat(network.course(0, 50, 150)).containsExactly(50, 0, 100, 0, 100, 50);
        assertThat(network.course(0, 0, 200)).containsExactly(0, 0, 100, 0, 100, 100);
        assertThat(network.course(0, 100, 150)).containsExactly(100, 0, 100, 50);
        assertThat(network.bearingAt(0, 50)).isEqualTo(90);
        assertThat(network.bearingAt(0, 150)).isEqualTo(0);
        assertThatThrownBy(() -> network.pointAt(0, 201)).isInstanceOf(IllegalArgumentException.class);
    }
}
