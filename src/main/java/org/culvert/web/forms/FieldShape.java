package org.culvert.web.forms;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a field asks, before it has words and before anything is typed.
 *
 * @param name as the body calls it: with points where it is in a part of the body, with {@code [0]} where it is in the first
 *     of a list
 * @param needed whether the body is refused without it
 * @param rare whether it stands among what is rarely told
 * @param change whether it is left as it is unless something else is typed
 * @param values those to choose from, where these are always the same
 * @param reference which things it names, null where it names none
 * @param columns of a table, what each part of a line is
 * @param most longest text, 0 where nobody says
 */
public record FieldShape(
        String name,
        Kind kind,
        boolean needed,
        boolean rare,
        boolean change,
        List<String> values,
        @Nullable Reference reference,
        List<Column> columns,
        int most) {
    /** How it is typed. */
    public enum Kind {
        hidden,
        text,
        lines,
        /** Texts, one a line. */
        list,
        /** A whole number from nought. */
        count,
        number,
        day,
        /** A day of every year. */
        monthDay,
        /** A day and an hour by the region's clocks. */
        moment,
        choice,
        /** A choice of yes and no, or neither. */
        truth,
        /** Several that can be ticked. */
        ticks,
        /** Names with a figure each, one a line. */
        counts,
        /** Rows, one a line, with strokes between their parts. */
        table,
        /** A geometry of GeoJSON. */
        geometry,
        /** A place in one line, however it is said. */
        place,
        file
    }

    /**
     * A part of each line of a table.
     *
     * @param values those to choose from, where these are always the same
     */
    public record Column(String name, Cell cell, List<String> values) {}

    /** What stands in a part of a line. */
    public enum Cell {
        text,
        number,
        truth
    }

    public static FieldShape of(Kind kind, String name) {
        return new FieldShape(name, kind, false, false, false, List.of(), null, List.of(), 0);
    }

    /** A choice of what each page offers. */
    public static FieldShape choice(String name) {
        return of(Kind.choice, name);
    }

    public static <T extends Enum<T>> FieldShape choice(String name, T[] values) {
        return of(Kind.choice, name).with(Arrays.stream(values).map(Enum::name).toList());
    }

    public FieldShape isNeeded() {
        return isNeeded(true);
    }

    public FieldShape isNeeded(boolean asked) {
        return new FieldShape(name, kind, asked, rare, change, values, reference, columns, most);
    }

    public FieldShape isRare() {
        return new FieldShape(name, kind, needed, true, change, values, reference, columns, most);
    }

    public FieldShape isChange(boolean corrects) {
        return new FieldShape(name, kind, needed, rare, corrects, values, reference, columns, most);
    }

    /** The same, chosen from what the page offers. */
    public FieldShape isChoice() {
        return new FieldShape(name, Kind.choice, needed, rare, change, values, reference, columns, most);
    }

    public FieldShape atMost(int characters) {
        return new FieldShape(name, kind, needed, rare, change, values, reference, columns, characters);
    }

    public FieldShape with(List<String> choices) {
        return new FieldShape(name, kind, needed, rare, change, choices, reference, columns, most);
    }

    /** The last part of its name, by which it mostly has its label. */
    public String last() {
        return name.substring(name.lastIndexOf('.') + 1);
    }

    /** Whether what there is to choose from is the page's own matter. */
    public boolean isOfThePage() {
        return kind == Kind.choice && values.isEmpty();
    }

    /** Whether something that is wrong is wrong with this, or with something in it. */
    public boolean isOf(String field) {
        return field.equals(name) || field.startsWith(name + "[") || field.startsWith(name + ".");
    }
}
