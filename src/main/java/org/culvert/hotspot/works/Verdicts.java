package org.culvert.hotspot.works;

import java.util.List;
import org.culvert.hotspot.stats.rate.TreatedStretch;
import org.culvert.hotspot.stats.rate.WorksEffect;

/** What an effect comes to, in words. */
final class Verdicts {
    /** Of a part where the roads compared with do not say what would have come: see {@code TreatedStretch}. */
    static final String UNLIKE = "Not judged: before the works it was unlike the roads that it is compared with.";

    private Verdicts() {}

    /** In words and figures. */
    static String withFigures(WorksEffect effect) {
        double low = effect.interval().low();
        double high = effect.interval().high();
        if (Double.isNaN(low)) {
            return "It cannot be told: nothing is known of what would have come without the works.";
        }
        if (effect.isBoundOnly()) {
            String none = "None came after, where " + Figures.number(effect.expected()) + " would have been expected: ";
            return effect.upperBound() < 1
                    ? none + "with 95 % confidence the works prevent at least "
                            + Figures.percent(1 - effect.upperBound()) + "; how much more cannot be told."
                    : none + "so few that no effect at all is as likely as a great one.";
        }
        String against = " than the " + Figures.number(effect.expected())
                + " that would have been expected without the works (95 % interval: ";
        if (high < 1) {
            return Figures.percent(1 - effect.theta()) + " fewer" + against + Figures.percent(1 - high) + " to "
                    + Figures.percent(1 - low) + " fewer).";
        }
        if (low > 1) {
            return Figures.percent(effect.theta() - 1) + " more" + against + Figures.percent(low - 1) + " to "
                    + (Double.isFinite(high) ? Figures.percent(high - 1) + " more)." : "any number more).");
        }
        return "Not told apart from no effect: anything from " + Figures.percent(1 - low) + " fewer to "
                + (Double.isFinite(high) ? Figures.percent(high - 1) + " more" : "any number more")
                + " fits what was counted.";
    }

    /** Without any figure from which a small number could be worked out. */
    static String inWords(WorksEffect effect) {
        if (Double.isNaN(effect.interval().low())) {
            return withFigures(effect);
        }
        return isFewer(effect)
                ? "Fewer than would have been expected without the works, by more than chance; the counts are small"
                        + " and not told to you."
                : effect.interval().low() > 1
                        ? "More than would have been expected without the works, by more than chance; the counts are"
                                + " small and not told to you."
                        : "Not told apart from no effect; the counts are small and not told to you.";
    }

    /** Whether fewer came than would have come without the works, by more than chance. */
    static boolean isFewer(WorksEffect effect) {
        return effect.isBoundOnly()
                ? effect.upperBound() < 1
                : effect.interval().high() < 1;
    }

    /**
     * Whether the effect may be told. Empirical Bayes expects too little of stretches that are unlike their model: where fewer than
     * that came, the works prevented something all the same; where not, it says nothing.
     */
    static boolean isJudged(WorksEffect effect, List<TreatedStretch> stretches) {
        return isFewer(effect)
                || !effect.method().isByModel()
                || stretches.stream().noneMatch(TreatedStretch::isUnlikeItsModel);
    }

    /** How the estimate was made. */
    static String method(WorksEffect.Method method) {
        return switch (method) {
            case NAIVE -> "counts alone";
            case COMPARISON_GROUP -> "the change on stretches without works";
            case EMPIRICAL_BAYES -> "empirical Bayes from windows of the same class";
            case EMPIRICAL_BAYES_WITH_COMPARISON ->
                "empirical Bayes from windows of the same class, and the change on stretches without works";
        };
    }
}
