package org.culvert.exchange.annualreturn.tally;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One animal, or some eggs that came and went together.
 *
 * @param taxon what tells its kind of animal apart
 * @param caseNumber number of its case; of eggs, that of their mother's
 * @param count how many, one or more
 * @param came how it came to be held at all, such as {@code found}
 * @param stays who held it, in order; they do not overlap, and none goes on beyond the end
 * @param endedAt when it ended, such as by a release, or null while it goes on
 * @param end how; null together with {@code endedAt}
 */
public record Counted(
        String taxon,
        CountedAs kind,
        long caseNumber,
        int count,
        String came,
        List<Stay> stays,
        @Nullable Instant endedAt,
        @Nullable String end) {

    public Counted {
        if (count < 1) {
            throw new IllegalArgumentException("nothing is counted of case " + caseNumber);
        }
        if ((endedAt == null) != (end == null)) {
            throw new IllegalArgumentException("an end has a time and a way: case " + caseNumber);
        }
        List<Stay> ordered = new ArrayList<>();
        for (Stay stay : stays) {
            Stay cut = stay.within(stay.from(), endedAt);
            if (cut != null) {
                ordered.add(cut);
            }
        }
        ordered.sort(Comparator.comparing(Stay::from));
        for (int i = 1; i < ordered.size(); i++) {
            Instant before = ordered.get(i - 1).to();
            if (before == null || before.isAfter(ordered.get(i).from())) {
                throw new IllegalArgumentException("two hold it at once: case " + caseNumber);
            }
        }
        stays = List.copyOf(ordered);
    }
}
