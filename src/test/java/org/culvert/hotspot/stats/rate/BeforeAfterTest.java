package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.stats.Checks;
import org.culvert.hotspot.stats.rate.BeforeAfter.Note;
import org.culvert.hotspot.stats.rate.BeforeAfter.PartEffect;
import org.culvert.hotspot.stats.rate.BeforeAfter.Study;
import org.culvert.hotspot.stats.rate.TreatedStretch.Part;
import org.culvert.hotspot.stats.rate.WorksEffect.Method;
import org.junit.jupiter.api.Test;

class BeforeAfterTest {
    /**
     * The inputs are published in E. Hauer 1997, Observational Before-After Studies in Road Safety: right turns on red, and a
     * programme against impaired driving. The results were worked out outside from the book's formulas.
     */
    @Test
    void publishedComparisonGroupsComeOut() {
        JsonNode checks = Checks.json("eb/hauer1997_comparison_group.json");
        for (JsonNode check : checks) {
            for (String name : List.of("omega0", "omega_0.0055")) {
                var group = new ComparisonGroup(
                        check.get("Mb").asInt(),
                        check.get("Ma").asInt(),
                        Double.NaN,
                        name.equals("omega0") ? 0 : 0.0055);
                WorksEffect effect = inside(
                                check.get("Kb").asInt(), check.get("Ka").asInt(), group)
                        .best();
                JsonNode out = check.get(name);
                assertThat(effect.method()).isEqualTo(Method.COMPARISON_GROUP);
                assertThat(group.ratio()).isCloseTo(out.get("rT").asDouble(), within(1e-9));
                assertThat(effect.expected()).isCloseTo(out.get("pi").asDouble(), within(1e-8));
                assertThat(Math.sqrt(effect.variance()))
                        .isCloseTo(out.get("se_pi").asDouble(), within(1e-8));
                assertThat(effect.avoided()).isCloseTo(out.get("delta").asDouble(), within(1e-8));
                assertThat(effect.avoidedStandardError())
                        .isCloseTo(out.get("se_delta").asDouble(), within(1e-8));
                assertThat(effect.theta()).isCloseTo(out.get("theta").asDouble(), within(1e-9));
                assertThat(effect.thetaStandardError())
                        .isCloseTo(out.get("se_theta").asDouble(), within(1e-9));
            }
        }
        assertThat(checks).hasSize(2);
    }

    /** The same arithmetic worked through step by step outside, naive and with comparison stretches. */
    @Test
    void naiveAndComparedEffectsAreThoseWorkedOutOutside() {
        JsonNode checks = Checks.json("eb/before_after.json");
        var group = new ComparisonGroup(897, 870, Double.NaN, 0);
        PartEffect effect = inside(173, 144, group);
        assertThat(effect.naive().method()).isEqualTo(Method.NAIVE);
        assertIs(effect.naive(), checks.at("/naive/out"));
        assertIs(effect.best(), checks.at("/comparison/out"));
        var doubtful = new ComparisonGroup(897, 870, Double.NaN, 0.0055);
        assertIs(inside(173, 144, doubtful).best(), checks.at("/comparison_omega/out"));
    }

