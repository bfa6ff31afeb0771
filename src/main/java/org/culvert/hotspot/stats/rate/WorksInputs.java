package org.culvert.hotspot.stats.rate;

import java.util.List;

/**
 * What a business case of works rests on. All of it is the asker's to set; nothing has a default.
 *
 * <p>Money is in one currency at the prices of one year, so the discount rate is a real one.
 *
 * @param currency such as AUD
 * @param priceYear year whose prices these are
 * @param collisionsPerYear expected on the stretch without works, in the first year; from the empirical Bayes estimate and
 *     its interval rather than from the count
 * @param yearlyChange by which share collisions change from year to year without works, such as 0.02 or -0.01; 0 for none
 * @param shareAvoided of them by the works; negative where they may do harm
 * @param unitCosts what a collision costs, by kinds of cost, at least one
 * @param building cost at the start
 * @param upkeepPerYear cost at the end of each year
 * @param renewals further payments
 * @param discountRate a year, above -1, such as 0.04
 * @param lifeYears how long the works stand, 1 or more
 */
public record WorksInputs(
        String currency,
        int priceYear,
        Range collisionsPerYear,
        double yearlyChange,
        Range shareAvoided,
        List<UnitCost> unitCosts,
        Range building,
        Range upkeepPerYear,
        List<Renewal> renewals,
        Range discountRate,
        int lifeYears) {
    /**
     * One kind of cost of a collision, averaged over collisions with and without it.
     *
     * @param name such as vehicle damage
     * @param perCollision 0 or more
     * @param source who says so
     */
    public record UnitCost(String name, Range perCollision, String source) {
        public UnitCost {
            perCollision.atLeast(0, "the cost of " + name);
        }
    }

    /**
     * A payment at the end of a year of the works' life.
     *
     * @param year from 1 to the life
     * @param cost 0 or more
     */
    public record Renewal(int year, Range cost) {
        public Renewal {
            cost.atLeast(0, "a renewal");
        }
    }

    public WorksInputs {
        unitCosts = List.copyOf(unitCosts);
        renewals = List.copyOf(renewals);
        collisionsPerYear.atLeast(0, "collisions a year");
        building.atLeast(0, "building");
        upkeepPerYear.atLeast(0, "upkeep");
        if (shareAvoided.high() > 1) {
            throw new IllegalArgumentException("no more than all collisions can be avoided: a share is at most 1");
        }
        if (!(yearlyChange > -1 && yearlyChange < 1)) {
            throw new IllegalArgumentException("a yearly change is a share between -1 and 1, such as 0.02");
        }
        if (!(discountRate.low() > -1 && discountRate.high() < 1)) {
            throw new IllegalArgumentException("a discount rate is a share between -1 and 1, such as 0.04");
        }
        if (lifeYears < 1) {
            throw new IllegalArgumentException("works stand for at least 1 year");
        }
        if (unitCosts.isEmpty()) {
            throw new IllegalArgumentException("say at least one cost of a collision");
        }
        for (Renewal renewal : renewals) {
            if (renewal.year() < 1 || renewal.year() > lifeYears) {
                throw new IllegalArgumentException("a renewal falls into years 1 to " + lifeYears);
            }
        }
        double best = building.best()
                + upkeepPerYear.best()
                + renewals.stream()
                        .mapToDouble(renewal -> renewal.cost().best())
                        .sum();
        if (!(best > 0)) {
            throw new IllegalArgumentException("works that cost nothing need no case: give their building or upkeep");
        }
    }
}
