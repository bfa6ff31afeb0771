package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.hotspot.stats.rate.RoadProfile.Section;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Basis;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Dispersion;
import org.culvert.hotspot.stats.rate.Screening.Screened;
import org.junit.jupiter.api.Test;

class ScreeningTest {
    private static final Screening.Settings SETTINGS =
            new Screening.Settings(new SafetyPerformance.Settings(Dispersion.PER_KILOMETRE, 5), 500, 500, 100, 5, 0.95);

    @Test
    void aPlantedStretchComesBeforeThoseThatAreAsTheirLikeAre() {
        int found = 0;
        for (long seed = 1; seed <= 20; seed++) {
            List<RoadProfile> profiles = network(seed);
            Screening screening = Screening.of(profiles, SETTINGS);
            Screened best = screening.windows().get(0);
            assertThat(best.basis()).isEqualTo(Basis.RISK);
            found += best.window().road().equals("road 4")
                            && best.window().fromChainageMetres() < 2500
                            && best.window().toChainageMetres() > 2000
                    ? 1
                    : 0;
            for (int i = 0; i < screening.windows().size(); i++) {
                assertThat(screening.windows().get(i).rank()).isEqualTo(i + 1);
            }
        }
        assertThat(found).isGreaterThanOrEqualTo(18);
    }

    @Test
    void orderOfRoadsAndIncidentsChangesNothing() {
        List<RoadProfile> profiles = new ArrayList<>(network(4));
        Screening screening = Screening.of(profiles, SETTINGS);
        Collections.reverse(profiles);
        Screening other = Screening.of(profiles, SETTINGS);
        assertThat(other.windows()).hasSameSizeAs(screening.windows());
        for (int i = 0; i < other.windows().size(); i++) {
            assertThat(other.windows().get(i).window())
                    .isEqualTo(screening.windows().get(i).window());
        }
        assertThat(Screening.of(profiles, SETTINGS)).isEqualTo(other);
    }

    @Test
    void sitesAreCutWhereSectionsChangeAndLoseNoIncident() {
        var road = new RoadChainages("a", 100, 1850, List.of(100.0, 700.0, 700.0, 1200.0, 1850.0));
        var profile = new RoadProfile(
                road,
                List.of(
                        new Section(100, 700, 500, "local", false),
                        new Section(700, 1200, Double.NaN, "main", true),
                        new Section(1200, 1850, 900, "main", false)));
        List<Site> sites = profile.sites(500, 2);
        assertThat(sites).extracting(Site::lengthMetres).containsExactly(500.0, 100.0, 500.0, 500.0, 150.0);
        assertThat(sites).extracting(Site::incidents).containsExactly(1, 0, 2, 1, 1);
        assertThat(sites).extracting(Site::treated).containsExactly(false, false, true, false, false);
        assertThat(profile.isTreated(650, 701)).isTrue();
        assertThat(profile.isTreated(600, 700)).isFalse();
    }

    @Test
    void whatIsExpectedOfPartsAddsUp() {
        RoadProfile profile = network(6).get(2);
        SafetyPerformance performance = Screening.of(network(6), SETTINGS).performance();
        double end = profile.road().toChainageMetres();
        double whole = profile.expected(performance, 0, end, 5);
        double parts = profile.expected(performance, 0, 1234, 5) + profile.expected(performance, 1234, end, 5);
        assertThat(parts).isCloseTo(whole, within(1e-9 * whole));
        assertThat(profile.expected(performance, -500, end + 500, 5)).isCloseTo(whole, within(1e-9 * whole));
    }

    @Test
    void roadsOfWhichNothingIsExpectedAreNamed() {
        List<RoadProfile> profiles = new ArrayList<>(network(2));
        profiles.add(new RoadProfile(
                new RoadChainages("bypass", 0, 2000, List.of(5.0)),
                List.of(new Section(0, 2000, 9000, "motorway", true))));
        Screening screening = Screening.of(profiles, SETTINGS);
        assertThat(screening.notScreened()).hasSize(1);
        assertThat(screening.notScreened().get(0).id()).isEqualTo("bypass");
        assertThat(screening.notScreened().get(0).reason()).contains("motorway");
        assertThat(screening.windows())
                .isNotEmpty()
                .noneMatch(one -> one.window().road().equals("bypass"));
    }

    @Test
    void roadsWithoutIncidentsGiveAReasonAndNoWindows() {
        var profile = new RoadProfile(
                new RoadChainages("a", 0, 5000, List.of()), List.of(new Section(0, 5000, 400, "local", false)));
        Screening screening = Screening.of(List.of(profile), SETTINGS);
        assertThat(screening.windows()).isEmpty();
        assertThat(screening.performance().fit().remark()).contains("zero");
    }

    @Test
    void sectionsThatLeaveAGapAreRefused() {
        var road = new RoadChainages("a", 0, 1000, List.of());
        assertThatThrownBy(() -> new RoadProfile(
                        road, List.of(new Section(0, 400, 5, "x", false), new Section(450, 1000, 5, "x", false))))
                .hasMessageContaining("gap");
        assertThatThrownBy(() -> new RoadProfile(road, List.of(new Section(0, 400, 5, "x", false))))
                .hasMessageContaining("and the road at 1000");
    }

    /** Twelve roads of 6 km, half of them ten times as busy; road 4 is busy and has 16 incidents more from 2,000 to 2,500 m. */
    private static List<RoadProfile> network(long seed) {
        UniformRandomProvider random = RateScenes.random(seed);
        List<RoadProfile> profiles = new ArrayList<>();
        for (int road = 0; road < 12; road++) {
            boolean busy = road % 2 == 0;
            List<Double> chainages = new ArrayList<>();
            for (int cell = 0; cell < 12; cell++) {
                int count = RateScenes.poisson(random, RateScenes.gamma(random, busy ? 5 : 0.6, 0.2));
                for (int i = 0; i < count; i++) {
                    chainages.add(500 * (cell + random.nextDouble()));
                }
            }
            for (int i = 0; road == 4 && i < 16; i++) {
                chainages.add(2000 + 500 * random.nextDouble());
            }
            double aadt = busy ? 8000 : 800;
            profiles.add(new RoadProfile(
                    new RoadChainages("road " + road, 0, 6000, chainages),
                    List.of(
                            new Section(0, 2600, aadt, "local", false),
                            new Section(2600, 6000, aadt * 1.1, "local", false))));
        }
        return profiles;
    }
}
