package org.culvert.hotspot.works;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.stats.SmallNumbers;
import org.culvert.hotspot.stats.rate.BeforeAfter;
import org.culvert.hotspot.stats.rate.Power;
import org.culvert.hotspot.stats.rate.SafetyPerformance;
import org.culvert.hotspot.stats.rate.TreatedStretch;
import org.culvert.hotspot.stats.rate.TreatedStretch.Part;
import org.culvert.hotspot.stats.rate.WorksEffect;
import org.jspecify.annotations.Nullable;

/** Writes down what works did, for whoever asks. */
final class EffectWriter {
    /** With fewer expected, hardly any effect can be seen: none at all has a chance of 5 % where 3 are expected. */
    private static final double FEW_EXPECTED = 3;

    private static final List<String> NOT_CONTROLLED = List.of(
            "whether more or fewer people look for animals, answer the telephone or report, but for what is the same"
                    + " on the stretches compared with",
            "carcasses that scavengers or traffic took before anyone saw them",
            "animals that became rare because so many were killed before",
            "chainages of two carriageways are taken to run together");

    private final Works works;
    private final EffectQuestion question;
    private final RunSettings.Season season;
    private final EffectZones zones;
    private final List<BeforeAfter.Note> notes;
    private final @Nullable Integer smallest;

    /**
     * @param smallest smallest count that the asker is told, or null where every count
     */
    EffectWriter(
            Works works,
            EffectQuestion question,
            RunSettings.Season season,
            EffectZones zones,
            List<BeforeAfter.Note> notes,
            @Nullable Integer smallest) {
        this.works = works;
        this.question = question;
        this.season = season;
        this.zones = zones;
        this.notes = notes;
        this.smallest = smallest;
    }

    EffectView withheld(EffectPeriods periods, String why) {
        return view(periods, null, Set.of(), null, List.of(), List.of(), List.of(), why, null);
    }

    EffectView tooEarly(EffectPeriods periods, Collisions read, int networkNumber, List<String> cautions) {
        List<String> plainly = new ArrayList<>();
        if (periods.after().isEmpty()) {
            plainly.add(
                    works.builtUntil == null
                            ? "The works are still under way: there is nothing to compare yet."
                            : "No whole year has passed since the works were finished, or they did not stand for one:"
                                    + " it is too early to say anything.");
        }
        if (periods.before().isEmpty()) {
            plainly.add("Nothing at all was reported in the years before: there is nothing to compare with.");
        }
        return view(
                periods,
                null,
                Set.of(),
                null,
                List.of(),
                plainly,
                cautions,
                null,
                read.basis(networkNumber, NOT_CONTROLLED));
    }

    EffectView told(
            EffectPeriods periods,
            EffectStudy.Outcome outcome,
            Set<String> classes,
            EffectStudy.Elsewhere elsewhere,
            Collisions read,
            int networkNumber,
            List<String> cautions) {
        List<String> plainly = new ArrayList<>(outcome.whyNot());
        List<String> all = new ArrayList<>(cautions);
        List<EffectView.PartView> parts = List.of();
        BeforeAfter.Finding finding = outcome.finding();
        if (finding == null) {
            plainly.add("So what would have come without the works cannot be told, and counts alone are not shown.");
        } else {
            parts = parts(finding, outcome.stretches());
            all.addAll(finding.cautions());
            if (outcome.stretches().stream().anyMatch(TreatedStretch::isUnlikeItsModel)) {
                plainly.add(
                        "Already before the works there were far more collisions here than the roads that it is compared"
                                + " with would have, by more than chance. They do not say what would have come here, and what is"
                                + " expected below is too little: only where fewer than that came after are the works judged"
                                + " by it.");
            }
            WorksEffect whole = finding.part(Part.COMBINED).best();
            if (whole.expected() < FEW_EXPECTED) {
                plainly.add("Fewer than " + Figures.number(FEW_EXPECTED) + " collisions would have been expected after"
                        + " without the works: even if the works prevent every one, that could be chance.");
            }
        }
        if (Math.min(periods.before().size(), periods.after().size()) < 3) {
            plainly.add("There are " + years(periods.before().size()) + " before and "
                    + years(periods.after().size())
                    + " after: with fewer than three of each, a good or a bad year weighs much.");
        }
        SafetyPerformance performance = outcome.model().performance();
        if (performance != null && performance.fit().overdispersion() == 0) {
            all.add(
                    "Windows of these roads differ by no more than chance, so the model takes this stretch to have been like"
                            + " the others, whatever its own count before.");
        }
        return view(
                periods,
                outcome,
                classes,
                elsewhere,
                parts,
                plainly,
                all,
                null,
                read.basis(networkNumber, NOT_CONTROLLED));
    }

    private static String years(int years) {
        return years == 1 ? "1 year" : years + " years";
    }

