package org.culvert.hotspot.stats.rate;

/**
 * How many collisions may stand behind one that is reported, as somebody measured elsewhere.
 *
 * <p>It is kept apart from every estimate and interval: nobody knows the figure here, it may differ between two stretches,
 * and it does not make an estimate more certain. Immutable.
 *
 * @param low multiplier at least, 1 or more
 * @param high multiplier at most
 * @param source who measured it, where and how
 */
public record UnderReporting(double low, double high, String source) {
    public UnderReporting {
        if (!(low >= 1 && high >= low && Double.isFinite(high))) {
            throw new IllegalArgumentException("multipliers are 1 or more, the lower first");
        }
        if (source.isBlank()) {
            throw new IllegalArgumentException("a multiplier needs a source");
        }
    }

    /**
     * A figure multiplied.
     *
     * @param low figure times the low multiplier
     * @param high figure times the high multiplier
     * @param source of the multipliers
     */
    public record Behind(double low, double high, String source) {}

    /** What may stand behind a figure of reported collisions. */
    public Behind behind(double reported) {
        return new Behind(reported * low, reported * high, source);
    }
}
