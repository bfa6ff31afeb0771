package org.culvert.road.osm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.platform.InvalidException;
import org.culvert.platform.file.ReadingWatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class OsmExtractTest {
    private static final Map<String, String> ROAD = Map.of("highway", "primary");

    private static List<OsmExtract.Way> read(byte[] octets) {
        try (OsmExtract extract = OsmExtract.open(new ByteArrayInputStream(octets))) {
            return extract.ways(tags -> tags.containsKey("highway"), ReadingWatch.NOBODY);
        }
    }

    private static InvalidException.FieldError refused(byte[] octets) {
        try {
            read(octets);
        } catch (InvalidException refused) {
            return refused.errors().get(0);
        }
        throw new AssertionError("it was read");
    }

    private static OsmFile roads() {
        return new OsmFile()
                .way(11, Map.of("highway", "primary", "name", "Mühlenstraße"), 150, -30.5, 150.1, -30.5, 150.2, -30.4)
                .way(12, Map.of("building", "yes"), 150, -30, 150.1, -30, 150, -30)
                .way(7, Map.of("highway", "track"), 150.1, -30.5, 150.1, -30.6);
    }

    @Test
    void waysComeWithTheirTagsAndPositionsWhicheverWayTheyAreWritten() {
        for (OsmFile file : List.of(roads(), roads().plainly())) {
            List<OsmExtract.Way> ways = read(file.octets());
            assertThat(ways).extracting(OsmExtract.Way::id).containsExactly(11L, 7L);
            assertThat(ways.get(0).tags()).containsEntry("name", "Mühlenstraße");
            assertThat(ways.get(0).courses()).hasSize(1);
            assertThat(ways.get(0).courses().get(0))
                    .containsExactly(new double[] {150, -30.5, 150.1, -30.5, 150.2, -30.4}, within(1e-9));
            assertThat(ways.get(1).courses().get(0))
                    .as("the same node is the same position to the bit")
                    .startsWith(
                            ways.get(0).courses().get(0)[2],
                            ways.get(0).courses().get(0)[3]);
        }
    }

    @Test
    void aWayThatLeavesTheExtractIsCut() {
        List<OsmExtract.Way> ways = read(new OsmFile()
                .cutWay(1, ROAD, new double[] {150, -30, 151, -30}, new double[] {152, -30, 153, -30})
                .cutWay(2, ROAD, new double[] {150, -30}, new double[] {152, -30})
                .octets());
        assertThat(ways.get(0).courses()).hasSize(2);
        assertThat(ways.get(1).courses()).isEmpty();
    }

    @Test
    void whatIsNoExtractIsRefused() {
        byte[] roads = roads().octets();
        assertThat(refused(new byte[0]).detail()).contains("damaged, or no extract");
        assertThat(refused("<osm version='0.6'/>".getBytes(java.nio.charset.StandardCharsets.UTF_8))
                        .field())
                .isEqualTo("body");
        assertThat(refused(new byte[5000]).field()).isEqualTo("body");
        assertThat(refused(roads().requiring("HistoricalInformation").octets()).detail())
                .contains("HistoricalInformation");
        for (int length : List.of(3, 20, roads.length / 2, roads.length - 1)) {
            assertThat(refused(Arrays.copyOf(roads, length)).field()).isEqualTo("body");
        }
    }

    @Test
    @Timeout(120)
    void whateverOctetsAreChangedReadingEnds() {
        int refused = 0;
        for (OsmFile file : List.of(roads(), roads().plainly())) {
            byte[] octets = file.octets();
            for (int seed = 1; seed <= 1000; seed++) {
                UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
                byte[] changed = octets.clone();
                for (int i = random.nextInt(1, 8); i > 0; i--) {
                    changed[random.nextInt(changed.length)] = (byte) random.nextInt(256);
                }
                try {
                    read(changed);
                } catch (InvalidException wrong) {
                    assertThat(wrong.errors()).as("seed %s", seed).hasSize(1);
                    refused++;
                }
            }
        }
        assertThat(refused).isPositive();
    }
}
