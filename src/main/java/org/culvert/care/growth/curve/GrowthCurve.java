package org.culvert.care.growth.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A table of growth: a value (grams or millimetres) by age in days, with a straight line between one row and the next.
 *
 * <p>Outside of its rows it says nothing: neither younger nor older, neither smaller nor larger.
 */
public final class GrowthCurve {
    /** Longer than the life of nearly every animal in care, in days. */
    public static final double OLDEST = 40_000;

    /**
     * @param ageDays from birth or hatching, 0 or more
     * @param value above 0
     */
    public record Row(double ageDays, double value) {}

    /** How the values of a table must go on from row to row; ages always rise. */
    public enum Rising {
        /** So that a value belongs to one age. */
        strictly,
        notFall,
        no
    }

    /**
     * One row that is wrong.
     *
     * @param row its index from 0
     * @param field {@code ageDays} or {@code value}
     */
    public record Fault(int row, String field, String what, String wanted) {}

    private final List<Row> rows;

    private GrowthCurve(List<Row> rows) {
        this.rows = List.copyOf(rows);
    }

    /** @throws IllegalArgumentException unless {@link #faults} finds none in them */
    public static GrowthCurve of(List<Row> rows) {
        if (rows.size() < 2 || !faults(rows, Rising.no).isEmpty()) {
            throw new IllegalArgumentException("these rows are no table");
        }
        return new GrowthCurve(rows);
    }

    /** Everything that is wrong with some rows, in their order. */
    public static List<Fault> faults(List<Row> rows, Rising rising) {
        List<Fault> faults = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            if (!(row.ageDays >= 0 && row.ageDays <= OLDEST)) {
                faults.add(new Fault(i, "ageDays", "That is no age.", "0 to " + (int) OLDEST + " days"));
            } else if (i > 0 && !(row.ageDays > rows.get(i - 1).ageDays)) {
                faults.add(
                        new Fault(i, "ageDays", "Ages rise from row to row.", "more than " + rows.get(i - 1).ageDays));
            }
            if (!(row.value > 0 && row.value <= 1e9)) {
                faults.add(new Fault(i, "value", "That is no value.", "above 0, in grams or millimetres"));
            } else if (i > 0 && rising == Rising.strictly && !(row.value > rows.get(i - 1).value)) {
                faults.add(new Fault(
                        i,
                        "value",
                        "A value from which an age is told rises from row to row.",
                        "more than " + rows.get(i - 1).value + ", or a table that tells no age"));
            } else if (i > 0 && rising == Rising.notFall && row.value < rows.get(i - 1).value) {
                faults.add(
                        new Fault(i, "value", "A length does not fall with age.", rows.get(i - 1).value + " or more"));
            }
        }
        return faults;
    }

    /** The value expected at an age, or empty outside of the table. */
    public OptionalDouble valueAt(double ageDays) {
        for (int i = 1; i < rows.size(); i++) {
            Row from = rows.get(i - 1);
            Row to = rows.get(i);
            if (ageDays >= from.ageDays && ageDays <= to.ageDays) {
                return OptionalDouble.of(between(ageDays, from.ageDays, from.value, to.ageDays, to.value));
            }
        }
        return OptionalDouble.empty();
    }

    /**
     * The age in days at which a value is reached, or empty outside of the table.
     *
     * @throws IllegalStateException where the values do not rise strictly, so that a value belongs to no one age
     */
    public OptionalDouble ageAt(double value) {
        if (!faults(rows, Rising.strictly).isEmpty()) {
            throw new IllegalStateException("a value of this table belongs to more than one age");
        }
        for (int i = 1; i < rows.size(); i++) {
            Row from = rows.get(i - 1);
            Row to = rows.get(i);
            if (value >= from.value && value <= to.value) {
                return OptionalDouble.of(between(value, from.value, from.ageDays, to.value, to.ageDays));
            }
        }
        return OptionalDouble.empty();
    }

    private static double between(double x, double fromX, double fromY, double toX, double toY) {
        return fromY + (toY - fromY) * ((x - fromX) / (toX - fromX));
    }
}
