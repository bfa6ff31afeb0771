package org.culvert.road.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;
import org.culvert.geo.CheckFiles;
import org.junit.jupiter.api.Test;

class LinearReferenceTest {
    private static final double TOLERANCE = 1e-9;

    /** Source: PostGIS 3.3.2, ST_LineLocatePoint and ST_Distance; see checks/linref. */
    @Test
    void chainageAndOffsetAgreeWithPostgis() {
        Map<String, RoadNetwork> networks = new HashMap<>();
        List<CSVRecord> rows = CheckFiles.rows("linref/postgis_linref.csv");
        assertThat(rows).hasSize(70);
        int alternatives = 0;
        for (CSVRecord row : rows) {
            RoadNetwork network = networks.computeIfAbsent(
                    row.get("wkt"), wkt -> Sketch.of().road("Test Road", wkt).network());
            double length = network.graph().totalLength();
            SnapCandidate ours = network.nearest(number(row, "px"), number(row, "py"));
            assertThat(length).as(row.toString()).isCloseTo(number(row, "len"), within(TOLERANCE * length));
            assertThat(ours.offsetMetres()).as(row.toString()).isCloseTo(number(row, "offset_m"), within(TOLERANCE));
            if (Math.abs(ours.chainageMetres() - number(row, "chainage")) > 1e-6) {
                // Two points of the line are equally near: theirs must be as near as ours.
                double[] theirs = network.pointAt(0, Math.min(length, number(row, "chainage")));
                double apart = Math.hypot(theirs[0] - number(row, "px"), theirs[1] - number(row, "py"));
                assertThat(apart).as(row.toString()).isCloseTo(ours.offsetMetres(), within(TOLERANCE));
                alternatives++;
            } else {
                assertThat(ours.chainageMetres()).isCloseTo(number(row, "chainage"), within(TOLERANCE * length));
                assertThat(ours.x()).isCloseTo(number(row, "sx"), within(1e-9 * length));
                assertThat(ours.y()).isCloseTo(number(row, "sy"), within(1e-9 * length));
            }
        }
        assertThat(alternatives).isLessThan(10);
    }

    /** Source: PostGIS 3.3.2, nearest line of 19,403 for 500 points; see checks/linref. */
    @Test
    void nearestLinkAgreesWithPostgisOnALargeNetwork() {
        RoadNetwork network = synthetic();
        assertThat(network.linkCount()).isEqualTo(19_403);
        List<CSVRecord> rows = CheckFiles.rows("linref/snap500.csv");
        assertThat(rows).hasSize(500);
        for (CSVRecord row : rows) {
            SnapCandidate ours = network.nearest(number(row, "x"), number(row, "y"));
            assertThat(ours.offsetMetres()).as(row.toString()).isCloseTo(number(row, "d"), within(1e-6));
            assertThat(network.link(ours.link()).lineKey()).as(row.toString()).isEqualTo("edge " + row.get("road_id"));
            double length = network.graph().length(ours.link());
            assertThat(ours.metres() / length).isCloseTo(number(row, "frac"), within(1e-9));
        }
    }

    static RoadNetwork synthetic() {
        List<double[]> vertices = new ArrayList<>();
        for (CSVRecord row : CheckFiles.rows("synthnet/vertices.csv")) {
            vertices.add(new double[] {number(row, "x"), number(row, "y")});
        }
        NetworkBuilder builder = NetworkBuilder.planar();
        for (CSVRecord row : CheckFiles.rows("synthnet/edges.csv")) {
            double[] from = vertices.get(Integer.parseInt(row.get("from")) - 1);
            double[] to = vertices.get(Integer.parseInt(row.get("to")) - 1);
            double[] course = {from[0], from[1], to[0], to[1]};
            builder.add(new RoadLine("edge " + row.get("id"), RoadAttributes.UNKNOWN, null, course));
        }
        return builder.build().network();
    }

    private static double number(CSVRecord row, String name) {
        return Double.parseDouble(row.get(name));
    }
}
