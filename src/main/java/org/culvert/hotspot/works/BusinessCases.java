package org.culvert.hotspot.works;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.culvert.hotspot.Words;
import org.culvert.hotspot.stats.rate.Range;
import org.culvert.hotspot.stats.rate.WorksCase;
import org.culvert.hotspot.stats.rate.WorksInputs;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** Works out what works would be worth from the asker's own figures. */
final class BusinessCases {
    private static final String FIELD = "businessCase.";

    private BusinessCases() {}

    /**
     * @param collisionsPerYear what is expected, or null where nothing is or it is not told
     * @throws InvalidException naming the field that is wrong or missing
     */
    static StretchAnswer.Case of(StretchQuestion.BusinessCase asked, @Nullable Range collisionsPerYear) {
        StretchQuestion.Bounds own = asked.collisionsPerYear();
        Range collisions = own == null ? collisionsPerYear : range("collisionsPerYear", own, 0, 1e9);
        if (collisions == null) {
            throw InvalidException.of(
                    FIELD + "collisionsPerYear",
                    "Nothing is told to you of what is expected of this stretch, so a case needs your own figure.",
                    "collisions a year without works, with low, best and high");
        }
        List<WorksInputs.UnitCost> units = new ArrayList<>();
        for (int i = 0; i < asked.unitCosts().size(); i++) {
            StretchQuestion.UnitCost cost = asked.unitCosts().get(i);
            units.add(new WorksInputs.UnitCost(
                    cost.name(),
                    range("unitCosts[" + i + "].perCollision", cost.perCollision(), 0, 1e15),
                    cost.source()));
        }
        List<WorksInputs.Renewal> renewals = new ArrayList<>();
        List<StretchQuestion.Renewal> given = Objects.requireNonNullElse(asked.renewals(), List.of());
        for (int i = 0; i < given.size(); i++) {
            if (given.get(i).year() > asked.lifeYears()) {
                throw InvalidException.of(
                        FIELD + "renewals[" + i + "].year", "The works are gone by then.", "1 to " + asked.lifeYears());
            }
            renewals.add(new WorksInputs.Renewal(
                    given.get(i).year(),
                    range("renewals[" + i + "].cost", given.get(i).cost(), 0, 1e15)));
        }
        Range building = range("building", asked.building(), 0, 1e15);
        Range upkeep = range("upkeepPerYear", asked.upkeepPerYear(), 0, 1e15);
        if (!(building.low() + upkeep.low() > 0)) {
            throw InvalidException.of(
                    FIELD + "building",
                    "Works that cost nothing need no case.",
                    "a cost of building or upkeep above 0");
        }
        WorksCase worked = WorksCase.of(new WorksInputs(
                asked.currency(),
                asked.priceYear(),
                collisions,
                Objects.requireNonNullElse(asked.yearlyChange(), 0.0),
                range("shareAvoided", asked.shareAvoided(), -10, 1),
                units,
                building,
                upkeep,
                renewals,
                range("discountRate", asked.discountRate(), -0.5, 0.99),
                asked.lifeYears()));
        return view(asked, worked, own != null);
    }

    private static StretchAnswer.Case view(
            StretchQuestion.BusinessCase asked, WorksCase worked, boolean collisionsAreTheAskers) {
        Range ratio = worked.ratio();
        return new StretchAnswer.Case(
                asked.currency(),
                asked.priceYear(),
                worked.inputs().unitCosts().stream()
                        .map(cost -> new StretchAnswer.Cost(cost.name(), ranged(cost.perCollision(), 2), cost.source()))
                        .toList(),
                ranged(worked.inputs().collisionsPerYear(), 4),
                collisionsAreTheAskers,
                ranged(worked.benefits(), 2),
                ranged(worked.costs(), 2),
                ranged(worked.net(), 2),
                ranged(ratio, 4),
                Figures.finite(worked.breakEvenShare(), 4),
                worked.sensitivities().stream()
                        .map(one -> new StretchAnswer.Sensitivity(
                                one.figure(), Figures.rounded(one.atLow()), Figures.rounded(one.atHigh())))
                        .toList(),
                "From the asker's own figures, each " + asked.currency() + " spent would save "
                        + Figures.number(ratio.best()) + " (from " + Figures.number(ratio.low()) + " to "
                        + Figures.number(ratio.high()) + " with all figures at their worst or best) over "
                        + asked.lifeYears() + " years, at prices of " + asked.priceYear() + ".");
    }

    private static StretchAnswer.Ranged ranged(Range range, int decimals) {
        return new StretchAnswer.Ranged(
                Words.rounded(range.low(), decimals),
                Words.rounded(range.best(), decimals),
                Words.rounded(range.high(), decimals));
    }

    private static Range range(String field, StretchQuestion.Bounds bounds, double least, double most) {
        double best = bounds.best();
        double low = Objects.requireNonNullElse(bounds.low(), best);
        double high = Objects.requireNonNullElse(bounds.high(), best);
        if (!(low <= best && best <= high)) {
            throw InvalidException.of(FIELD + field, "The range is not in order.", "low, best and high in that order");
        }
        if (!(low >= least && high <= most)) {
            throw InvalidException.of(
                    FIELD + field, "This is out of range.", "from " + Figures.number(least) + " to " + number(most));
        }
        return new Range(low, best, high);
    }

    private static String number(double most) {
        return most < 10 ? Words.number(most, 2) : Words.number(most, 0);
    }
}
