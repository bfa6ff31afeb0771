package org.culvert.hotspot.works;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.stats.SmallNumbers;
import org.culvert.hotspot.stats.rate.EmpiricalBayes;
import org.culvert.hotspot.stats.rate.Interval;
import org.culvert.hotspot.stats.rate.Power;
import org.culvert.hotspot.stats.rate.Range;
import org.culvert.hotspot.stats.rate.StretchCounts;
import org.culvert.hotspot.stats.rate.UnderReporting;
import org.jspecify.annotations.Nullable;

/** Writes down what is known of a stretch, for whoever asks. */
final class StretchWriter {
    private static final int YEARS_AFTER = 10;
    private static final double ALPHA = 0.05;
    private static final double USUAL_REDUCTION_PERCENT = 50;
    private static final String WITHHELD =
            "A species of this group is sensitive: where it is struck is not told to you."
                    + " Who keeps the network's records can be asked.";
    private static final String FEW =
            "So few collisions that their number is not told to you, nor what follows from it.";

    private static final List<String> NOT_CONTROLLED = List.of(
            "how many people look, drive and ring up here and elsewhere",
            "carcasses that scavengers or traffic took before anyone saw them",
            "the uncertainty of the model that says what is usual",
            "chainages of two carriageways are taken to run together");

    private final StretchQuestion question;
    private final StretchQuestionService.Years years;
    private final RunSettings.Season season;
    private final List<RoadPieces.Part> parts;
    private final PublishedFigures published;
    private final @Nullable Integer smallest;

    /**
     * @param smallest smallest count that the asker is told, or null where every count
     */
    StretchWriter(
            StretchQuestion question,
            StretchQuestionService.Years years,
            RunSettings.Season season,
            List<RoadPieces.Part> parts,
            PublishedFigures published,
            @Nullable Integer smallest) {
        this.question = question;
        this.years = years;
        this.season = season;
        this.parts = parts;
        this.published = published;
        this.smallest = smallest;
    }

    StretchAnswer withheld() {
        return answer(null, null, null, List.of(), "How many there were is not told to you.", WITHHELD, null);
    }

    StretchAnswer told(
            StretchCounts counts, RoadModel model, Collisions read, int networkNumber, List<String> saidSoFar) {
        List<String> plainly = new ArrayList<>(saidSoFar);
        boolean few = smallest != null && counts.incidents() > 0 && counts.incidents() < smallest;
        EmpiricalBayes estimate = few ? null : counts.expected();
        if (estimate != null && estimate.overdispersion() == 0) {
            plainly.add("Windows of these roads differ by no more than chance, so nothing tells this stretch from the"
                    + " others, whatever its own count.");
        }
        if (counts.ofUnknownUncertainty() > 0 && smallest == null) {
            plainly.add("How sure the place is, is not known for " + counts.ofUnknownUncertainty() + " of these.");
        }
        if (question.worksKind() != null && !published.knows(question.worksKind())) {
            plainly.add("No published figure of that kind of works alone is kept here.");
        }
        StretchAnswer.Expected expected =
                estimate == null ? null : expected(estimate, model.basis(parts).sentence());
        return answer(
                few ? null : counts,
                expected,
                estimate,
                plainly,
                sentence(counts, estimate, few),
                few ? FEW : null,
                read.basis(networkNumber, NOT_CONTROLLED));
    }

    private StretchAnswer answer(
            @Nullable StretchCounts counts,
            StretchAnswer.@Nullable Expected expected,
            @Nullable EmpiricalBayes estimate,
            List<String> plainly,
            String sentence,
            @Nullable String withheld,
            @Nullable AnswerBasis basis) {
        StretchQuestion.BusinessCase asked = question.businessCase();
        return new StretchAnswer(
                question.road(),
                parts.stream().map(part -> part.piece().id()).toList(),
                question.fromChainageMetres(),
                question.toChainageMetres(),
                Figures.rounded(lengthMetres()),
                years.first(),
                years.last(),
                question.taxonGroup(),
                season.words(),
                sentence,
                choice().sentence(),
                counts == null ? null : Integer.valueOf(counts.incidents()),
                counts == null ? null : Figures.finite(perKilometreYear(counts.incidents()), 4),
                counts == null || smallest != null ? null : Integer.valueOf(counts.perhapsElsewhere()),
                counts == null || smallest != null ? null : Integer.valueOf(counts.perhapsHere()),
                counts == null ? List.of() : shown(counts.byYear()),
                counts == null ? List.of() : shown(byMonth(counts)),
                counts == null ? List.of() : shown(counts.byGroup()),
                expected,
                behind(counts),
                published.elsewhere(question.worksKind()),
                estimate == null ? null : power(estimate),
                asked == null ? null : BusinessCases.of(asked, estimate == null ? null : perYear(estimate)),
                plainly,
                withheld,
                basis);
    }

    private StretchCounts.Choice choice() {
        return StretchQuestionService.choice(question.chosenBeforeLooking());
    }

