package org.culvert.hotspot.stats.rate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.culvert.hotspot.stats.rate.TreatedStretch.Part;
import org.culvert.hotspot.stats.rate.WorksEffect.Method;
import org.jspecify.annotations.Nullable;

/**
 * Whether works helped: observational before-after studies (E. Hauer 1997, Observational Before-After Studies in Road
 * Safety, chapters 6, 9 and 11).
 *
 * <p>The plain comparison of before and after never stands alone: a study without comparison stretches and without a safety
 * performance function is refused. It is computed inside the works, at their ends, beyond them, and for all together; ends
 * counted as treated would hide that animals were moved rather than saved.
 *
 * <p>The exact interval is exact for one stretch, and for several where expectations of after and before stand in the same
 * ratio and shrink alike; else the sum of their posteriors is taken as the gamma distribution of equal mean and variance.
 * The same holds for the noise of comparison stretches. The uncertainty of the function itself is not in it.
 */
public final class BeforeAfter {
    private BeforeAfter() {}

    /**
     * Something that may have changed counts besides the works. It is carried to the reader and changes no figure.
     *
     * @param kind what changed
     * @param from first day; null where not known
     * @param to last day; null where not known or not over
     * @param text in words
     * @param source who says so
     */
    public record Note(
            Kind kind, @Nullable LocalDate from, @Nullable LocalDate to, String text, String source) {
        /** What changed. */
        public enum Kind {
            /** How hard somebody looked, or how many answered the telephone. */
            EFFORT,
            /** How many people knew whom to ring. */
            PUBLICITY,
            /** Anything else, such as a speed limit or a drought. */
            OTHER
        }
    }

    /**
     * What is known.
     *
     * @param stretches at least one
     * @param comparison stretches without works, over the same periods; null where there are none
     * @param notes what else may have changed counts
     * @param level of the intervals
     */
    public record Study(
            List<TreatedStretch> stretches, @Nullable ComparisonGroup comparison, List<Note> notes, double level) {
        public Study {
            stretches = List.copyOf(stretches);
            notes = List.copyOf(notes);
            Interval.requireLevel(level);
            if (stretches.isEmpty()) {
                throw new IllegalArgumentException("a study needs at least one stretch");
            }
            if (comparison == null && !stretches.stream().allMatch(TreatedStretch::hasModel)) {
                throw new IllegalArgumentException(
                        "before and after alone are not shown: give comparison stretches, or a"
                                + " safety performance function's predictions for every stretch");
            }
        }
    }

    /**
     * The effect on one part.
     *
     * @param part which
     * @param controlled by each method that can be shown by itself, the best last; at least one
     * @param naive from the counts alone, to show how far it is out
     */
    public record PartEffect(Part part, List<WorksEffect> controlled, WorksEffect naive) {
        public PartEffect {
            controlled = List.copyOf(controlled);
            if (controlled.isEmpty()
                    || !controlled.stream().allMatch(effect -> effect.method().isControlled())) {
                throw new IllegalArgumentException("a part needs a controlled effect beside the naive one");
            }
        }

        /** The one to quote. */
        public WorksEffect best() {
            return controlled.get(controlled.size() - 1);
        }
    }

    /**
     * The answer.
     *
     * @param parts inside, ends and beyond, as far as there are stretches, and combined
     * @param notes as given
     * @param cautions what the reader must know besides
     */
    public record Finding(List<PartEffect> parts, List<Note> notes, List<String> cautions) {
        public Finding {
            parts = List.copyOf(parts);
            notes = List.copyOf(notes);
            cautions = List.copyOf(cautions);
        }

