package org.culvert.platform.ledger;

import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.BeanProperty;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import com.fasterxml.jackson.databind.deser.ContextualDeserializer;
import java.io.IOException;
import java.util.Objects;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * What a merge patch (RFC 7396) says of one field: nothing, or that it is to hold another value, or none. A correction is a
 * record of these and of its reason.
 */
@JsonDeserialize(using = Change.Reader.class)
public final class Change<T> {
    private static final Change<?> NONE = new Change<>(false, null);

    private final boolean made;

    @JsonValue
    private final @Nullable T value;

    private Change(boolean made, @Nullable T value) {
        this.made = made;
        this.value = value;
    }

    @SuppressWarnings("unchecked")
    public static <T> Change<T> none() {
        return (Change<T>) NONE;
    }

    public static <T> Change<T> to(@Nullable T value) {
        return new Change<>(true, value);
    }

    public boolean isMade() {
        return made;
    }

    /** The new value; null where there is to be none, and where nothing changes. */
    public @Nullable T value() {
        return value;
    }

    /** What a field holds afterwards that may be empty. */
    public @Nullable T over(@Nullable T current) {
        return made ? value : current;
    }

    /**
     * What a field holds afterwards that may not be empty.
     *
     * @throws InvalidException naming the field where it is to be cleared
     */
    public T over(String field, T current) {
        if (!made) {
            return current;
        }
        if (value == null) {
            throw InvalidException.of(field, "This cannot be left open.", "a value, or leave the field out");
        }
        return value;
    }

    /** Reads a field that is there; one that is left out is no change. */
    static final class Reader extends JsonDeserializer<Change<?>> implements ContextualDeserializer {
        private final @Nullable JsonDeserializer<?> inner;

        Reader() {
            this(null);
        }

        private Reader(@Nullable JsonDeserializer<?> inner) {
            this.inner = inner;
        }

        @Override
        public JsonDeserializer<?> createContextual(DeserializationContext context, BeanProperty property)
                throws JsonMappingException {
            JavaType change = property == null ? context.getContextualType() : property.getType();
            return new Reader(context.findContextualValueDeserializer(change.containedTypeOrUnknown(0), property));
        }

        @Override
        public Change<?> deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            return Change.to(Objects.requireNonNull(inner).deserialize(parser, context));
        }

        @Override
        public Change<?> getNullValue(DeserializationContext context) {
            return Change.to(null);
        }

        @Override
        public Object getAbsentValue(DeserializationContext context) {
            return Change.none();
        }
    }
}
