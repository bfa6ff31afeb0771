package org.culvert.hotspot.works;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a stretch that a person chose.
 *
 * @param pieces the pieces of road that it is on: one, or one for each carriageway
 * @param season in words
 * @param sentence the answer in one sentence, with how the stretch was chosen
 * @param incidents collisions on it; null where the asker is not told
 * @param perhapsElsewhere of these, how many may lie beyond its ends
 * @param perhapsHere collisions beside it that may lie on it; not counted
 * @param expected null where roads of its class do not tell what is usual, or the asker is not told
 * @param unreported how many may stand behind those that are reported, kept apart from every estimate
 * @param elsewhere what works have done in other places
 * @param power the chance of seeing an effect, by years after; none where nothing is expected
 * @param businessCase null where none was asked for, or it would tell what the asker is not told
 * @param saidPlainly what cannot be said, and why
 * @param informationWithheld what the asker is not told
 */
public record StretchAnswer(
        String road,
        List<String> pieces,
        double fromChainageMetres,
        double toChainageMetres,
        double lengthMetres,
        int yearFrom,
        int yearTo,
        @Nullable String taxonGroup,
        String season,
        String sentence,
        String choice,
        @Nullable Integer incidents,
        @Nullable Double perKilometreYear,
        @Nullable Integer perhapsElsewhere,
        @Nullable Integer perhapsHere,
        List<Count> byYear,
        List<Count> byMonth,
        List<Count> byGroup,
        @Nullable Expected expected,
        List<Behind> unreported,
        List<PublishedFigures.Elsewhere> elsewhere,
        @Nullable Power power,
        @Nullable Case businessCase,
        List<String> saidPlainly,
        @Nullable String informationWithheld,
        @Nullable AnswerBasis basis) {
    /** Collisions of a year, a month (by its number) or a group; null where the asker is not told. */
    public record Count(String of, @Nullable Integer incidents) {}

    /**
     * By empirical Bayes from windows of the same class over the network, for all years together.
     *
     * @param predicted what roads like it have
     * @param overdispersion k of a stretch of this length
     * @param weight of the prediction in the estimate
     * @param estimate what the stretch may be expected to have
     * @param low lower end of the interval of the estimate
     * @param excess estimate less predicted
     * @param chanceOfExcess that it has any excess at all
     * @param basisSentence burden or risk
     */
    public record Expected(
            double predicted,
            double overdispersion,
            double weight,
            double estimate,
            double low,
            double high,
            double level,
            double excess,
            double excessLow,
            double excessHigh,
            double chanceOfExcess,
            double perKilometreYear,
            String basisSentence) {}

    /** What may stand behind those that are reported each year. */
    public record Behind(
            String what,
            double multiplierLow,
            double multiplierHigh,
            @Nullable Double perYearLow,
            @Nullable Double perYearHigh,
            String where,
            String source,
            @Nullable String doi) {}

    /**
     * The chance of seeing an effect, said before anyone builds.
     *
     * @param incidentsPerYear assumed without works
     * @param alpha chance of seeing an effect where there is none, half of it for fewer
     */
    public record Power(
            double incidentsPerYear,
            double reductionPercent,
            int yearsBefore,
            double alpha,
            List<YearOfPower> years,
            String sentence) {}

    /**
     * @param power chance of seeing fewer after so many years
     * @param atBest the same if what would have come without works were known exactly
     */
    public record YearOfPower(int yearsAfter, double power, double atBest) {}

    /**
     * What works would be worth, in present values; a range is what comes of all figures at their worst or best.
     *
     * @param unitCosts what a collision costs, as the asker has it
     */
    public record Case(
            String currency,
            int priceYear,
            List<Cost> unitCosts,
            Ranged collisionsPerYear,
            boolean collisionsAreTheAskers,
            Ranged benefits,
            Ranged costs,
            Ranged net,
            Ranged benefitCostRatio,
            @Nullable Double breakEvenShareAvoided,
            List<Sensitivity> sensitivities,
            String sentence) {}

    /** What a collision costs, of one kind of cost, and who says so. */
    public record Cost(String name, Ranged perCollision, String source) {}

    /** A range with its best figure. */
    public record Ranged(double low, double best, double high) {}

    /** The benefit-cost ratio when one figure is at its ends and all others at their best. */
    public record Sensitivity(String figure, double atLow, double atHigh) {}
}
