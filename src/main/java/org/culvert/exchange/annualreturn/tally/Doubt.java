package org.culvert.exchange.annualreturn.tally;

import java.util.List;

/**
 * What cannot be told of some that came or went.
 *
 * @param in whether they came; else they went
 * @param why {@code custodyGap}, {@code unknown} for an end that nobody knows, or {@code heldByNobody} for one that ended while
 *     nobody had it, or before it began
 * @param count how many; of what nobody held none is in a line
 * @param cases numbers of their cases, in order
 */
public record Doubt(String taxon, CountedAs kind, boolean in, String why, int count, List<Long> cases) {
    public Doubt {
        cases = List.copyOf(cases);
    }
}
