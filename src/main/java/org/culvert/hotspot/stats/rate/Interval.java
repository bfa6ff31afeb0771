package org.culvert.hotspot.stats.rate;

/**
 * An interval for an unknown quantity. Immutable.
 *
 * @param low lower end; NaN where nothing can be said
 * @param high upper end, at least {@code low}; positive infinity where there is no upper bound
 * @param level its coverage or posterior probability, such as 0.95
 */
public record Interval(double low, double high, double level) {
    public Interval {
        requireLevel(level);
        if (low > high) {
            throw new IllegalArgumentException("an interval's low end, " + low + ", is above its high end, " + high);
        }
    }

    /** An interval that says nothing. */
    static Interval unknown(double level) {
        return new Interval(Double.NaN, Double.NaN, level);
    }

    /** Whether a value lies inside or at an end. */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }

    /** Length from end to end. */
    public double width() {
        return high - low;
    }

    /** Both ends times a factor above 0. */
    public Interval times(double factor) {
        return new Interval(low * factor, high * factor, level);
    }

    static void requireLevel(double level) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("a level lies between 0 and 1, such as 0.95, not " + level);
        }
    }
}
