package org.culvert.hotspot.stats.rate;

/**
 * A stretch at works, before and after.
 *
 * @param id its name
 * @param part where it lies by the works
 * @param before incidents in the period before, 0 or more
 * @param after incidents in the period after, 0 or more
 * @param yearsBefore length of the period before, above 0; the building itself belongs to neither
 * @param yearsAfter length of the period after, above 0
 * @param predictedBefore what the safety performance function expects of it before; NaN where there is none
 * @param predictedAfter what it expects after, without works, at the traffic of that time; NaN where there is none
 * @param overdispersion k of a stretch of this length; NaN where there is no function
 */
public record TreatedStretch(
        String id,
        Part part,
        int before,
        int after,
        double yearsBefore,
        double yearsAfter,
        double predictedBefore,
        double predictedAfter,
        double overdispersion) {
    private static final double FAR_OUT = 0.001;

    /** Where a stretch lies by the works. */
    public enum Part {
        /** Between the ends of the works. */
        INSIDE,
        /** At their ends, where animals walk round them. */
        ENDS,
        /** Beyond the ends, as far as animals may have been moved. */
        BEYOND,
        /** All of it together: what the works did on balance. */
        COMBINED
    }

    public TreatedStretch {
        if (part == Part.COMBINED) {
            throw new IllegalArgumentException("a stretch lies inside, at the ends or beyond; combined is worked out");
        }
        if (before < 0 || after < 0) {
            throw new IllegalArgumentException("incidents of stretch " + id + " are 0 or more");
        }
        if (!(yearsBefore > 0 && yearsAfter > 0)) {
            throw new IllegalArgumentException("periods of stretch " + id + " are above 0 years");
        }
        boolean all = predictedBefore > 0 && predictedAfter > 0 && overdispersion >= 0;
        boolean none = Double.isNaN(predictedBefore) && Double.isNaN(predictedAfter) && Double.isNaN(overdispersion);
        if (!all && !none) {
            throw new IllegalArgumentException(
                    "stretch " + id + " needs two predictions above 0 and an overdispersion, or NaN for all three");
        }
    }

    /** A stretch for which no safety performance function is at hand. */
    public static TreatedStretch withoutModel(
            String id, Part part, int before, int after, double yearsBefore, double yearsAfter) {
        return new TreatedStretch(id, part, before, after, yearsBefore, yearsAfter, Double.NaN, Double.NaN, Double.NaN);
    }

    /** Whether a safety performance function expects something of it. */
    public boolean hasModel() {
        return !Double.isNaN(predictedBefore);
    }

    /**
     * Whether there was so much more before than the function allows that it does not describe this stretch: so many or more
     * have a probability below 0.001 (our own limit, no source) in the negative binomial distribution with the function's mean
     * and overdispersion; in the Poisson distribution where that is 0.
     */
    public boolean isUnlikeItsModel() {
        return hasModel() && chanceOfAsMany() < FAR_OUT;
    }

    double chanceOfAsMany() {
        double size = 1 / overdispersion;
        double probability = overdispersion == 0
                ? Math.exp(-predictedBefore)
                : Math.exp(-size * Math.log1p(overdispersion * predictedBefore));
        double fewer = 0;
        for (int count = 0; count < before; count++) {
            fewer += probability;
            probability *= overdispersion == 0
                    ? predictedBefore / (count + 1)
                    : (size + count) / (count + 1) * predictedBefore / (size + predictedBefore);
        }
        return 1 - fewer;
    }

    double yearsRatio() {
        return yearsAfter / yearsBefore;
    }

    double predictedRatio() {
        return predictedAfter / predictedBefore;
    }
}
