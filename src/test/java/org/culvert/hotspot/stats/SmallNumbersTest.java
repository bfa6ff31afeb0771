package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class SmallNumbersTest {
    @Test
    void aTableOfLargeCountsAndNoneIsShownWhole() {
        assertThat(Arrays.deepToString(SmallNumbers.hidden(new int[][] {{7, 0}, {5, 9}}, 5)))
                .doesNotContain("true");
    }

    @Test
    void aSmallCountIsHiddenAndItsTotalsDoNotGiveItBack() {
        boolean[][] hidden = SmallNumbers.hidden(new int[][] {{3, 20, 30}, {40, 8, 60}, {70, 80, 9}}, 5);
        assertThat(hidden[0][0]).isTrue();
        for (boolean[] row : hidden) {
            assertThat(count(row)).isNotEqualTo(1);
        }
        assertThat(hidden[3][3]).as("the total of all").isFalse();
    }

    @Test
    void twoOnesSideBySideAreNotGivenAwayByTheirSum() {
        boolean[][] hidden = SmallNumbers.hidden(new int[][] {{1, 1, 30}}, 5);
        assertThat(hidden[0][0] && hidden[0][1]).isTrue();
        assertThat(hidden[0][2] || hidden[0][3])
                .as("32 less 30 would say one each")
                .isTrue();
    }

    @Test
    void aTotalThatIsSmallItselfIsHiddenToo() {
        assertThat(SmallNumbers.hidden(new int[][] {{0, 2}, {9, 9}}, 5)[0][2]).isTrue();
    }

    /** Ways to fill the gaps of a small table are tried, up to two more or less in each: no small count may be the same in all of them. */
    @Test
    void noSmallCountCanBeWorkedOutFromWhatIsShown() {
        long seed = 20261125;
        var random = new Random(seed);
        int small = 0;
        for (int round = 0; round < 300; round++) {
            int rows = 2 + random.nextInt(2);
            int[][] counts = new int[rows][rows == 3 ? 2 : 2 + random.nextInt(2)];
            for (int[] row : counts) {
                for (int i = 0; i < row.length; i++) {
                    row[i] = random.nextInt(3) == 0 ? random.nextInt(4) : random.nextInt(12);
                }
            }
            boolean[][] hidden = SmallNumbers.hidden(counts, 3);
            TreeSet<?>[][] possible = possible(counts, hidden);
            for (int row = 0; row < counts.length; row++) {
                for (int column = 0; column < counts[0].length; column++) {
                    if (counts[row][column] > 0 && counts[row][column] < 3) {
                        small++;
                        assertThat(possible[row][column].size())
                                .as(
                                        "seed %d, round %d, %s at %d %d",
                                        seed, round, Arrays.deepToString(counts), row, column)
                                .isGreaterThan(1);
                    }
                }
            }
        }
        assertThat(small).isGreaterThan(200);
    }

    private static TreeSet<?>[][] possible(int[][] counts, boolean[][] hidden) {
        @SuppressWarnings("unchecked")
        TreeSet<Integer>[][] possible = new TreeSet[counts.length][counts[0].length];
        for (TreeSet<Integer>[] row : possible) {
            Arrays.setAll(row, i -> new TreeSet<>());
        }
        fill(SmallNumbers.withTotals(counts), hidden, new int[counts.length][counts[0].length], 0, possible);
        return possible;
    }

    private static void fill(int[][] shown, boolean[][] hidden, int[][] tried, int at, TreeSet<Integer>[][] possible) {
        int columns = tried[0].length;
        if (at == tried.length * columns) {
            int[][] table = SmallNumbers.withTotals(tried);
            for (int row = 0; row < table.length; row++) {
                for (int column = 0; column < table[0].length; column++) {
                    if (!hidden[row][column] && table[row][column] != shown[row][column]) {
                        return;
                    }
                }
            }
            for (int row = 0; row < tried.length; row++) {
                for (int column = 0; column < columns; column++) {
                    possible[row][column].add(tried[row][column]);
                }
            }
            return;
        }
        int row = at / columns;
        int column = at % columns;
        int slack = hidden[row][column] ? 2 : 0;
        int from = Math.max(0, shown[row][column] - slack);
        int to = shown[row][column] + slack;
        for (int value = from; value <= to; value++) {
            tried[row][column] = value;
            fill(shown, hidden, tried, at + 1, possible);
        }
        tried[row][column] = 0;
    }

    private static int count(boolean[] row) {
        int count = 0;
        for (boolean cell : row) {
            count += cell ? 1 : 0;
        }
        return count;
    }
}
