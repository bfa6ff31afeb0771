package org.culvert.exchange.records;

import java.util.List;

/**
 * What the rows of a trial have, in figures.
 *
 * @param findings how many rows have what, the heaviest and the most frequent first
 * @param unknownAnimals words that no animal of the register is called by, the most frequent first
 */
public record RecordTrialSummary(List<FindingCountView> findings, List<UnknownAnimalView> unknownAnimals) {
    /** How many rows have a finding. */
    public record FindingCountView(String kind, String weight, long rows) {}

    /**
     * Words that name no animal of the register.
     *
     * @param words as in the cells, in small letters
     * @param perhaps names of the register that may be meant
     */
    public record UnknownAnimalView(String words, long rows, List<String> perhaps) {}
}
