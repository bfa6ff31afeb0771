package org.culvert.geo;

import org.jspecify.annotations.Nullable;

/**
 * A coordinate that cannot be what it says. It carries what a person needs to put it right: the field, what is wrong,
 * what would be right, and where there is one the other reading that would make sense. The other reading is offered, and
 * never taken by itself.
 */
public final class CoordinateException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String field;
    private final String whatWouldBeRight;
    private final transient @Nullable Position otherReading;

    public CoordinateException(
            String field, String whatIsWrong, String whatWouldBeRight, @Nullable Position otherReading) {
        super(whatIsWrong);
        this.field = field;
        this.whatWouldBeRight = whatWouldBeRight;
        this.otherReading = otherReading;
    }

    /** The field as the caller named it, e.g. {@code decimalLatitude}. */
    public String field() {
        return field;
    }

    /** A sentence on what is wrong, safe to show. */
    public String whatIsWrong() {
        return String.valueOf(getMessage());
    }

    /** A sentence on what would be right, safe to show. */
    public String whatWouldBeRight() {
        return whatWouldBeRight;
    }

    /** The position that another reading of the same numbers would give, most often the swapped one. */
    public @Nullable Position otherReading() {
        return otherReading;
    }
}
