package org.culvert.exchange.features;

import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * A property of a collection's features.
 *
 * @param type what JSON Schema calls it: {@code string}, {@code integer}, {@code number} or {@code boolean}
 * @param format {@code date} or {@code date-time}, or null
 * @param filter whether features can be asked for by its value
 */
record FeatureProperty(
        String name,
        String description,
        String type,
        @Nullable String format,
        boolean filter) {
    private static final int LONGEST_VALUE = 500;
    private static final Map<Class<?>, String> TYPES = Map.of(
            String.class, "string",
            Instant.class, "string",
            LocalDate.class, "string",
            int.class, "integer",
            Integer.class, "integer",
            long.class, "integer",
            double.class, "number",
            Double.class, "number",
            boolean.class, "boolean",
            Boolean.class, "boolean");

    static FeatureProperty of(RecordComponent component, String description, boolean filter) {
        Class<?> type = component.getType();
        String word = TYPES.get(type);
        if (word == null) {
            throw new IllegalStateException(component + " is no scalar, as programs need it");
        }
        String format = type == Instant.class ? "date-time" : type == LocalDate.class ? "date" : null;
        return new FeatureProperty(component.getName(), description, word, format, filter);
    }

    /** The value of a property of a record. */
    static @Nullable Object value(Record properties, String name) {
        RecordComponent component = Arrays.stream(properties.getClass().getRecordComponents())
                .filter(one -> one.getName().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no property is called " + name));
        try {
            return component.getAccessor().invoke(properties);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a property cannot be read", e);
        }
    }

    /**
     * A value that somebody asks for, as a {@code String}, {@code Integer}, {@code Double} or {@code Boolean}.
     *
     * @throws InvalidException naming the property where it is none of its type
     */
    Object parse(String text) {
        try {
            switch (type) {
                case "integer":
                    return Integer.valueOf(text);
                case "number":
                    double number = Double.parseDouble(text);
                    if (Double.isFinite(number)) {
                        return number;
                    }
                    throw wrong("a number");
                case "boolean":
                    if (text.equals("true") || text.equals("false")) {
                        return text.equals("true");
                    }
                    throw wrong("true or false");
                default:
                    if (text.isEmpty()
                            || text.length() > LONGEST_VALUE
                            || text.chars().anyMatch(Character::isISOControl)) {
                        throw wrong("a text of 1 to " + LONGEST_VALUE + " characters");
                    }
                    return text;
            }
        } catch (NumberFormatException e) {
            throw wrong(type.equals("integer") ? "a whole number" : "a number");
        }
    }

    private InvalidException wrong(String wanted) {
        return InvalidException.of(name, "This value cannot be read.", wanted);
    }
}
