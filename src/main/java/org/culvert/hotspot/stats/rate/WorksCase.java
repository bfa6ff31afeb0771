package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;

/**
 * What works on a stretch would be worth, in present values.
 *
 * <p>Building falls at the start, everything else at the end of each year; a sum of year t is divided by
 * {@code (1 + rate)^t}. Equal yearly sums come to the annuity {@code (1 - (1 + rate)^-n) / rate} (for example E. J. Mishan
 * and E. Quah, Cost-Benefit Analysis, 5th ed. 2007).
 *
 * <p>The range of an outcome is what it is when every figure is at whichever end of its own range makes the outcome least,
 * or greatest. It is not a 95 % interval: that all go wrong together is unlikely, and that any lies beyond its range is not
 * ruled out. {@link #sensitivities()} says which figure matters.
 *
 * @param inputs what it rests on
 * @param benefits present value of what avoided collisions would have cost
 * @param costs present value of building, upkeep and renewals
 * @param net benefits less costs
 * @param ratio benefits over costs
 * @param breakEvenShare share avoided at which benefits equal costs, at best figures; above 1 where no works could
 * @param sensitivities one per figure with a range, in the order of the inputs
 */
public record WorksCase(
        WorksInputs inputs,
        Range benefits,
        Range costs,
        Range net,
        Range ratio,
        double breakEvenShare,
        List<Sensitivity> sensitivities) {
    private static final int RATES_TRIED = 21;

    /**
     * The benefit-cost ratio when one figure is at its ends and all others at their best.
     *
     * @param figure which
     * @param atLow ratio at the figure's low end
     * @param atHigh ratio at its high end
     */
    public record Sensitivity(String figure, double atLow, double atHigh) {}

    /** One choice of all figures. */
    private record Figures(
            double collisions,
            double share,
            double perCollision,
            double building,
            double upkeep,
            double[] renewals,
            double rate) {}

    public WorksCase {
        sensitivities = List.copyOf(sensitivities);
    }

    /** Works it out. */
    public static WorksCase of(WorksInputs inputs) {
        Figures best = new Figures(
                inputs.collisionsPerYear().best(),
                inputs.shareAvoided().best(),
                perCollision(inputs, Range::best),
                inputs.building().best(),
                inputs.upkeepPerYear().best(),
                renewals(inputs, Range::best),
                inputs.discountRate().best());
        List<Figures> extremes = extremes(inputs);
        ToDoubleFunction<Figures> benefits = figures -> benefits(inputs, figures);
        ToDoubleFunction<Figures> costs = figures -> costs(inputs, figures);
        ToDoubleFunction<Figures> ratio = figures -> benefits(inputs, figures) / costs(inputs, figures);
        return new WorksCase(
                inputs,
                range(best, extremes, benefits),
                range(best, extremes, costs),
                range(best, extremes, figures -> benefits(inputs, figures) - costs(inputs, figures)),
                range(best, extremes, ratio),
                breakEven(inputs, best),
                sensitivities(inputs, best, ratio));
    }

    /** Present value of 1 at the end of each of n years. */
    public static double annuity(double rate, int years) {
        double sum = 0;
        for (int year = 1; year <= years; year++) {
            sum += Math.pow(1 + rate, -year);
        }
        return sum;
    }

    private static double breakEven(WorksInputs inputs, Figures best) {
        return costs(inputs, best) / benefits(inputs, with(best, best.collisions(), 1, best.perCollision()));
    }

    private static double benefits(WorksInputs inputs, Figures figures) {
        double sum = 0;
        double collisions = figures.collisions();
        for (int year = 1; year <= inputs.lifeYears(); year++) {
            sum += collisions * figures.share() * figures.perCollision() * Math.pow(1 + figures.rate(), -year);
            collisions *= 1 + inputs.yearlyChange();
        }
        return sum;
    }

    private static double costs(WorksInputs inputs, Figures figures) {
        double sum = figures.building() + figures.upkeep() * annuity(figures.rate(), inputs.lifeYears());
        for (int i = 0; i < figures.renewals().length; i++) {
            sum += figures.renewals()[i]
                    * Math.pow(1 + figures.rate(), -inputs.renewals().get(i).year());
        }
        return sum;
    }

    private static double perCollision(WorksInputs inputs, ToDoubleFunction<Range> end) {
        return inputs.unitCosts().stream()
                .mapToDouble(cost -> end.applyAsDouble(cost.perCollision()))
                .sum();
    }

    private static double[] renewals(WorksInputs inputs, ToDoubleFunction<Range> end) {
        return inputs.renewals().stream()
                .mapToDouble(renewal -> end.applyAsDouble(renewal.cost()))
                .toArray();
    }

    /** Outcomes are monotone in every figure but the rate, whose range is walked through. */
    private static List<Figures> extremes(WorksInputs inputs) {
        List<ToDoubleFunction<Range>> ends = List.of(Range::low, Range::high);
        List<Figures> all = new ArrayList<>();
        for (ToDoubleFunction<Range> collisions : ends) {
            for (ToDoubleFunction<Range> share : ends) {
                for (ToDoubleFunction<Range> unit : ends) {
                    for (ToDoubleFunction<Range> cost : ends) {
                        for (int i = 0; i < RATES_TRIED; i++) {
                            double part = i / (RATES_TRIED - 1.0);
                            Range rate = inputs.discountRate();
                            all.add(new Figures(
                                    collisions.applyAsDouble(inputs.collisionsPerYear()),
                                    share.applyAsDouble(inputs.shareAvoided()),
                                    perCollision(inputs, unit),
                                    cost.applyAsDouble(inputs.building()),
                                    cost.applyAsDouble(inputs.upkeepPerYear()),
                                    renewals(inputs, cost),
                                    rate.low() * (1 - part) + rate.high() * part));
                        }
                    }
                }
            }
        }
        return all;
    }

    private static Range range(Figures best, List<Figures> extremes, ToDoubleFunction<Figures> outcome) {
        double middle = outcome.applyAsDouble(best);
        double low = middle;
        double high = middle;
        for (Figures figures : extremes) {
            double value = outcome.applyAsDouble(figures);
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        return new Range(low, middle, high);
    }

    private static List<Sensitivity> sensitivities(WorksInputs inputs, Figures best, ToDoubleFunction<Figures> ratio) {
        List<Sensitivity> all = new ArrayList<>();
        Range collisions = inputs.collisionsPerYear();
        add(all, "collisions a year", collisions, ratio, end -> with(best, end, best.share(), best.perCollision()));
        Range share = inputs.shareAvoided();
        add(all, "share avoided", share, ratio, end -> with(best, best.collisions(), end, best.perCollision()));
        for (WorksInputs.UnitCost cost : inputs.unitCosts()) {
            double others = best.perCollision() - cost.perCollision().best();
            add(
                    all,
                    cost.name(),
                    cost.perCollision(),
                    ratio,
                    end -> with(best, best.collisions(), best.share(), others + end));
        }
        add(
                all,
                "building",
                inputs.building(),
                ratio,
                end -> withCosts(best, end, best.upkeep(), best.renewals(), best.rate()));
        add(
                all,
                "upkeep a year",
                inputs.upkeepPerYear(),
                ratio,
                end -> withCosts(best, best.building(), end, best.renewals(), best.rate()));
        for (int i = 0; i < inputs.renewals().size(); i++) {
            int renewal = i;
            add(
                    all,
                    "renewal in year " + inputs.renewals().get(i).year(),
                    inputs.renewals().get(i).cost(),
                    ratio,
                    end -> {
                        double[] changed = best.renewals().clone();
                        changed[renewal] = end;
                        return withCosts(best, best.building(), best.upkeep(), changed, best.rate());
                    });
        }
        add(
                all,
                "discount rate",
                inputs.discountRate(),
                ratio,
                end -> withCosts(best, best.building(), best.upkeep(), best.renewals(), end));
        return all;
    }

    private static void add(
            List<Sensitivity> all,
            String figure,
            Range range,
            ToDoubleFunction<Figures> ratio,
            DoubleFunction<Figures> change) {
        if (range.low() < range.high()) {
            all.add(new Sensitivity(
                    figure,
                    ratio.applyAsDouble(change.apply(range.low())),
                    ratio.applyAsDouble(change.apply(range.high()))));
        }
    }

    private static Figures with(Figures best, double collisions, double share, double perCollision) {
        return new Figures(
                collisions, share, perCollision, best.building(), best.upkeep(), best.renewals(), best.rate());
    }

    private static Figures withCosts(Figures best, double building, double upkeep, double[] renewals, double rate) {
        return new Figures(best.collisions(), best.share(), best.perCollision(), building, upkeep, renewals, rate);
    }
}
