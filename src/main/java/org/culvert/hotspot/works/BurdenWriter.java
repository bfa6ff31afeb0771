package org.culvert.hotspot.works;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.Words;
import org.culvert.hotspot.stats.rate.CumulativeResiduals;
import org.culvert.hotspot.stats.rate.NegativeBinomialFit;
import org.culvert.hotspot.stats.rate.PeakSearch;
import org.culvert.hotspot.stats.rate.RoadProfile;
import org.culvert.hotspot.stats.rate.SafetyPerformance;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Basis;
import org.culvert.hotspot.stats.rate.Screening;
import org.culvert.hotspot.stats.rate.Site;
import org.jspecify.annotations.Nullable;

/** Writes down which windows have more than roads like them, for whoever asks. */
final class BurdenWriter {
    private static final int MOST_STEPS = 200;
    private static final int MOST_PEAKS = 10;

    /** A search on a longer road takes longer than anyone waits for. */
    private static final int MOST_WINDOWS_OF_A_ROAD = 300;

    private static final List<String> NOT_CONTROLLED = List.of(
            "how many people look, drive and ring up here and elsewhere",
            "that the best of many windows is a little better than it will be again",
            "the uncertainty of the model that says what is usual");

    private final StretchQuestionService.Years years;
    private final @Nullable String taxonGroup;
    private final RunSettings.Season season;
    private final double windowMetres;
    private final double stepMetres;
    private final int most;
    private final double largestVariation;
    private final @Nullable Integer smallest;
    private final @Nullable String council;
    private final PieceCouncils councils;

    BurdenWriter(
            StretchQuestionService.Years years,
            @Nullable String taxonGroup,
            RunSettings.Season season,
            double windowMetres,
            double stepMetres,
            int most,
            double largestVariation,
            @Nullable Integer smallest,
            @Nullable String council,
            PieceCouncils councils) {
        this.years = years;
        this.taxonGroup = taxonGroup;
        this.season = season;
        this.windowMetres = windowMetres;
        this.stepMetres = stepMetres;
        this.most = most;
        this.largestVariation = largestVariation;
        this.smallest = smallest;
        this.council = council;
        this.councils = councils;
    }

    BurdenView withheld(Collisions read, int networkNumber) {
        return view(
                null,
                List.of(),
                0,
                List.of(),
                null,
                List.of(),
                "A species of this group is sensitive: where it is struck is not told to you.",
                read.basis(networkNumber, NOT_CONTROLLED));
    }

    BurdenView nothing(Collisions read, int networkNumber, String why) {
        return view(null, List.of(), 0, List.of(), null, List.of(why), null, read.basis(networkNumber, NOT_CONTROLLED));
    }

    BurdenView told(
            Screening screening,
            List<RoadProfile> profiles,
            Collisions read,
            int networkNumber,
            List<String> notPlaced) {
        AnswerBasis basis = read.basis(networkNumber, NOT_CONTROLLED);
        SafetyPerformance performance = screening.performance();
        List<String> plainly = new ArrayList<>(notPlaced);
        if (!performance.fit().outcome().hasEstimates()) {
            plainly.add("What is usual cannot be told: " + performance.fit().remark() + ".");
            return view(null, List.of(), 0, List.of(), null, plainly, null, basis);
        }
        if (performance.fit().overdispersion() == 0) {
            plainly.add("Windows differ by no more than chance: none has an excess, whatever its own count.");
        }
        List<Screening.Screened> withExcess = screening.windows().stream()
                .filter(window -> window.estimate().excess() > 0)
                .filter(window -> council == null || councils(window).contains(council))
                .toList();
        List<Screening.Screened> told = withExcess.stream()
                .filter(window -> smallest == null || window.window().incidents() >= smallest)
                .limit(most)
                .toList();
        long small = smallest == null
                ? 0
                : withExcess.stream()
                        .filter(window -> window.window().incidents() < smallest)
                        .count();
        return view(
                screening,
                told.stream().map(this::window).toList(),
                screening.windows().size() - told.size(),
                peaks(told, profiles, performance),
                residuals(performance),
                plainly,
                small == 0 ? null : "Windows with fewer than " + smallest + " collisions are not told to you.",
                basis);
    }

    private List<String> councils(Screening.Screened screened) {
        return councils.of(
                screened.window().road(),
                screened.window().fromChainageMetres(),
                screened.window().toChainageMetres());
    }

    private BurdenView.Window window(Screening.Screened screened) {
        var estimate = screened.estimate();
        List<String> there = councils(screened);
        return new BurdenView.Window(
                screened.rank(),
                screened.window().road(),
                Words.rounded(screened.window().fromChainageMetres(), 1),
                Words.rounded(screened.window().toChainageMetres(), 1),
                screened.window().incidents(),
                Figures.rounded(estimate.predicted()),
                Figures.rounded(estimate.estimate()),
                Figures.rounded(estimate.posterior().low()),
                Figures.rounded(estimate.posterior().high()),
                estimate.posterior().level(),
                Figures.rounded(estimate.excess()),
                Figures.rounded(screened.excessPerKilometreYear()),
                Figures.rounded(estimate.chanceAbovePredicted()),
                name(screened.basis()),
                screened.treated(),
                there.isEmpty() ? null : String.join("; ", there));
    }

