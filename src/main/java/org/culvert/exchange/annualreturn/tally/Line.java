package org.culvert.exchange.annualreturn.tally;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a holder had, got and gave of one kind of animal.
 *
 * @param opening held when the span begins
 * @param came how many came, by how
 * @param went how many went, by how
 * @param closing held when the span ends
 */
public record Line(
        String taxon,
        CountedAs kind,
        int opening,
        SortedMap<String, Integer> came,
        SortedMap<String, Integer> went,
        int closing) {

    /** @throws IllegalStateException unless opening + in = out + closing */
    public Line {
        came = Collections.unmodifiableSortedMap(new TreeMap<>(came));
        went = Collections.unmodifiableSortedMap(new TreeMap<>(went));
        if (opening + sum(came) != sum(went) + closing) {
            throw new IllegalStateException("%s %s: %d opening and %s in are not %s out and %d closing"
                    .formatted(taxon, kind, opening, came, went, closing));
        }
    }

    public int cameIn() {
        return sum(came);
    }

    public int wentOut() {
        return sum(went);
    }

    private static int sum(SortedMap<String, Integer> counts) {
        return counts.values().stream().mapToInt(Integer::intValue).sum();
    }
}
