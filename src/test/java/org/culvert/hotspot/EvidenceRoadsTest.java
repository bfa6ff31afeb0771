package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.culvert.hotspot.stats.Carriageways;
import org.culvert.hotspot.stats.Chance;
import org.culvert.road.network.LinkTraffic;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadLine;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.Structure;
import org.junit.jupiter.api.Test;

/**
 * A highway whose two carriageways run 30 m apart for 2 km, and a side road; a street of the same name far away.
 *
 * <pre>
 *   eastbound   0,0 ------------------------ 2000,0
 *   westbound   0,30 ----------------------- 2000,30
 *   side road               1000,0 | 1000,-500
 *   far away    9000,0 ---- 9500,0
 * </pre>
 */
class EvidenceRoadsTest {
    private final RoadNetwork network = network();
    private final EvidenceRoads roads = new EvidenceRoads(network, LinkTraffic.ofRoadsFile(network));

    private static RoadNetwork network() {
        var builder = NetworkBuilder.planar();
        builder.add(line("Highway", "motorway", 9000, "eastbound", 0, 0, 1000, 0, 2000, 0));
        builder.add(line("Highway", "motorway", 9000, "westbound", 0, 30, 2000, 30));
        builder.add(line("Side Road", "residential", null, null, 1000, 0, 1000, -500));
        builder.add(line("Side Road", "residential", 200, null, 9000, 0, 9500, 0));
        return builder.build().network();
    }

    private static RoadLine line(
            String name,
            String roadClass,
            @org.jspecify.annotations.Nullable Integer aadt,
            @org.jspecify.annotations.Nullable String carriageway,
            double... vertices) {
        return new RoadLine(
                name,
                new RoadAttributes(name, null, roadClass, null, aadt, "Shire", carriageway, 0, Structure.NONE),
                0.0,
                vertices);
    }

    private int linkAt(double x, double y) {
        return network.nearest(x, y).link();
    }

    @Test
    void theCarriagewaysOfARoadAreOneRoadOnTwoStrands() {
        int east = linkAt(500, 0);
        int west = linkAt(500, 30);
        assertThat(roads.chainage().road(east)).isEqualTo(roads.chainage().road(west));
        assertThat(roads.chainage().strand(east)).isNotEqualTo(roads.chainage().strand(west));
        assertThat(roads.chainage().strand(east)).isEqualTo(roads.chainage().strand(linkAt(1500, 0)));
    }

    @Test
    void roadsOfOneNameThatDoNotHangTogetherAreStrandsOfTheirOwn() {
        int here = linkAt(1000, -400);
        int far = linkAt(9200, 0);
        assertThat(roads.chainage().road(here)).isEqualTo(roads.chainage().road(far));
        assertThat(roads.chainage().strand(here)).isNotEqualTo(roads.chainage().strand(far));
    }

    @Test
    void besideOneCarriagewayLiesTheOther() {
        Carriageways.Place beside = roads.carriageways().beside(linkAt(500, 0), 500);
        assertThat(beside).isNotNull();
        assertThat(beside.link()).isEqualTo(linkAt(500, 30));
        assertThat(beside.metres()).isCloseTo(500, within(1e-6));
        assertThat(roads.carriageways().beside(linkAt(1000, -400), 100)).isNull();
    }

    @Test
    void trafficAndClassAreThoseOfTheLinksAndUnknownTrafficIsUnknown() {
        Chance.PerTrafficAndClass chance = roads.perTrafficAndClass();
        assertThat(chance.aadt()[linkAt(500, 0)]).isEqualTo(9000);
        assertThat(chance.aadt()[linkAt(1000, -400)]).isNaN();
        assertThat(chance.roadClass()[linkAt(500, 0)]).isEqualTo(chance.roadClass()[linkAt(500, 30)]);
        assertThat(chance.roadClass()[linkAt(500, 0)]).isNotEqualTo(chance.roadClass()[linkAt(9200, 0)]);
        assertThat(EvidenceRoads.owners(network)).containsExactly("Shire");
    }
}
