package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.culvert.hotspot.stats.rate.StretchCounts.Cell;
import org.culvert.hotspot.stats.rate.StretchCounts.Choice;
import org.culvert.hotspot.stats.rate.StretchCounts.Collision;
import org.culvert.hotspot.stats.rate.StretchCounts.Count;
import org.culvert.hotspot.stats.rate.StretchCounts.Stretch;
import org.junit.jupiter.api.Test;

class StretchCountsTest {
    private static final Stretch STRETCH = new Stretch("Mill Road", 2000, 3000, Choice.BEFORE_LOOKING);

    @Test
    void whatLiesOnTheStretchIsCountedByYearSeasonAndGroup() {
        List<Collision> collisions = new ArrayList<>(List.of(
                at(2000, 10, 2021, "spring", "wallabies"),
                at(3000, 10, 2021, "spring", "wallabies"),
                at(2500, 10, 2023, "autumn", "turtles"),
                at(2500, 10, 2023, "autumn", "wallabies"),
                at(1999, 0, 2022, "autumn", "wallabies"),
                at(2500, 10, 2020, "autumn", "wallabies"),
                new Collision("Church Road", 2500, 10, 2022, "autumn", "wallabies")));
        StretchCounts counts = StretchCounts.of(STRETCH, collisions, 2021, 2024, null);
        assertThat(counts.incidents()).isEqualTo(4);
        assertThat(counts.byYear())
                .containsExactly(
                        new Count("2021", 2), new Count("2022", 0), new Count("2023", 2), new Count("2024", 0));
        assertThat(counts.bySeason()).containsExactly(new Count("autumn", 2), new Count("spring", 2));
        assertThat(counts.byGroup()).containsExactly(new Count("turtles", 1), new Count("wallabies", 3));
        assertThat(counts.cells())
                .containsExactly(
                        new Cell(2021, "spring", "wallabies", 2),
                        new Cell(2023, "autumn", "turtles", 1),
                        new Cell(2023, "autumn", "wallabies", 1));
        assertThat(counts.perKilometreYear()).isCloseTo(1, within(1e-12));
        assertThat(counts.expected()).isNull();
        Collections.reverse(collisions);
        assertThat(StretchCounts.of(STRETCH, collisions, 2021, 2024, null)).isEqualTo(counts);
    }

    @Test
    void uncertainPlacesAreToldApart() {
        StretchCounts counts = StretchCounts.of(
                STRETCH,
                List.of(
                        at(2500, 100, 2021, "s", "g"),
                        at(2400, 100, 2021, "s", "g"),
                        at(2050, 100, 2021, "s", "g"),
                        at(2500, Double.NaN, 2021, "s", "g"),
                        at(1950, 100, 2021, "s", "g"),
                        at(1950, Double.NaN, 2021, "s", "g"),
                        at(3200, 100, 2021, "s", "g")),
                2021,
                2021,
                null);
        assertThat(counts.incidents()).isEqualTo(4);
        assertThat(counts.perhapsElsewhere()).isEqualTo(1);
        assertThat(counts.perhapsHere()).isEqualTo(1);
        assertThat(counts.ofUnknownUncertainty()).isEqualTo(1);
    }

    @Test
    void expectedIsTheEmpiricalBayesEstimateOfTheCount() {
        List<Collision> collisions = List.of(at(2100, 10, 2021, "s", "g"), at(2200, 10, 2022, "s", "g"));
        StretchCounts counts =
                StretchCounts.of(STRETCH, collisions, 2021, 2024, new StretchCounts.Prediction(1.2, 0.8, 0.9));
        assertThat(counts.expected()).isEqualTo(EmpiricalBayes.of(1.2, 0.8, 2, 0.9));
    }

    /** Santos and others 2016, PLoS ONE 11(11) e0165608: recorded rates underestimated the actual ones 2 to 10 fold. */
    @Test
    void whatMayStandBehindTheReportsIsKeptApart() {
        var multiplier = new UnderReporting(2, 10, "Santos and others 2016");
        UnderReporting.Behind behind = multiplier.behind(4.5);
        assertThat(behind.low()).isEqualTo(9);
        assertThat(behind.high()).isEqualTo(45);
        assertThat(behind.source()).isEqualTo("Santos and others 2016");
        assertThatThrownBy(() -> new UnderReporting(0.5, 10, "x")).hasMessageContaining("1 or more");
        assertThatThrownBy(() -> new UnderReporting(2, 10, " ")).hasMessageContaining("source");
    }

    @Test
    void aChoiceNobodyExplainedIsTakenForOneMadeAfterLooking() {
        assertThat(Choice.NOT_STATED.sentence()).contains("take it that it was");
        assertThat(Choice.AFTER_LOOKING.sentence()).contains("overstates");
    }

    @Test
    void aStretchThatEndsBeforeItStartsIsRefused() {
        assertThatThrownBy(() -> new Stretch("a", 10, 10, Choice.NOT_STATED)).hasMessageContaining("greater");
        assertThatThrownBy(() -> StretchCounts.of(STRETCH, List.of(), 2022, 2021, null))
                .hasMessageContaining("before the first");
        assertThatThrownBy(() -> at(Double.NaN, 1, 2021, "s", "g")).hasMessageContaining("counted elsewhere");
    }

    private static Collision at(double chainage, double uncertainty, int year, String season, String group) {
        return new Collision("Mill Road", chainage, uncertainty, year, season, group);
    }
}
