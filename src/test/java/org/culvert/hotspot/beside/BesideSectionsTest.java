package org.culvert.hotspot.beside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.hotspot.beside.Scenes.event;
import static org.culvert.hotspot.beside.Scenes.hotspot;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.culvert.hotspot.stats.Hotspot;
import org.culvert.hotspot.stats.RecordDoubts;
import org.junit.jupiter.api.Test;

/** Sections whose figures follow by hand from a road of 10 km. */
class BesideSectionsTest {
    private static final LocalDate FROM = LocalDate.of(2015, 7, 1);

    private static IsItLasting lasting(LocalDate to, IsItLasting.Search search) {
        return IsItLasting.ask(List.of(hotspot(1, 0, 1000, 1400), hotspot(2, 1, 0, 100)), FROM, to, 199, search);
    }

    /** Seven years have five windows; the first hotspot is found in 1, 4 and 5, of which 1 and 4 share no year. */
    @Test
    void aHotspotLastsThroughTheWindowsInWhichHalfOfItIsFoundAgain() {
        IsItLasting lasting = lasting(LocalDate.of(2022, 6, 30), (first, last) -> {
            assertThat(last).isEqualTo(first.plusYears(3).minusDays(1));
            List<Hotspot> found = switch (first.getYear()) {
                case 2015, 2018 -> List.of(hotspot(1, 0, 1200, 2000));
                case 2016 -> List.of(hotspot(1, 0, 1250, 2000));
                case 2019 -> List.of(hotspot(1, 0, 900, 1100), hotspot(2, 0, 1150, 1300));
                default -> List.of();
            };
            return new IsItLasting.Found(20, found, first.getYear() == 2017 ? "nothing to compare with" : null);
        });
        assertThat(lasting.windows()).hasSize(5);
        assertThat(lasting.windows().get(2).hotspots()).isNull();
        assertThat(lasting.windows().get(2).why()).isEqualTo("nothing to compare with");
        assertThat(lasting.windows().get(4).to()).isEqualTo(LocalDate.of(2022, 6, 30));
        assertThat(lasting.hotspots())
                .containsExactly(
                        new IsItLasting.Lasting(1, List.of(1, 4, 5), 3, 2),
                        new IsItLasting.Lasting(2, List.of(), 0, 0));
        assertThat(lasting.sentence()).contains("5 windows of 3 years", "199 simulated sets");
    }

    @Test
    void underFourYearsNothingIsSearchedAndItIsSaid() {
        IsItLasting lasting = lasting(LocalDate.of(2019, 6, 29), (first, last) -> {
            throw new AssertionError("searched");
        });
        assertThat(lasting.windows()).isEmpty();
        assertThat(lasting.sentence()).contains("it takes 4 years");
        assertThat(lasting(LocalDate.of(2019, 6, 30), (first, last) -> new IsItLasting.Found(0, List.of(), null))
                        .windows())
                .hasSize(2);
    }

    @Test
    void aHotspotStaysWhereHalfOfTheShorterStretchLiesOnTheOther() {
        Sensitivity sensitivity = Sensitivity.ask(
                List.of(hotspot(1, 0, 1000, 1400), hotspot(2, 1, 0, 100)),
                500,
                199,
                times -> times < 1
                        ? List.of(hotspot(1, 0, 1100, 1200))
                        : List.of(hotspot(1, 0, 1300, 2000), hotspot(2, 2, 0, 500), hotspot(3, 1, 50, 900)));
        assertThat(sensitivity.bandwidths())
                .containsExactly(
                        new Sensitivity.Bandwidth(0.5, 250, 1, List.of(1), List.of(2), 0),
                        new Sensitivity.Bandwidth(2, 1000, 3, List.of(2), List.of(1), 2));
    }

    @Test
    void yearsAndSurenessOfPlacesAreCounted() {
        var incidents = new TreeMap<Integer, Integer>();
        incidents.put(2019, 10);
        incidents.put(2020, 30);
        incidents.put(2021, 4);
        List<DatedEvent> group = List.of(
                event(0, 1, "2019-05-01", 0, 10),
                event(0, 1, "2020-05-01", 0, 25),
                event(0, 1, "2020-05-02", 1000, 500),
                event(0, 1, "2021-01-02", 0, 2000));
        List<DatedEvent> all = new ArrayList<>(group);
        all.add(event(1, 1, "2020-09-09"));
        RestsOn rests = RestsOn.of(
                group,
                all,
                incidents,
                LocalDate.of(2019, 1, 1),
                LocalDate.of(2021, 3, 31),
                new RecordDoubts(2, 0.123, List.of()));
        assertThat(rests.years())
                .containsExactly(
                        new RestsOn.Year(2019, true, 10, 1, 1),
                        new RestsOn.Year(2020, true, 30, 3, 2),
                        new RestsOn.Year(2021, false, 4, 1, 1));
        assertThat(rests.aboutYears()).contains("3 times as many");
        assertThat(rests.positions()).extracting(RestsOn.Band::collisions).containsExactly(2, 0, 0, 1, 0, 1);
        assertThat(rests.positions().get(0).share()).isEqualTo(0.5);
        assertThat(rests.positions().get(5).toMetres()).isNull();
        assertThat(rests.roundedPositions()).isEqualTo(1);
        assertThat(rests.closePairs()).isEqualTo(2);
        assertThat(rests.closePairsExpected()).isEqualTo(0.12);
        assertThat(rests.caveats().get(0).source()).contains("Santos");
        assertThat(RestsOn.of(List.of(), List.of(), new TreeMap<>(), FROM, FROM, new RecordDoubts(0, 0, List.of()))
                        .positions()
                        .get(0)
                        .share())
                .isNull();
    }

