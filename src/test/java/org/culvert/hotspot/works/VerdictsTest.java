package org.culvert.hotspot.works;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.culvert.hotspot.stats.rate.BeforeAfter;
import org.culvert.hotspot.stats.rate.BeforeAfter.Study;
import org.culvert.hotspot.stats.rate.ComparisonGroup;
import org.culvert.hotspot.stats.rate.TreatedStretch;
import org.culvert.hotspot.stats.rate.TreatedStretch.Part;
import org.culvert.hotspot.stats.rate.WorksEffect;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** When an effect is told: a rule of our own, which nobody has published; no outside source. */
class VerdictsTest {
    /** Two are expected of it in three years, with a size of 2: 13 and more are far out (see {@code BeforeAfterTest}). */
    private static TreatedStretch stretch(int before, int after) {
        return new TreatedStretch("a", Part.INSIDE, before, after, 3, 3, 2, 2, 0.5);
    }

    private static WorksEffect effect(TreatedStretch stretch) {
        return effect(stretch, null);
    }

    private static WorksEffect effect(TreatedStretch stretch, @Nullable ComparisonGroup comparison) {
        return BeforeAfter.of(new Study(List.of(stretch), comparison, List.of(), 0.95))
                .part(Part.INSIDE)
                .best();
    }

    private static boolean isJudged(TreatedStretch stretch) {
        return Verdicts.isJudged(effect(stretch), List.of(stretch));
    }

    @Test
    void whatIsLikeItsModelIsJudged() {
        assertThat(isJudged(stretch(12, 40))).isTrue();
        assertThat(isJudged(stretch(2, 2))).isTrue();
    }

    /** As many came after as before, which was far more than the roads beside have: empirical Bayes calls that an increase. */
    @Test
    void thatNothingChangedWhereTheModelDoesNotFitIsNoIncrease() {
        TreatedStretch same = stretch(60, 60);
        assertThat(effect(same).interval().low()).isGreaterThan(1);
        assertThat(isJudged(same)).isFalse();
    }

    /** How others changed says no more of what would have come to a stretch that the model does not describe. */
    @Test
    void thatOthersAreComparedWithDoesNotMakeTheModelFit() {
        TreatedStretch same = stretch(60, 60);
        WorksEffect effect = effect(same, new ComparisonGroup(200, 210, 1, 0));
        assertThat(effect.method()).isEqualTo(WorksEffect.Method.EMPIRICAL_BAYES_WITH_COMPARISON);
        assertThat(effect.interval().low()).isGreaterThan(1);
        assertThat(Verdicts.isJudged(effect, List.of(same))).isFalse();
    }

    @Test
    void fewerThanTooLittleIsFewer() {
        TreatedStretch fenced = stretch(60, 1);
        assertThat(fenced.isUnlikeItsModel()).isTrue();
        assertThat(Verdicts.isFewer(effect(fenced))).isTrue();
        assertThat(isJudged(fenced)).isTrue();
    }
}
