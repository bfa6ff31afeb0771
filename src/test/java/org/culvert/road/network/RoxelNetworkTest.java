package org.culvert.road.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.culvert.geo.Bounds;
import org.culvert.geo.CheckFiles;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.junit.jupiter.api.Test;

/** A real village network; see src/test/resources/roads/ATTRIBUTION.md. */
class RoxelNetworkTest {
    @Test
    void aVillageIsJoinedMeasuredAndNamed() throws JsonProcessingException {
        NetworkBuilder.Built built = roxel();
        assertThat(built.report().lines()).isEqualTo(851);
        assertThat(built.report().linesUsed()
                        + built.report().leftOut().values().stream()
                                .mapToInt(i -> i)
                                .sum())
                .isEqualTo(851);
        assertThat(built.report().joinedNodes()).isGreaterThan(400);
        RoadNetwork network = built.network();
        assertThat(network.findRoads("Havixbecker Str")).hasSize(1);
        double sum = 0;
        for (int link = 0; link < network.linkCount(); link++) {
            double[] course = network.link(link).vertices();
            for (int i = 2; i < course.length; i += 2) {
                sum += Geodesy.metresBetween(
                        new Position(course[i - 1], course[i - 2]), new Position(course[i + 1], course[i]));
            }
        }
        assertThat(network.graph().totalLength()).isCloseTo(sum, within(1e-6));
        assertThat(largestPart(network)).as("links that hang together").isGreaterThan(network.linkCount() * 9 / 10);
    }

    @Test
    void linksInABoxAreThoseThatHaveAPartInIt() throws JsonProcessingException {
        RoadNetwork network = roxel().network();
        assertThat(network.linksIn(new Bounds(-90, -180, 90, 180))).hasSize(network.linkCount());
        assertThat(network.linksIn(new Bounds(0, 0, 1, 1))).isEmpty();
        Bounds box = new Bounds(51.954, 7.531, 51.957, 7.536);
        int[] found = network.linksIn(box);
        assertThat(found.length).isBetween(10, network.linkCount() / 4);
        for (int link = 0; link < network.linkCount(); link++) {
            double[] course = network.link(link).vertices();
            for (int i = 0; i < course.length; i += 2) {
                if (box.contains(new Position(course[i + 1], course[i]))) {
                    assertThat(found).contains(link);
                }
            }
        }
    }

    private static int largestPart(RoadNetwork network) {
        NetworkDistances distances = NetworkDistances.inMetres(network.graph());
        distances.searchFrom(
                new LinkPoint(network.findRoads("Havixbecker Strasse").get(0).links()[0], 0), 1e9);
        int reached = 0;
        for (int link = 0; link < network.linkCount(); link++) {
            if (Double.isFinite(distances.costOf(network.graph().from(link)))) {
                reached++;
            }
        }
        return reached;
    }

    static NetworkBuilder.Built roxel() throws JsonProcessingException {
        JsonNode features = new ObjectMapper()
                .readTree(CheckFiles.text("/roads/roxel.geojson"))
                .get("features");
        NetworkBuilder builder = NetworkBuilder.geographic();
        int number = 0;
        for (JsonNode feature : features) {
            number++;
            JsonNode coordinates = feature.get("geometry").get("coordinates");
            double[] vertices = new double[2 * coordinates.size()];
            for (int i = 0; i < coordinates.size(); i++) {
                vertices[2 * i] = coordinates.get(i).get(0).asDouble();
                vertices[2 * i + 1] = coordinates.get(i).get(1).asDouble();
            }
            JsonNode name = feature.get("properties").get("name");
            RoadAttributes attributes = RoadAttributes.UNKNOWN
                    .withRoadName(name == null || name.isNull() ? null : name.asText())
                    .withRoadClass(feature.get("properties").get("type").asText());
            builder.add(new RoadLine("line " + number, attributes, null, vertices));
        }
        return builder.build();
    }
}
