package org.culvert.platform;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Something in the request is wrong: says which field, what was wrong and what would be right. */
public final class InvalidException extends CulvertException {
    /**
     * One thing that is wrong.
     *
     * @param field where, as a path into the request such as {@code place.latitude}
     * @param detail what was wrong
     * @param wanted what would be right
     * @param otherReading what may have been meant instead, never assumed
     */
    public record FieldError(
            String field,
            String detail,
            String wanted,
            @Nullable Object otherReading) {
        /** The same of another field. */
        public FieldError at(String other) {
            return new FieldError(other, detail, wanted, otherReading);
        }

        /** What cannot be read is called {@code findings.0.side} where it is wrong otherwise as {@code findings[0].side}. */
        public static String named(String field) {
            return field.replaceAll("\\.(\\d+)(?=\\.|$)", "[$1]");
        }
    }

    private final List<FieldError> errors;

    public InvalidException(List<FieldError> errors) {
        super(errors.isEmpty() ? "The request is not valid." : errors.get(0).detail());
        this.errors = List.copyOf(errors);
    }

    public static InvalidException of(String field, String detail, String wanted) {
        return new InvalidException(List.of(new FieldError(field, detail, wanted, null)));
    }

    public static InvalidException of(String field, String detail, String wanted, @Nullable Object otherReading) {
        return new InvalidException(List.of(new FieldError(field, detail, wanted, otherReading)));
    }

    public List<FieldError> errors() {
        return errors;
    }

    @Override
    public String type() {
        return "invalid";
    }

    @Override
    public String title() {
        return "Something in the request is not right";
    }

    @Override
    public int status() {
        return 400;
    }
}
