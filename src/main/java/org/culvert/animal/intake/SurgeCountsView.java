package org.culvert.animal.intake;

import java.util.List;

/**
 * How many animals of a surge are where now; each is in each of the lists once.
 *
 * @param all taken in
 * @param tent alive, as far as is recorded, and with whoever took them in
 * @param movedOn alive when last recorded, and with somebody else, let go or gone
 * @param dead when they came, or since
 */
public record SurgeCountsView(
        long all, long tent, long movedOn, long dead, List<SurgeCount> bySector, List<SurgeCount> byTaxon) {
    /** @param of code of a sector, or a scientific name */
    public record SurgeCount(String of, long all, long tent, long movedOn, long dead) {}
}
