package org.culvert.hotspot.stats.rate;

/**
 * A figure that its giver is not sure of. Immutable.
 *
 * @param low the least it may be
 * @param best what it most likely is
 * @param high the most it may be
 */
public record Range(double low, double best, double high) {
    public Range {
        if (!(low <= best && best <= high) || !Double.isFinite(low) || !Double.isFinite(high)) {
            throw new IllegalArgumentException(
                    "a range goes from low by best to high, not " + low + ", " + best + ", " + high);
        }
    }

    /** A figure that is known. */
    public static Range of(double known) {
        return new Range(known, known, known);
    }

    Range atLeast(double least, String what) {
        if (low < least) {
            throw new IllegalArgumentException(what + " must be " + least + " or more, not " + low);
        }
        return this;
    }
}
