package org.culvert.hotspot.stats;

import org.jspecify.annotations.Nullable;

/**
 * Which place of one carriageway lies beside which of the other. Animals cross both and callers seldom say which, so the
 * two are one road for the analysis: an event counts half on either.
 */
@FunctionalInterface
public interface Carriageways {
    /** A network without divided roads. */
    Carriageways NONE = (link, metres) -> null;

    /** A place on the network. */
    record Place(int link, double metres) {}

    /** The place of the other carriageway beside a place, or null where the road is not divided. */
    @Nullable
    Place beside(int link, double metres);
}