        /** The effect on a part that has stretches. */
        public PartEffect part(Part wanted) {
            return parts.stream()
                    .filter(effect -> effect.part() == wanted)
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("no stretch of the study lies " + wanted));
        }
    }

    /** Works it out. */
    public static Finding of(Study study) {
        List<PartEffect> parts = new ArrayList<>();
        Set<Part> present = EnumSet.noneOf(Part.class);
        study.stretches().forEach(stretch -> present.add(stretch.part()));
        for (Part part : present) {
            parts.add(effect(
                    part,
                    study.stretches().stream()
                            .filter(stretch -> stretch.part() == part)
                            .toList(),
                    study));
        }
        parts.add(
                parts.size() == 1
                        ? new PartEffect(
                                Part.COMBINED,
                                parts.get(0).controlled(),
                                parts.get(0).naive())
                        : effect(Part.COMBINED, study.stretches(), study));
        return new Finding(parts, study.notes(), cautions(study, present));
    }

    private static PartEffect effect(Part part, List<TreatedStretch> stretches, Study study) {
        ComparisonGroup comparison = study.comparison();
        List<WorksEffect> controlled = new ArrayList<>();
        if (comparison != null) {
            controlled.add(byComparison(stretches, comparison, study.level()));
        }
        if (stretches.stream().allMatch(TreatedStretch::hasModel)) {
            controlled.add(byEmpiricalBayes(stretches, null, study.level()));
            if (comparison != null && !Double.isNaN(comparison.predictedRatio())) {
                controlled.add(byEmpiricalBayes(stretches, comparison, study.level()));
            }
        }
        return new PartEffect(part, controlled, naive(stretches, study.level()));
    }

    private static WorksEffect naive(List<TreatedStretch> stretches, double level) {
        double expected = 0;
        double variance = 0;
        for (TreatedStretch stretch : stretches) {
            expected += stretch.yearsRatio() * stretch.before();
            variance += stretch.yearsRatio() * stretch.yearsRatio() * stretch.before();
        }
        GammaPoisson exact = before(stretches) == 0
                ? GammaPoisson.fromCount(0, meanYearsRatio(stretches))
                : GammaPoisson.fromCount(expected * expected / variance, variance / expected);
        return WorksEffect.of(Method.NAIVE, before(stretches), after(stretches), expected, variance, exact, level);
    }

    private static WorksEffect byComparison(List<TreatedStretch> stretches, ComparisonGroup comparison, double level) {
        int before = before(stretches);
        double expected = comparison.ratio() * before;
        double relative = 1.0 / before + comparison.squaredVariation();
        GammaPoisson exact = before == 0
                ? GammaPoisson.fromCount(0, comparison.ratio())
                : GammaPoisson.fromCount(1 / relative, expected * relative);
        return WorksEffect.of(
                Method.COMPARISON_GROUP,
                before,
                after(stretches),
                expected,
                before == 0 ? 0 : expected * expected * relative,
                exact,
                level);
    }

    private static WorksEffect byEmpiricalBayes(
            List<TreatedStretch> stretches, @Nullable ComparisonGroup comparison, double level) {
        double expected = 0;
        double variance = 0;
        for (TreatedStretch stretch : stretches) {
            var estimate =
                    EmpiricalBayes.of(stretch.predictedBefore(), stretch.overdispersion(), stretch.before(), level);
            double ratio = stretch.predictedRatio();
            expected += ratio * estimate.estimate();
            variance += ratio * ratio * estimate.variance();
        }
        Method method = Method.EMPIRICAL_BAYES;
        if (comparison != null) {
            method = Method.EMPIRICAL_BAYES_WITH_COMPARISON;
            double relative = variance / (expected * expected) + comparison.squaredVariation();
            expected *= comparison.ratio() / comparison.predictedRatio();
            variance = expected * expected * relative;
        }
        return WorksEffect.of(
                method,
                before(stretches),
                after(stretches),
                expected,
                variance,
                GammaPoisson.fromPosterior(expected, variance),
                level);
    }

    private static List<String> cautions(Study study, Set<Part> present) {
        List<String> cautions = new ArrayList<>();
        if (!study.stretches().stream().allMatch(TreatedStretch::hasModel)) {
            cautions.add(
                    "Without a safety performance function for every stretch, some of the reduction may be no more than"
                            + " the return of a chance high to the usual.");
        }
        if (study.comparison() == null) {
            cautions.add("Without comparison stretches, what changed everywhere, such as traffic not in the model, the"
                    + " number of animals or of people who report, counts as an effect of the works.");
        } else if (study.comparison().varianceOfOmega() == 0) {
            cautions.add("The comparison stretches are taken to change exactly as these would have: the interval is too"
                    + " narrow if they do not.");
        }
        if (!present.contains(Part.ENDS) || !present.contains(Part.BEYOND)) {
            cautions.add("Not all of inside, ends and beyond were counted: animals moved along the road cannot be told"
                    + " from animals saved.");
        }
        if (study.notes().stream().noneMatch(note -> note.kind() != Note.Kind.OTHER)) {
            cautions.add(
                    "Nothing is noted of effort or publicity: whether as many collisions were reported after as before"
                            + " is not known.");
        }
        return cautions;
    }

    private static int before(List<TreatedStretch> stretches) {
        return stretches.stream().mapToInt(TreatedStretch::before).sum();
    }

    private static int after(List<TreatedStretch> stretches) {
        return stretches.stream().mapToInt(TreatedStretch::after).sum();
    }

    private static double meanYearsRatio(List<TreatedStretch> stretches) {
        return stretches.stream()
                .mapToDouble(TreatedStretch::yearsRatio)
                .average()
                .orElseThrow();
    }
}