    private static String name(Basis basis) {
        return basis.name().toLowerCase(Locale.ROOT);
    }

    /** On the roads of the first windows, each once. */
    private List<BurdenView.Peak> peaks(
            List<Screening.Screened> told, List<RoadProfile> profiles, SafetyPerformance performance) {
        List<String> roads = told.stream()
                .map(window -> window.window().road())
                .distinct()
                .limit(MOST_PEAKS)
                .toList();
        List<BurdenView.Peak> peaks = new ArrayList<>();
        for (String road : roads) {
            RoadProfile profile = profiles.stream()
                    .filter(one -> one.road().road().equals(road))
                    .findFirst()
                    .orElseThrow();
            if (profile.road().lengthMetres() / windowMetres <= MOST_WINDOWS_OF_A_ROAD) {
                peaks.add(peak(profile, performance));
            }
        }
        return peaks;
    }

    private BurdenView.Peak peak(RoadProfile profile, SafetyPerformance performance) {
        var result = PeakSearch.search(
                profile.road(),
                windowMetres,
                largestVariation,
                PeakSearch.empiricalBayes(
                        window -> profile.expected(
                                performance, window.fromChainageMetres(), window.toChainageMetres(), years.count()),
                        window -> performance.overdispersion(window.lengthMetres())));
        double width = result.rounds().get(result.rounds().size() - 1).windowMetres();
        PeakSearch.Measured best = result.isFound() ? result.peaks().get(0) : null;
        boolean isTold = best != null && (smallest == null || best.window().incidents() >= smallest);
        return best == null || !isTold
                ? new BurdenView.Peak(
                        profile.road().road(), largestVariation, Figures.rounded(width), null, null, null, null)
                : new BurdenView.Peak(
                        profile.road().road(),
                        largestVariation,
                        Figures.rounded(width),
                        Words.rounded(best.window().fromChainageMetres(), 1),
                        Words.rounded(best.window().toChainageMetres(), 1),
                        Figures.rounded(best.precision().value()),
                        Figures.rounded(best.precision().coefficientOfVariation()));
    }

    /** Against traffic where it is known of some, else against length. */
    private static BurdenView.Residuals residuals(SafetyPerformance performance) {
        boolean byTraffic = performance.sites().stream().anyMatch(Site::hasTraffic);
        CumulativeResiduals residuals = byTraffic ? performance.residualsByTraffic() : performance.residualsByLength();
        List<CumulativeResiduals.Step> steps = residuals.steps();
        int shown = Math.min(MOST_STEPS, steps.size());
        return new BurdenView.Residuals(
                byTraffic ? "aadt" : "lengthMetres",
                Figures.rounded(residuals.shareOutside()),
                IntStream.range(0, shown)
                        .mapToObj(i -> steps.get((int) ((long) (i + 1) * steps.size() / shown) - 1))
                        .map(step -> new BurdenView.Step(
                                Figures.rounded(step.covariate()),
                                Figures.rounded(step.sum()),
                                Figures.rounded(step.bound())))
                        .toList());
    }

    private BurdenView view(
            @Nullable Screening screening,
            List<BurdenView.Window> windows,
            int windowsNotShown,
            List<BurdenView.Peak> peaks,
            BurdenView.@Nullable Residuals residuals,
            List<String> plainly,
            @Nullable String withheld,
            AnswerBasis basis) {
        SafetyPerformance performance = screening == null ? null : screening.performance();
        return new BurdenView(
                years.first(),
                years.last(),
                taxonGroup,
                council,
                season.words(),
                windowMetres,
                stepMetres,
                performance == null ? null : performance.basis().sentence(),
                performance == null ? null : model(performance),
                windows,
                windowsNotShown,
                screening == null
                        ? List.of()
                        : screening.notScreened().stream()
                                .map(one -> new BurdenView.NotScreened(one.id(), one.reason()))
                                .toList(),
                peaks,
                residuals,
                plainly,
                withheld,
                basis);
    }

    private static BurdenView.Model model(SafetyPerformance performance) {
        NegativeBinomialFit fit = performance.fit();
        return new BurdenView.Model(
                fit.outcome() == NegativeBinomialFit.Outcome.CONVERGED
                        ? "more scatter than chance"
                        : "no more scatter than chance",
                IntStream.range(0, fit.names().size())
                        .mapToObj(i -> new BurdenView.Coefficient(
                                fit.names().get(i),
                                Words.rounded(fit.coefficients().get(i), 6),
                                Words.rounded(fit.standardErrors().get(i), 6)))
                        .toList(),
                Words.rounded(fit.overdispersion(), 6),
                performance.sites().size(),
                performance.leftOut().size(),
                performance.remarks());
    }
}
