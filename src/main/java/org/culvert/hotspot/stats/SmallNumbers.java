package org.culvert.hotspot.stats;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Which cells of a table of counts are left out so that no small count can be read from it, nor worked out from the totals.
 *
 * <p>A count between 1 and the threshold is left out (primary suppression), and further ones so that the totals do not give it
 * back (complementary suppression): in every row and column at least two counts are left out or none, together they come to
 * the threshold at least, and no count left out is the only way to make the totals right. It is the usual practice of
 * statistical offices: L. Willenborg and T. de Waal, Elements of Statistical Disclosure Control, Springer 2001,
 * doi:10.1007/978-1-4613-0121-9. Ranges are not protected beyond that: a reader may learn that a count is small.
 */
public final class SmallNumbers {
    private final int[][] counts;
    private final boolean[][] hidden;
    private final int smallest;

    private SmallNumbers(int[][] counts, int smallest) {
        this.counts = counts;
        this.hidden = new boolean[counts.length][counts[0].length];
        this.smallest = smallest;
    }

    /**
     * The counts to leave out. The last row and the last column of what comes back are the totals; the totals of a table of
     * one row are its counts.
     *
     * @param counts rows of equal length, at least one of each, none negative
     * @param smallest the smallest count that may be shown, 1 or more; 0 may always be shown
     */
    public static boolean[][] hidden(int[][] counts, int smallest) {
        var table = new SmallNumbers(withTotals(counts), smallest);
        table.hideSmall();
        table.hideUntilSafe();
        return table.hidden;
    }

    /** The counts with a column and a row of totals. */
    public static int[][] withTotals(int[][] counts) {
        int rows = counts.length;
        int columns = counts[0].length;
        int[][] table = new int[rows + 1][columns + 1];
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                int count = counts[row][column];
                table[row][column] = count;
                table[row][columns] += count;
                table[rows][column] += count;
                table[rows][columns] += count;
            }
        }
        return table;
    }

    private void hideSmall() {
        for (int row = 0; row < counts.length; row++) {
            for (int column = 0; column < counts[0].length; column++) {
                hidden[row][column] = isSmall(row, column);
            }
        }
    }

    private boolean isSmall(int row, int column) {
        return counts[row][column] > 0 && counts[row][column] < smallest;
    }

    private void hideUntilSafe() {
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int row = 0; row < counts.length; row++) {
                changed |= hideOneMore(row, -1);
            }
            for (int column = 0; column < counts[0].length; column++) {
                changed |= hideOneMore(-1, column);
            }
            if (!changed) {
                changed = hideBesideTheOnlyWay();
            }
        }
    }

    /** Hides the smallest shown count of a row, or of a column, where too few are hidden. */
    private boolean hideOneMore(int row, int column) {
        int length = row >= 0 ? counts[0].length : counts.length;
        int found = 0;
        int sum = 0;
        for (int i = 0; i < length; i++) {
            if (hidden[row >= 0 ? row : i][column >= 0 ? column : i]) {
                found++;
                sum += counts[row >= 0 ? row : i][column >= 0 ? column : i];
            }
        }
        return found > 0 && (found == 1 || sum < smallest) && hideSmallestShown(row, column);
    }

    private boolean hideSmallestShown(int row, int column) {
        int length = row >= 0 ? counts[0].length : counts.length;
        int best = -1;
        for (int i = 0; i < length; i++) {
            int r = row >= 0 ? row : i;
            int c = column >= 0 ? column : i;
            if (!hidden[r][c] && (best < 0 || isBetter(r, c, row >= 0 ? row : best, column >= 0 ? column : best))) {
                best = i;
            }
        }
        if (best < 0) {
            return false;
        }
        hidden[row >= 0 ? row : best][column >= 0 ? column : best] = true;
        return true;
    }

    /** Counts before totals, counts of something before none, small before large. */
    private boolean isBetter(int row, int column, int otherRow, int otherColumn) {
        return cost(row, column) < cost(otherRow, otherColumn);
    }

    private long cost(int row, int column) {
        boolean total = row == counts.length - 1 || column == counts[0].length - 1;
        int count = counts[row][column];
        return (total ? 4L << 40 : 0) + (count == 0 ? 1L << 40 : count);
    }

    /** A hidden small count that no other hidden ones can make up for follows from the totals. */
    private boolean hideBesideTheOnlyWay() {
        for (int row = 0; row < counts.length; row++) {
            for (int column = 0; column < counts[0].length; column++) {
                if (hidden[row][column] && isSmall(row, column) && !hasAnotherWay(row, column)) {
                    return hideSmallestShown(row, -1) || hideSmallestShown(-1, column);
                }
            }
        }
        return false;
    }

    /** Whether the row is joined to the column by hidden counts other than this one. */
    private boolean hasAnotherWay(int fromRow, int toColumn) {
        boolean[] rowsSeen = new boolean[counts.length];
        boolean[] columnsSeen = new boolean[counts[0].length];
        Deque<Integer> rows = new ArrayDeque<>();
        rows.add(fromRow);
        rowsSeen[fromRow] = true;
        while (!rows.isEmpty()) {
            int row = rows.remove();
            for (int column = 0; column < columnsSeen.length; column++) {
                boolean itself = row == fromRow && column == toColumn;
                if (hidden[row][column] && !itself && !columnsSeen[column]) {
                    columnsSeen[column] = true;
                    for (int next = 0; next < rowsSeen.length; next++) {
                        if (hidden[next][column] && !rowsSeen[next]) {
                            rowsSeen[next] = true;
                            rows.add(next);
                        }
                    }
                }
            }
        }
        return columnsSeen[toColumn];
    }
}
