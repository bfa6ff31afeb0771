package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.stats.Checks;
import org.culvert.hotspot.stats.rate.PeakSearch.Measured;
import org.culvert.hotspot.stats.rate.PeakSearch.Result;
import org.junit.jupiter.api.Test;

class PeakSearchTest {
    private static final double TENTH_OF_A_MILE = 160.9344;

    /** The worked example of the Highway Safety Manual, AASHTO 2010, chapter 4: .35 passes at the peak, .30 does not. */
    @Test
    void publishedExampleComesOut() {
        JsonNode check = Checks.json("eb/hsm_peaksearch.json");
        RoadChainages road = road(check.get("counts"));
        Result passes = PeakSearch.search(road, TENTH_OF_A_MILE, 0.35, PeakSearch.counts());
        List<Measured> windows = passes.rounds().get(0).windows();
        assertThat(windows).hasSize(9);
        for (int i = 0; i < 9; i++) {
            assertThat(windows.get(i).precision().standardDeviation())
                    .isCloseTo(check.get("sd").asDouble(), within(1e-9));
            double variation = windows.get(i).precision().coefficientOfVariation();
            if (check.get("cv").get(i).isNull()) {
                assertThat(variation).isNaN();
            } else {
                assertThat(variation).isCloseTo(check.get("cv").get(i).asDouble(), within(1e-9));
            }
        }
        assertThat(passes.rounds()).hasSize(1);
        assertThat(passes.peaks()).containsExactly(windows.get(2));
        Result wider = PeakSearch.search(road, TENTH_OF_A_MILE, 0.30, PeakSearch.counts());
        assertThat(wider.rounds().size()).isGreaterThan(1);
        assertThat(wider.rounds().get(1).windowMetres()).isCloseTo(2 * TENTH_OF_A_MILE, within(1e-9));
    }

    @Test
    void windowsWidenUntilTheEstimateIsPreciseEnough() {
        List<Double> chainages = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            chainages.add(950.0 + 20 * i);
        }
        var road = new RoadChainages("a", 0, 3000, chainages);
        PeakSearch.Measure measure = PeakSearch.empiricalBayes(
                window -> window.lengthMetres() / 1000, window -> 1000 / window.lengthMetres());
        Result narrow = PeakSearch.search(road, 100, 0.9, measure);
        assertThat(narrow.rounds()).hasSize(1);
        Result wide = PeakSearch.search(road, 100, 0.38, measure);
        assertThat(wide.isFound()).isTrue();
        Measured peak = wide.peaks().get(0);
        assertThat(peak.window().incidents()).isEqualTo(6);
        assertThat(peak.precision().coefficientOfVariation())
                .as("1 / sqrt(1/k + x)")
                .isCloseTo(1 / Math.sqrt(peak.window().lengthMetres() / 1000 + 6), within(1e-9));
        assertThat(wide.rounds().size())
                .isEqualTo((int) Math.round(peak.window().lengthMetres() / 100));
    }

    @Test
    void aRoadTooQuietForTheLimitHasNoPeakAndEndsWithTheWholeRoad() {
        var road = new RoadChainages("a", 0, 950, List.of(400.0));
        Result result = PeakSearch.search(
                road, 100, 0.2, PeakSearch.empiricalBayes(window -> window.lengthMetres() / 1000, window -> 0.5));
        assertThat(result.isFound()).isFalse();
        assertThat(result.rounds()).hasSize(10);
        assertThat(result.rounds().get(9).windows()).hasSize(1);
        assertThat(result.rounds().get(9).windowMetres()).isEqualTo(950);
    }

    private static RoadChainages road(JsonNode counts) {
        List<Double> chainages = new ArrayList<>();
        for (int i = 0; i < counts.size(); i++) {
            for (int j = 0; j < counts.get(i).asInt(); j++) {
                chainages.add((i + 0.5) * TENTH_OF_A_MILE);
            }
        }
        return new RoadChainages("a", 0, 8.5 * TENTH_OF_A_MILE, chainages);
    }
}
