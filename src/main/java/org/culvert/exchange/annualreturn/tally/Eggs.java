package org.culvert.exchange.annualreturn.tally;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Tells the eggs of a clutch apart, which nobody can: those that were set first go first. Which of them went changes no sum. */
public final class Eggs {
    private Eggs() {}

    /** Eggs that were set to incubate at one time. */
    public record Laid(Instant at, int count) {}

    /**
     * Eggs that are eggs no longer.
     *
     * @param how such as {@code hatched}
     */
    public record Gone(Instant at, int count, String how) {}

    /**
     * The eggs of one clutch, in groups that came and went together.
     *
     * @param custody who held the clutch, when
     * @throws IllegalArgumentException if more went than were set
     */
    public static List<Counted> of(
            String taxon, long caseNumber, List<Laid> laid, List<Gone> gone, List<Stay> custody) {
        List<Laid> set = laid.stream().sorted(Comparator.comparing(Laid::at)).toList();
        List<Counted> groups = new ArrayList<>();
        int batch = 0;
        int taken = 0;
        for (Gone some : gone.stream().sorted(Comparator.comparing(Gone::at)).toList()) {
            int left = some.count();
            while (left > 0) {
                if (batch == set.size()) {
                    throw new IllegalArgumentException("more eggs went than were set: case " + caseNumber);
                }
                int now = Math.min(left, set.get(batch).count() - taken);
                if (now > 0) {
                    groups.add(group(taxon, caseNumber, set.get(batch), now, custody, some));
                }
                left -= now;
                taken += now;
                if (taken == set.get(batch).count()) {
                    batch++;
                    taken = 0;
                }
            }
        }
        for (; batch < set.size(); batch++) {
            int rest = set.get(batch).count() - taken;
            taken = 0;
            if (rest > 0) {
                groups.add(group(taxon, caseNumber, set.get(batch), rest, custody, null));
            }
        }
        return List.copyOf(groups);
    }

    private static Counted group(
            String taxon, long caseNumber, Laid from, int count, List<Stay> custody, @Nullable Gone gone) {
        List<Stay> stays = new ArrayList<>();
        for (Stay stay : custody) {
            Stay cut = stay.within(from.at(), gone == null ? null : gone.at());
            if (cut != null) {
                stays.add(cut);
            }
        }
        return new Counted(
                taxon,
                CountedAs.egg,
                caseNumber,
                count,
                "set",
                stays,
                gone == null ? null : gone.at(),
                gone == null ? null : gone.how());
    }
}