    /** Five sites by empirical Bayes, worked through outside. */
    @Test
    void effectOverSeveralSitesIsThatWorkedOutOutside() {
        JsonNode check = Checks.json("eb/before_after.json").get("eb");
        JsonNode in = check.get("input");
        List<TreatedStretch> stretches = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            double mu = in.get("muB").get(i).asDouble();
            stretches.add(new TreatedStretch(
                    "site " + i,
                    Part.INSIDE,
                    in.get("Kb").get(i).asInt(),
                    in.get("Ka").get(i).asInt(),
                    1,
                    1,
                    mu,
                    mu * in.get("r").get(i).asDouble(),
                    in.get("k").asDouble()));
        }
        WorksEffect effect = BeforeAfter.of(new Study(stretches, null, List.of(), 0.95))
                .part(Part.INSIDE)
                .best();
        JsonNode out = check.get("out");
        assertThat(effect.method()).isEqualTo(Method.EMPIRICAL_BAYES);
        assertThat(effect.expected()).isCloseTo(out.get("PI").asDouble(), within(1e-9));
        assertThat(effect.variance()).isCloseTo(out.get("VPI").asDouble(), within(1e-9));
        assertThat(effect.after()).isEqualTo(out.get("L").asInt());
        assertThat(effect.theta()).isCloseTo(out.get("theta").asDouble(), within(1e-10));
        assertThat(effect.thetaStandardError()).isCloseTo(out.get("se").asDouble(), within(1e-10));
        assertThat(effect.standardErrorInterval().low())
                .isCloseTo(out.at("/ci/0").asDouble(), within(1e-4));
        assertThat(effect.reductionPercent()).isCloseTo(out.get("pct_reduction").asDouble(), within(1e-8));
    }

    @Test
    void beforeAndAfterAloneAreRefused() {
        List<TreatedStretch> stretches = List.of(TreatedStretch.withoutModel("a", Part.INSIDE, 9, 3, 5, 3));
        assertThatThrownBy(() -> new Study(stretches, null, List.of(), 0.95))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("comparison stretches");
        WorksEffect naive =
                inside(9, 3, new ComparisonGroup(100, 90, Double.NaN, 0)).naive();
        assertThatThrownBy(() -> new PartEffect(Part.INSIDE, List.of(), naive)).hasMessageContaining("controlled");
        assertThatThrownBy(() -> new PartEffect(Part.INSIDE, List.of(naive), naive))
                .hasMessageContaining("controlled");
    }

    @Test
    void noIncidentAfterGivesABoundAndNoEstimate() {
        WorksEffect effect = BeforeAfter.of(new Study(List.of(modelled("a", Part.INSIDE, 6, 0)), null, List.of(), 0.95))
                .part(Part.INSIDE)
                .best();
        assertThat(effect.isBoundOnly()).isTrue();
        assertThat(effect.reductionPercent()).isNaN();
        assertThat(effect.thetaStandardError()).isNaN();
        assertThat(effect.interval().low()).isZero();
        assertThat(effect.upperBound()).isLessThan(effect.interval().high()).isGreaterThan(0);
        double shape = effect.expected() * effect.expected() / effect.variance();
        double rate = shape / effect.expected();
        assertThat(Math.pow(rate / (rate + effect.upperBound()), shape))
                .as("no incident has 5 % at the bound")
                .isCloseTo(0.05, within(1e-10));
    }

    /** Where before is known for certain, the bound for no incident is Poisson's: 3.00 over the expectation, "the rule of three". */
    @Test
    void boundComesToTheRuleOfThree() {
        WorksEffect effect = BeforeAfter.of(new Study(
                        List.of(new TreatedStretch("a", Part.INSIDE, 6, 0, 5, 5, 8, 8, 0)), null, List.of(), 0.95))
                .part(Part.INSIDE)
                .best();
        assertThat(effect.upperBound()).isCloseTo(-Math.log(0.05) / 8, within(1e-10));
    }

    @Test
    void naiveIntervalIsTheConditionalOneOfTwoRates() {
        PartEffect effect = inside(15, 4, new ComparisonGroup(100, 90, Double.NaN, 0), 5, 3);
        Interval two = CountTests.compare(4, 3, 15, 5, 0.95).interval();
        assertThat(effect.naive().interval().low()).isCloseTo(two.low(), within(1e-10));
        assertThat(effect.naive().interval().high()).isCloseTo(two.high(), within(1e-10));
    }

    @Test
    void noIncidentBeforeGivesNoRatioAndNoUpperEnd() {
        WorksEffect effect =
                inside(0, 3, new ComparisonGroup(100, 90, Double.NaN, 0)).best();
        assertThat(effect.theta()).isNaN();
        assertThat(effect.interval().low()).isGreaterThan(0);
        assertThat(effect.interval().high()).isInfinite();
    }

    @Test
    void endsHideNoDisplacement() {
        var finding = BeforeAfter.of(new Study(
                List.of(
                        modelled("in", Part.INSIDE, 10, 1),
                        modelled("end 1", Part.ENDS, 3, 6),
                        modelled("end 2", Part.ENDS, 2, 5),
                        modelled("far", Part.BEYOND, 4, 4)),
                null,
                List.of(),
                0.95));
        assertThat(finding.parts())
                .extracting(PartEffect::part)
                .containsExactly(Part.INSIDE, Part.ENDS, Part.BEYOND, Part.COMBINED);
        assertThat(finding.part(Part.INSIDE).best().theta()).isLessThan(0.3);
        assertThat(finding.part(Part.ENDS).best().theta()).isGreaterThan(1);
        WorksEffect combined = finding.part(Part.COMBINED).best();
        assertThat(combined.before()).isEqualTo(19);
        assertThat(combined.after()).isEqualTo(16);
        assertThat(combined.expected())
                .isCloseTo(
                        finding.part(Part.INSIDE).best().expected()
                                + finding.part(Part.ENDS).best().expected()
                                + finding.part(Part.BEYOND).best().expected(),
                        within(1e-10));
        assertThat(finding.cautions()).noneMatch(caution -> caution.contains("moved along"));
    }

    @Test
    void changeBeyondWhatTheModelPredictsComesFromTheComparison() {
        List<TreatedStretch> stretches = List.of(modelled("a", Part.INSIDE, 12, 5));
        var group = new ComparisonGroup(400, 300, 1, 0.002);
        PartEffect effect =
                BeforeAfter.of(new Study(stretches, group, List.of(), 0.95)).part(Part.INSIDE);
        assertThat(effect.controlled())
                .extracting(WorksEffect::method)
                .containsExactly(
                        Method.COMPARISON_GROUP, Method.EMPIRICAL_BAYES, Method.EMPIRICAL_BAYES_WITH_COMPARISON);
        WorksEffect alone = effect.controlled().get(1);
        WorksEffect best = effect.best();
        assertThat(best.expected()).isCloseTo(alone.expected() * group.ratio(), within(1e-10));
        assertThat(best.variance() / Math.pow(best.expected(), 2))
                .isCloseTo(
                        alone.variance() / Math.pow(alone.expected(), 2) + 1.0 / 400 + 1.0 / 300 + 0.002,
                        within(1e-12));
        assertThat(best.interval().width() / best.theta())
                .isGreaterThan(alone.interval().width() / alone.theta());
    }

    @Test
    void notesAreCarriedAndTheirAbsenceIsSaid() {
        List<TreatedStretch> stretches = List.of(modelled("a", Part.INSIDE, 12, 5));
        var note = new Note(
                Note.Kind.PUBLICITY,
                LocalDate.of(2024, 3, 1),
                null,
                "signs with the telephone number",
                "minutes of May");
        var silent = BeforeAfter.of(new Study(stretches, null, List.of(), 0.95));
        var told = BeforeAfter.of(new Study(stretches, null, List.of(note), 0.95));
        assertThat(told.notes()).containsExactly(note);
        assertThat(told.parts()).isEqualTo(silent.parts());
        assertThat(silent.cautions()).anyMatch(caution -> caution.contains("publicity"));
        assertThat(told.cautions()).noneMatch(caution -> caution.contains("publicity"));
        assertThat(told.cautions()).anyMatch(caution -> caution.contains("comparison"));
    }

    /** By the formula, from memory of Hauer 1997, chapter 9, written out for two odds ratios. */
    @Test
    void varianceOfOmegaIsTheScatterOfYearlyOddsRatiosLessChance() {
        double first = 40.0 * 120 / (30 * 100) / (1 + 1 / 30.0 + 1 / 100.0);
        double second = 30.0 * 110 / (44 * 120) / (1 + 1 / 44.0 + 1 / 120.0);
        double sample = Math.pow(first - second, 2) / 2;
        double chance = (1 / 40.0 + 1 / 30.0 + 1 / 100.0 + 1 / 120.0 + 1 / 30.0 + 1 / 44.0 + 1 / 120.0 + 1 / 110.0) / 2;
        assertThat(ComparisonGroup.varianceOfOmega(List.of(40, 30, 44), List.of(100, 120, 110)))
                .isCloseTo(sample - chance, within(1e-12));
        assertThat(ComparisonGroup.varianceOfOmega(List.of(20, 20, 20), List.of(50, 50, 50)))
                .isZero();
        assertThatThrownBy(() -> ComparisonGroup.varianceOfOmega(List.of(4, 0, 3), List.of(9, 9, 9)))
                .hasMessageContaining("sum up");
    }

    @Test
    void halfAModelIsRefused() {
        assertThatThrownBy(() -> new TreatedStretch("a", Part.INSIDE, 1, 1, 1, 1, 2, Double.NaN, 0.4))
                .hasMessageContaining("NaN for all three");
        assertThatThrownBy(() -> TreatedStretch.withoutModel("a", Part.COMBINED, 1, 1, 1, 1))
                .hasMessageContaining("worked out");
        assertThatThrownBy(() -> new ComparisonGroup(10, 0, 1, 0)).hasMessageContaining("longer");
    }

    private static void assertIs(WorksEffect effect, JsonNode out) {
        assertThat(effect.expected()).isCloseTo(out.get("pi").asDouble(), within(1e-9));
        assertThat(effect.variance()).isCloseTo(out.get("var_pi").asDouble(), within(1e-8));
        assertThat(effect.avoided()).isCloseTo(out.get("delta").asDouble(), within(1e-9));
        assertThat(effect.theta()).isCloseTo(out.get("theta").asDouble(), within(1e-10));
        assertThat(Math.pow(effect.thetaStandardError(), 2))
                .isCloseTo(out.get("var_theta").asDouble(), within(1e-12));
        assertThat(effect.standardErrorInterval().low())
                .isCloseTo(out.at("/ci/0").asDouble(), within(1e-5));
        assertThat(effect.standardErrorInterval().high())
                .isCloseTo(out.at("/ci/1").asDouble(), within(1e-5));
    }

    private static TreatedStretch modelled(String id, Part part, int before, int after) {
        return new TreatedStretch(id, part, before, after, 5, 5, 5, 5, 0.8);
    }

    private static PartEffect inside(int before, int after, ComparisonGroup group) {
        return inside(before, after, group, 1, 1);
    }

    private static PartEffect inside(
            int before, int after, ComparisonGroup group, double yearsBefore, double yearsAfter) {
        return BeforeAfter.of(new Study(
                        List.of(TreatedStretch.withoutModel("a", Part.INSIDE, before, after, yearsBefore, yearsAfter)),
                        group,
                        List.of(),
                        0.95))
                .part(Part.INSIDE);
    }

    /** Tails worked out by hand: of the Poisson distribution, and of the negative binomial one with size 2 and mean 2, (n + 2) / 2^(n + 1). */
    @Test
    void aStretchThatHadFarMoreBeforeIsUnlikeItsModel() {
        var poisson = new TreatedStretch("a", Part.INSIDE, 6, 3, 3, 3, 1, 1, 0);
        assertThat(poisson.chanceOfAsMany())
                .isCloseTo(1 - Math.exp(-1) * (1 + 1 + 1 / 2.0 + 1 / 6.0 + 1 / 24.0 + 1 / 120.0), within(1e-12));
        assertThat(poisson.isUnlikeItsModel()).isTrue();
        for (int n = 0; n < 20; n++) {
            var spread = new TreatedStretch("a", Part.INSIDE, n, 3, 3, 3, 2, 2, 0.5);
            assertThat(spread.chanceOfAsMany()).isCloseTo((n + 2) / Math.pow(2, n + 1), within(1e-12));
            assertThat(spread.isUnlikeItsModel()).isEqualTo(n >= 13);
        }
        assertThat(TreatedStretch.withoutModel("a", Part.INSIDE, 50, 0, 3, 3).isUnlikeItsModel())
                .isFalse();
    }
}