    private String sentence(StretchCounts counts, @Nullable EmpiricalBayes estimate, boolean few) {
        String count = few
                ? "A few collisions were reported"
                : counts.incidents() == 1
                        ? "1 collision was reported"
                        : counts.incidents() + " collisions were reported";
        String told = count + " on " + question.road() + " between " + Figures.number(question.fromChainageMetres())
                + " and " + Figures.number(question.toChainageMetres()) + " m from " + years.first() + " to "
                + years.last() + " in " + season.words();
        if (estimate != null) {
            told += "; roads like it have " + Figures.number(estimate.predicted())
                    + " on such a length in such a time, and this one may be expected to have "
                    + Figures.number(estimate.estimate()) + " ("
                    + Figures.percent(estimate.posterior().level())
                    + " interval " + Figures.number(estimate.posterior().low()) + " to "
                    + Figures.number(estimate.posterior().high()) + ")";
        }
        return told + ". " + choice().sentence();
    }

    private double lengthMetres() {
        return parts.stream().mapToDouble(RoadPieces.Part::lengthMetres).sum();
    }

    private double perKilometreYear(double figure) {
        return EmpiricalBayes.perKilometreYear(figure, lengthMetres(), years.count());
    }

    private StretchAnswer.Expected expected(EmpiricalBayes estimate, String basisSentence) {
        Interval excess = estimate.excessInterval();
        return new StretchAnswer.Expected(
                Figures.rounded(estimate.predicted()),
                Figures.rounded(estimate.overdispersion()),
                Figures.rounded(estimate.weight()),
                Figures.rounded(estimate.estimate()),
                Figures.rounded(estimate.posterior().low()),
                Figures.rounded(estimate.posterior().high()),
                estimate.posterior().level(),
                Figures.rounded(estimate.excess()),
                Figures.rounded(excess.low()),
                Figures.rounded(excess.high()),
                Figures.rounded(estimate.chanceAbovePredicted()),
                Figures.rounded(perKilometreYear(estimate.estimate())),
                basisSentence);
    }

    private static List<StretchCounts.Count> byMonth(StretchCounts counts) {
        List<StretchCounts.Count> months = new ArrayList<>();
        for (int month = 1; month <= 12; month++) {
            String name = String.format(Locale.ROOT, "%02d", month);
            months.add(counts.bySeason().stream()
                    .filter(count -> count.of().equals(name))
                    .findFirst()
                    .orElse(new StretchCounts.Count(name, 0)));
        }
        return months;
    }

    private List<StretchAnswer.Count> shown(List<StretchCounts.Count> counts) {
        if (counts.isEmpty()) {
            return List.of();
        }
        int[] row = counts.stream().mapToInt(StretchCounts.Count::incidents).toArray();
        boolean[] hidden =
                smallest == null ? new boolean[row.length] : SmallNumbers.hidden(new int[][] {row}, smallest)[0];
        List<StretchAnswer.Count> shown = new ArrayList<>();
        for (int i = 0; i < row.length; i++) {
            shown.add(new StretchAnswer.Count(counts.get(i).of(), hidden[i] ? null : Integer.valueOf(row[i])));
        }
        return shown;
    }

    private List<StretchAnswer.Behind> behind(@Nullable StretchCounts counts) {
        List<StretchAnswer.Behind> behind = new ArrayList<>();
        for (PublishedFigures.Unreported row : published.unreported()) {
            UnderReporting.Behind range = counts == null
                    ? null
                    : new UnderReporting(row.low(), row.high(), row.source())
                            .behind((double) counts.incidents() / years.count());
            behind.add(new StretchAnswer.Behind(
                    row.what(),
                    row.low(),
                    row.high(),
                    range == null ? null : Figures.finite(range.low(), 2),
                    range == null ? null : Figures.finite(range.high(), 2),
                    row.where(),
                    row.source(),
                    row.doi()));
        }
        return behind;
    }

    private Range perYear(EmpiricalBayes estimate) {
        double best = estimate.estimate() / years.count();
        return new Range(
                Math.min(best, estimate.posterior().low() / years.count()),
                best,
                Math.max(best, estimate.posterior().high() / years.count()));
    }

    private StretchAnswer.@Nullable Power power(EmpiricalBayes estimate) {
        double perYear = estimate.estimate() / years.count();
        if (!(perYear > 0 && perYear <= 1000)) {
            return null;
        }
        double percent = Objects.requireNonNullElse(question.reductionPercent(), USUAL_REDUCTION_PERCENT);
        List<StretchAnswer.YearOfPower> byYear = Power.byYear(
                        new Power.Assumptions(perYear, percent / 100, years.count(), ALPHA, Power.Sides.EQUAL_TAILS),
                        YEARS_AFTER)
                .stream()
                .map(year -> new StretchAnswer.YearOfPower(
                        year.yearsAfter(), Figures.rounded(year.power()), Figures.rounded(year.atBest())))
                .toList();
        return new StretchAnswer.Power(
                Figures.rounded(perYear),
                percent,
                years.count(),
                ALPHA,
                byYear,
                "Works that prevent " + Figures.percent(percent / 100) + " here would be seen to help with a chance of "
                        + Figures.percent(byYear.get(0).power()) + " after 1 year, "
                        + Figures.percent(byYear.get(4).power()) + " after 5 and "
                        + Figures.percent(byYear.get(9).power()) + " after 10.");
    }
}
