package org.culvert.hotspot.works;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.culvert.road.network.LinkTraffic;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadLine;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.Structure;
import org.culvert.road.network.TrafficStation;
import org.junit.jupiter.api.Test;

/**
 * What is expected after works at the traffic of that time: with {@code mu = length * years * exp(b0) * AADT^b1} the ratio of
 * two expectations is that of the traffic to the power b1 (E. Hauer 1997, Observational Before-After Studies in Road Safety,
 * section 8.2, from memory).
 */
class TrafficChangeTest {
    private static final int[] VEHICLES = {500, 1000, 2000, 4000, 8000};
    private static final int[] STRUCK = {6, 9, 13, 17, 24};

    private final RoadNetwork network = network();

    /** Five roads of 10 km, side by side. */
    private static RoadNetwork network() {
        var builder = NetworkBuilder.planar();
        for (int road = 0; road < VEHICLES.length; road++) {
            builder.add(new RoadLine(
                    "Road " + road,
                    new RoadAttributes("Road " + road, null, "primary", null, null, null, null, 0, Structure.NONE),
                    0.0,
                    new double[] {0, 5000.0 * road, 10_000, 5000.0 * road}));
        }
        return builder.build().network();
    }

    private int link(int road) {
        return network.nearest(5000, 5000.0 * road).link();
    }

    private List<TrafficStation> stations() {
        List<TrafficStation> stations = new ArrayList<>();
        for (int road = 0; road < VEHICLES.length; road++) {
            TreeMap<Integer, Double> byYear = new TreeMap<>();
            byYear.put(2015, (double) VEHICLES[road]);
            // The last but one grew by half, and of the last nobody knows what became of it
            if (road < VEHICLES.length - 1) {
                byYear.put(2020, VEHICLES[road] * (road == VEHICLES.length - 2 ? 1.5 : 1));
            }
            stations.add(new TrafficStation(link(road), 4000, new int[0], true, byYear));
        }
        return stations;
    }

    private List<Collisions.Placed> collisions() {
        List<Collisions.Placed> placed = new ArrayList<>();
        for (int road = 0; road < VEHICLES.length; road++) {
            for (int i = 0; i < STRUCK[road]; i++) {
                placed.add(new Collisions.Placed(
                        LocalDate.of(2015, 3, 1), link(road), 300 + 395.0 * i, 10, Set.of("turtles"), true));
            }
        }
        return placed;
    }

    @Test
    void whatIsExpectedAfterIsExpectedAtTheTrafficOfThatTime() {
        LinkTraffic before = LinkTraffic.of(network, stations(), 2015, 2015);
        LinkTraffic after = LinkTraffic.of(network, stations(), 2020, 2020);
        var change = new TrafficChange(before, after);
        RoadPieces pieces = RoadPieces.of(network, before::vehiclesPerDay);
        RoadModel model = RoadModel.of(pieces, collisions(), List.of(), Set.of("primary"), 1000, 1)
                .later(RoadPieces.of(network, change::vehiclesPerDayAfter));
        var fit = model.performance().fit();
        double slope = fit.coefficients().get(fit.names().indexOf("log AADT"));
        assertThat(slope).isBetween(0.2, 0.8);

        List<RoadPieces.Part> grown = pieces.requireStretch("", "Road 3", 2000, 4000);
        assertThat(model.expectedLater(grown.get(0), 3) / model.expected(grown.get(0), 3))
                .isCloseTo(Math.pow(1.5, slope), within(1e-9));
        assertThat(change.words(model, pieces, grown).get(0))
                .contains("on 2000 m", "was 4000 vehicles a day before and 6000 after");
        List<RoadPieces.Part> same = pieces.requireStretch("", "Road 1", 2000, 4000);
        assertThat(model.expectedLater(same.get(0), 3)).isEqualTo(model.expected(same.get(0), 3));
        // Nobody counted the last road after, and a figure is not carried on: nothing is made of it
        List<RoadPieces.Part> unknown = pieces.requireStretch("", "Road 4", 2000, 4000);
        assertThat(after.basis(link(4))).isEqualTo(LinkTraffic.Basis.UNKNOWN);
        assertThat(model.expectedLater(unknown.get(0), 3)).isEqualTo(model.expected(unknown.get(0), 3));
        assertThat(change.words(model, pieces, unknown).get(0)).startsWith("No station counted traffic here both");
    }
}
