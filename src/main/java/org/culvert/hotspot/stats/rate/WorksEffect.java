package org.culvert.hotspot.stats.rate;

/**
 * What works did, by one method.
 *
 * <p>pi is what would have been expected after without the works, with its variance; theta the ratio of what came to it:
 * {@code theta = (K/pi) / (1 + Var(pi)/pi^2)}, {@code Var(theta) = theta^2 (1/K + Var(pi)/pi^2) / (1 + Var(pi)/pi^2)^2},
 * {@code delta = pi - K}, {@code Var(delta) = K + Var(pi)} (E. Hauer 1997, Observational Before-After Studies in Road
 * Safety, chapter 6). The interval to quote is {@link #interval()}; that of plus and minus 1.96 standard errors is kept to
 * compare with other reports, and covers badly at small counts.
 *
 * @param method how pi was found
 * @param before incidents before
 * @param after incidents after
 * @param expected pi
 * @param variance of pi
 * @param avoided delta: fewer than expected where positive
 * @param avoidedStandardError its standard error
 * @param theta 1 is no effect, 0.6 is 40 % fewer; NaN where nothing is known of before
 * @param thetaStandardError NaN where theta is, and where there was no incident after
 * @param interval exact, of theta
 * @param standardErrorInterval theta plus and minus 1.96 standard errors
 * @param upperBound with one-sided confidence at the interval's level theta is below this
 */
public record WorksEffect(
        Method method,
        int before,
        int after,
        double expected,
        double variance,
        double avoided,
        double avoidedStandardError,
        double theta,
        double thetaStandardError,
        Interval interval,
        Interval standardErrorInterval,
        double upperBound) {
    /** How what would have been expected without works was found. */
    public enum Method {
        /** From the count before alone: it forgets that works go where counts happened to be high, and all else that changed. */
        NAIVE,
        /** From the count before and the change on comparison stretches: it forgets the former. */
        COMPARISON_GROUP,
        /** By empirical Bayes: it forgets changes that are not in the model. */
        EMPIRICAL_BAYES,
        /** By empirical Bayes and the change on comparison stretches beyond what the model predicts. */
        EMPIRICAL_BAYES_WITH_COMPARISON;

        /** Whether it may be shown by itself. */
        public boolean isControlled() {
            return this != NAIVE;
        }

        /** Whether it rests on what a model of other roads expects of the treated stretch. */
        public boolean isByModel() {
            return this == EMPIRICAL_BAYES || this == EMPIRICAL_BAYES_WITH_COMPARISON;
        }
    }

    /** Whether no incident came after, so that there is a bound and no estimate. */
    public boolean isBoundOnly() {
        return after == 0;
    }

    /** Per cent fewer than expected; NaN where there is a bound and no estimate. */
    public double reductionPercent() {
        return isBoundOnly() ? Double.NaN : 100 * (1 - theta);
    }

    static WorksEffect of(
            Method method, int before, int after, double expected, double variance, GammaPoisson exact, double level) {
        double relative = variance / (expected * expected);
        double theta = after / expected / (1 + relative);
        double error = after == 0 ? Double.NaN : theta * Math.sqrt(1.0 / after + relative) / (1 + relative);
        boolean told = expected > 0;
        return new WorksEffect(
                method,
                before,
                after,
                expected,
                variance,
                expected - after,
                Math.sqrt(after + variance),
                told ? theta : Double.NaN,
                told ? error : Double.NaN,
                exact.interval(after, level),
                told && after > 0
                        ? new Interval(theta - 1.96 * error, theta + 1.96 * error, 0.95)
                        : Interval.unknown(0.95),
                exact.upperBound(after, level));
    }
}
