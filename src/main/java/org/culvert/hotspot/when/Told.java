package org.culvert.hotspot.when;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.culvert.hotspot.stats.SmallNumbers;
import org.culvert.hotspot.stats.season.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * Figures as the asker may have them.
 *
 * @param smallest the smallest count that is told; null where every count is
 */
record Told(@Nullable Integer smallest) {
    /** Whether anything is told of so many. */
    boolean tells(int count) {
        return smallest == null || count == 0 || count >= smallest;
    }

    @Nullable
    Integer count(int count) {
        return tells(count) ? Integer.valueOf(count) : null;
    }

    /** Counts that share out a total which is told; none of them follows from that and the others. */
    List<@Nullable Integer> parts(int[] counts) {
        if (smallest != null && !tells(total(counts))) {
            return new ArrayList<>(Collections.nCopies(counts.length, null));
        }
        boolean[] hidden =
                smallest == null ? new boolean[counts.length] : SmallNumbers.hidden(new int[][] {counts}, smallest)[0];
        List<@Nullable Integer> parts = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            parts.add(hidden[i] ? null : Integer.valueOf(counts[i]));
        }
        return parts;
    }

    private static int total(int[] counts) {
        int total = 0;
        for (int count : counts) {
            total += count;
        }
        return total;
    }

    static CollisionSeasonsView.Test test(Verdict verdict) {
        return new CollisionSeasonsView.Test(
                verdict.test(), significant(verdict.statistic()), significant(verdict.p()), verdict.pBy());
    }

    /** Three figures: more would tell no more of the road, and might tell of single collisions. */
    static double significant(double value) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(3, RoundingMode.HALF_EVEN))
                .doubleValue();
    }

    static @Nullable Double rounded(double value, int decimals) {
        return Double.isFinite(value)
                ? Double.valueOf(BigDecimal.valueOf(value)
                        .setScale(decimals, RoundingMode.HALF_EVEN)
                        .doubleValue())
                : null;
    }
}
