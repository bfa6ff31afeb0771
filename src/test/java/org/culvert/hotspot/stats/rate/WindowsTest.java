package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.hotspot.stats.rate.Windows.Window;
import org.junit.jupiter.api.Test;

class WindowsTest {
    @Test
    void windowsMoveByTheirStepAndEndFlush() {
        var road = new RoadChainages("Mill Road", 1000, 2130, List.of(1000.0, 1500.0, 2130.0));
        List<Window> windows = Windows.moved(road, 500, 200);
        assertThat(windows)
                .extracting(Window::fromChainageMetres)
                .containsExactly(1000.0, 1200.0, 1400.0, 1600.0, 1630.0);
        assertThat(windows)
                .extracting(Window::toChainageMetres)
                .containsExactly(1500.0, 1700.0, 1900.0, 2100.0, 2130.0);
        assertThat(windows).extracting(Window::incidents).containsExactly(1, 1, 1, 0, 1);
        assertThat(windows.get(0).perKilometreYear(4)).isCloseTo(0.5, within(1e-12));
    }

    @Test
    void noWindowCrossesARoadsEndsNorLeavesAnyOfItOut() {
        for (long seed = 1; seed <= 60; seed++) {
            UniformRandomProvider random = RateScenes.random(seed);
            RoadChainages road = road(random);
            double width = 50 + 900 * random.nextDouble();
            double step = width * (0.05 + 0.95 * random.nextDouble());
            List<Window> windows = Windows.moved(road, width, step);
            double reached = road.fromChainageMetres();
            for (Window window : windows) {
                assertThat(window.fromChainageMetres())
                        .as("seed " + seed)
                        .isBetween(road.fromChainageMetres(), reached);
                assertThat(window.toChainageMetres()).as("seed " + seed).isLessThanOrEqualTo(road.toChainageMetres());
                assertThat(window.lengthMetres()).isCloseTo(Math.min(width, road.lengthMetres()), within(1e-6));
                assertThat(window.incidents()).isEqualTo(counted(road, window));
                reached = window.toChainageMetres();
            }
            assertThat(reached).as("seed " + seed).isEqualTo(road.toChainageMetres());
        }
    }

    @Test
    void segmentsShareNoIncidentAndLoseNone() {
        for (long seed = 1; seed <= 60; seed++) {
            UniformRandomProvider random = RateScenes.random(seed);
            RoadChainages road = road(random);
            double length = 20 + 400 * random.nextDouble();
            List<Window> segments = Windows.segments(road, length);
            double reached = road.fromChainageMetres();
            for (Window segment : segments) {
                assertThat(segment.fromChainageMetres()).isEqualTo(reached);
                assertThat(segment.lengthMetres())
                        .isLessThanOrEqualTo(length + 1e-6)
                        .isPositive();
                reached = segment.toChainageMetres();
            }
            assertThat(reached).isEqualTo(road.toChainageMetres());
            assertThat(segments.stream().mapToInt(Window::incidents).sum())
                    .as("seed " + seed)
                    .isEqualTo(road.chainagesMetres().size());
        }
    }

    @Test
    void incidentsRoundedToTheEdgesAreCountedOnce() {
        var road = new RoadChainages("a", 0, 1000, List.of(0.0, 100.0, 100.0, 500.0, 900.0, 1000.0));
        List<Window> segments = Windows.segments(road, 100);
        assertThat(segments).hasSize(10);
        assertThat(segments).extracting(Window::incidents).containsExactly(1, 2, 0, 0, 0, 1, 0, 0, 0, 2);
    }

    @Test
    void aRoadShorterThanAWindowIsOneWindow() {
        var road = new RoadChainages("a", 0, 300, List.of(10.0));
        assertThat(Windows.moved(road, 500, 100)).containsExactly(new Window("a", 0, 300, 1));
        assertThat(Windows.segments(road, 500)).containsExactly(new Window("a", 0, 300, 1));
    }

    @Test
    void bestWindowsApartShareNoRoad() {
        List<Windows.Estimated> windows = new ArrayList<>();
        var road = new RoadChainages("a", 0, 2000, List.of(400.0, 420.0, 430.0, 450.0, 1500.0, 1520.0));
        for (Window window : Windows.moved(road, 500, 100)) {
            windows.add(new Windows.Estimated(window, EmpiricalBayes.of(0.5, 1, window.incidents(), 0.95)));
        }
        List<Windows.Estimated> apart = Windows.bestApart(windows);
        assertThat(apart.get(0).window()).isEqualTo(new Window("a", 0, 500, 4));
        assertThat(apart.get(1).window().incidents()).isEqualTo(2);
        for (Windows.Estimated one : apart) {
            for (Windows.Estimated other : apart) {
                assertThat(one == other || !one.window().overlaps(other.window()))
                        .isTrue();
            }
        }
    }

    @Test
    void anIncidentOfUnknownPlaceAndAStepThatSkipsRoadAreRefused() {
        assertThatThrownBy(() -> new RoadChainages("a", 0, 100, List.of(Double.NaN)))
                .hasMessageContaining("counted apart");
        assertThatThrownBy(() -> new RoadChainages("a", 0, 100, List.of(101.0))).hasMessageContaining("not on road a");
        var road = new RoadChainages("a", 0, 1000, List.of());
        assertThatThrownBy(() -> Windows.moved(road, 100, 150)).hasMessageContaining("at most that");
    }

    @Test
    void stepsThatWouldMakeMillionsOfWindowsAreRefused() {
        var road = new RoadChainages("a", 0, 50_000, List.of());
        assertThatThrownBy(() -> Windows.moved(road, 500, 0.001)).hasMessageContaining("take a longer one");
        assertThatThrownBy(() -> Windows.segments(road, 0.001)).hasMessageContaining("take a longer one");
        assertThatThrownBy(() -> PeakSearch.search(road, 1, 0.3, PeakSearch.counts()))
                .hasMessageContaining("cut the road");
    }

    private static RoadChainages road(UniformRandomProvider random) {
        double from = 5000 * random.nextDouble();
        double to = from + 100 + 3000 * random.nextDouble();
        List<Double> chainages = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            chainages.add(from + (to - from) * random.nextDouble());
        }
        chainages.add(from);
        chainages.add(to);
        return new RoadChainages("a", from, to, chainages);
    }

    private static int counted(RoadChainages road, Window window) {
        boolean atTheEnd = window.toChainageMetres() == road.toChainageMetres();
        return (int) road.chainagesMetres().stream()
                .filter(at -> at >= window.fromChainageMetres()
                        && (at < window.toChainageMetres() || atTheEnd && at <= window.toChainageMetres()))
                .count();
    }
}
