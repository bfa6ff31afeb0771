package org.culvert.hotspot.works;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Windows along roads by excess over what roads like them have. It ranks; it names no hotspot.
 *
 * @param council whose area alone is told of; null for all roads. What is usual is told by all roads, and ranks are among them
 * @param season in words
 * @param basisSentence burden or risk
 * @param model the function that says what is usual; null where there is none
 * @param windows the greatest excess first, no two of which share any road
 * @param windowsNotShown further windows that were screened
 * @param peaks the shortest windows of the roads of the first windows whose estimate is precise enough
 * @param residuals sums of residuals in the order of a covariate, for a plot; a sum beyond its bound shows where the model
 *     is wrong
 * @param saidPlainly what cannot be said, and why
 * @param informationWithheld what the asker is not told
 */
public record BurdenView(
        int yearFrom,
        int yearTo,
        @Nullable String taxonGroup,
        @Nullable String council,
        String season,
        double windowMetres,
        double stepMetres,
        @Nullable String basisSentence,
        @Nullable Model model,
        List<Window> windows,
        int windowsNotShown,
        List<NotScreened> notScreened,
        List<Peak> peaks,
        @Nullable Residuals residuals,
        List<String> saidPlainly,
        @Nullable String informationWithheld,
        AnswerBasis basis) {
    /**
     * A window, with figures for its length and all years unless they say otherwise.
     *
     * @param councils names of the council areas in which its ends and its middle lie, with semicolons between; null where nobody
     *     entered any there
     */
    public record Window(
            int rank,
            String road,
            double fromChainageMetres,
            double toChainageMetres,
            int incidents,
            double predicted,
            double estimate,
            double low,
            double high,
            double level,
            double excess,
            double excessPerKilometreYear,
            double chanceOfExcess,
            String basis,
            boolean worksStandThere,
            @Nullable String councils) {}

    /** A coefficient of the function, by the name of its column. */
    public record Coefficient(String name, double value, double standardError) {}

    /**
     * The function: log of collisions expected per kilometre and year.
     *
     * @param overdispersion k of one kilometre
     * @param sites windows that it was fitted to
     * @param sitesLeftOut windows with works
     */
    public record Model(
            String outcome,
            List<Coefficient> coefficients,
            double overdispersion,
            int sites,
            int sitesLeftOut,
            List<String> remarks) {}

    /** A road that nothing is expected of. */
    public record NotScreened(String road, String reason) {}

    /**
     * How a peak search on one road ended.
     *
     * @param coefficientOfVariationLimit greatest that passes
     * @param windowMetres length of the windows of its last round
     * @param fromChainageMetres of the best window that passes; null where none does
     */
    public record Peak(
            String road,
            double coefficientOfVariationLimit,
            double windowMetres,
            @Nullable Double fromChainageMetres,
            @Nullable Double toChainageMetres,
            @Nullable Double estimate,
            @Nullable Double coefficientOfVariation) {}

    /**
     * @param by {@code aadt} or {@code lengthMetres}
     * @param shareOutside of the steps that lie beyond the bounds
     */
    public record Residuals(String by, double shareOutside, List<Step> steps) {}

    public record Step(double at, double sum, double bound) {}
}