    private List<EffectView.PartView> parts(BeforeAfter.Finding finding, List<TreatedStretch> stretches) {
        List<BeforeAfter.PartEffect> single = finding.parts().stream()
                .filter(effect -> effect.part() != Part.COMBINED)
                .toList();
        int[][] counts = single.stream()
                .map(effect -> new int[] {effect.best().before(), effect.best().after()})
                .toArray(int[][]::new);
        boolean[][] hidden =
                smallest == null ? new boolean[counts.length + 1][3] : SmallNumbers.hidden(counts, smallest);
        List<EffectView.PartView> parts = new ArrayList<>();
        for (BeforeAfter.PartEffect effect : finding.parts()) {
            int row = effect.part() == Part.COMBINED ? counts.length : single.indexOf(effect);
            List<TreatedStretch> ofPart = stretches.stream()
                    .filter(stretch -> effect.part() == Part.COMBINED || stretch.part() == effect.part())
                    .toList();
            parts.add(part(effect, ofPart, hidden[row][0] || hidden[row][1] || hidden[row][2]));
        }
        return parts;
    }

    private EffectView.PartView part(BeforeAfter.PartEffect effect, List<TreatedStretch> stretches, boolean isHidden) {
        WorksEffect best = effect.best();
        double predicted =
                stretches.stream().mapToDouble(TreatedStretch::predictedBefore).sum();
        boolean judged = Verdicts.isJudged(best, stretches);
        String name = effect.part().name().toLowerCase(Locale.ROOT);
        double length = Figures.rounded(zones.lengthMetres(effect.part()));
        String method = Verdicts.method(best.method());
        if (isHidden) {
            return new EffectView.PartView(
                    name,
                    length,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    EffectStudy.LEVEL,
                    null,
                    null,
                    null,
                    method,
                    judged ? Verdicts.inWords(best) : Verdicts.UNLIKE);
        }
        double rawRatio = best.after() / effect.naive().expected();
        return new EffectView.PartView(
                name,
                length,
                best.before(),
                best.after(),
                Figures.finite(predicted, 4),
                Figures.finite(best.expected(), 4),
                Figures.finite(Math.sqrt(best.variance()), 4),
                best.isBoundOnly() || !judged ? null : Figures.finite(best.theta(), 4),
                judged ? Figures.finite(best.interval().low(), 4) : null,
                judged ? Figures.finite(best.interval().high(), 4) : null,
                EffectStudy.LEVEL,
                judged ? Figures.finite(best.upperBound(), 4) : null,
                judged ? Figures.finite(best.reductionPercent(), 2) : null,
                Figures.finite(rawRatio, 4),
                method,
                judged ? Verdicts.withFigures(best) : Verdicts.UNLIKE);
    }

    private EffectView view(
            EffectPeriods periods,
            EffectStudy.@Nullable Outcome outcome,
            Set<String> classes,
            EffectStudy.@Nullable Elsewhere elsewhere,
            List<EffectView.PartView> parts,
            List<String> plainly,
            List<String> cautions,
            @Nullable String withheld,
            @Nullable AnswerBasis basis) {
        boolean hasBefore = !periods.before().isEmpty();
        boolean hasAfter = !periods.after().isEmpty();
        RoadModel model = outcome == null ? null : outcome.model();
        SafetyPerformance performance = model == null ? null : model.performance();
        return new EffectView(
                works.id(),
                works.kind,
                works.words,
                works.road,
                works.fromChainageMetres,
                works.toChainageMetres,
                works.endsMetres,
                question.beyondMetres(),
                question.taxonGroup(),
                season.words(),
                hasBefore ? periods.beforeFrom() : null,
                hasBefore ? periods.beforeTo() : null,
                periods.before().size(),
                hasAfter ? periods.afterFrom() : null,
                hasAfter ? periods.afterTo() : null,
                periods.after().size(),
                List.copyOf(classes),
                comparison(),
                outcome == null ? null : shown(outcome.comparisonBefore()),
                outcome == null ? null : shown(outcome.comparisonAfter()),
                elsewhere == null ? null : shown(elsewhere.before()),
                elsewhere == null ? null : shown(elsewhere.after()),
                performance == null ? null : Figures.finite(performance.fit().overdispersion(), 6),
                model == null || performance == null
                        ? null
                        : model.basis(zones.roads()).sentence(),
                parts,
                halving(outcome, periods, parts),
                plainly,
                notes.stream()
                        .map(note -> new EffectView.NoteView(
                                note.kind().name().toLowerCase(Locale.ROOT), note.text(), note.source()))
                        .toList(),
                cautions,
                withheld,
                basis);
    }

    private @Nullable Integer shown(int count) {
        return smallest != null && count > 0 && count < smallest ? null : Integer.valueOf(count);
    }

    private String comparison() {
        return question.comparison().isEmpty()
                ? "all other roads of the same class without works"
                : question.comparison().stream()
                        .map(stretch -> stretch.road() + " from " + Figures.number(stretch.from()) + " to "
                                + Figures.number(stretch.to()) + " m")
                        .collect(Collectors.joining("; "));
    }

    /** Only where the counts that it would tell of are told. */
    private static @Nullable Double halving(
            EffectStudy.@Nullable Outcome outcome, EffectPeriods periods, List<EffectView.PartView> parts) {
        if (outcome == null || outcome.finding() == null || parts.isEmpty()) {
            return null;
        }
        Integer before = parts.get(parts.size() - 1).before();
        double perYear = before == null ? 0 : (double) before / periods.before().size();
        if (!(perYear > 0 && perYear <= 1000)) {
            return null;
        }
        return Figures.rounded(Power.after(
                        new Power.Assumptions(perYear, 0.5, periods.before().size(), 0.05, Power.Sides.EQUAL_TAILS),
                        periods.after().size())
                .power());
    }
}