    /**
     * Thirteen segments of a kilometre and 26 collisions, eight on one, one or two on each other. Two are expected on each; P(X
     * >= 8) of a Poisson count of mean 2 is 0.001097, and thirteen times that is 0.0143.
     */
    @Test
    void otherMethodsNameTheKilometreWithEight() {
        List<DatedEvent> events = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            events.add(event(0, 2450 + 10 * i, "2020-01-0" + (1 + i)));
        }
        for (int i = 0; i < 12; i++) {
            int segment = i < 2 ? i : i + 1;
            int link = segment / 5;
            double start = 1000 * (segment % 5);
            events.add(event(link, start + 500, "2020-02-01"));
            if (i % 2 == 1) {
                events.add(event(link, start + 700, "2020-02-01"));
            }
        }
        Secondary secondary = SecondaryViews.of(Scenes.scene(), Scenes.chainage(), events, 500, 3, 1, 2);
        assertThat(secondary.sentence()).contains("claim nothing");
        assertThat(secondary.segments().tested()).isEqualTo(13);
        assertThat(secondary.segments().found()).hasSize(1);
        Secondary.Segment segment = secondary.segments().found().get(0);
        assertThat(segment.road()).isEqualTo("Long Road");
        assertThat(segment.fromChainageMetres()).isEqualTo(2000);
        assertThat(segment.toChainageMetres()).isEqualTo(3000);
        assertThat(segment.incidents()).isEqualTo(8);
        assertThat(segment.expected()).isCloseTo(2, within(1e-9));
        assertThat(segment.adjustedP()).isEqualTo(0.0143);
        assertThat(secondary.segments().method()).contains("Poisson's distribution");
        assertThat(secondary.groups().count()).isEqualTo(1);
        assertThat(secondary.groups().largest().get(0)).isEqualTo(new Secondary.Group("Long Road", 2450, 2520, 8));
        assertThat(secondary.groupsOfAnyDensity().count()).isPositive();
        assertThat(secondary.groupsOfAnyDensity().epsMetres()).isNull();
        // With the scattered ones around, which leave it one by one as the distance falls
        Secondary.Group dense = secondary.groupsOfAnyDensity().largest().get(0);
        assertThat(dense.road()).isEqualTo("Long Road");
        assertThat(dense.fromChainageMetres()).isLessThanOrEqualTo(2450);
        assertThat(dense.toChainageMetres()).isGreaterThanOrEqualTo(2520);
        assertThat(dense.incidents()).isBetween(8, 12);
        assertThat(secondary.togetherCorrected().method()).contains("Ang, Baddeley and Nair 2012");
        assertThat(secondary.togetherCorrected().dclfP()).isLessThanOrEqualTo(0.05);
        assertThat(secondary.groups().ungrouped()).isEqualTo(18);
        assertThat(secondary.together().simulations()).isEqualTo(99);
        assertThat(secondary.together().nearer()).isTrue();
        assertThat(secondary.together().madP()).isLessThanOrEqualTo(0.05);
        assertThat(secondary.together().radiiMetres()).hasSize(10).endsWith(2000.0);
        List<DatedEvent> turned = new ArrayList<>(events);
        java.util.Collections.reverse(turned);
        assertThat(SecondaryViews.of(Scenes.scene(), Scenes.chainage(), turned, 500, 3, 1, 1))
                .isEqualTo(secondary);
    }

    @Test
    void otherMethodsHaveNothingToSayOfNothing() {
        Secondary secondary = SecondaryViews.of(Scenes.scene(), Scenes.chainage(), List.of(), 500, 3, 1, 1);
        assertThat(secondary.segments().found()).isEmpty();
        assertThat(secondary.groups().count()).isZero();
        assertThat(secondary.together().madP()).isNull();
    }
}
