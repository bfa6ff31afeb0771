package org.culvert.support;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A JSON document, read by paths.
 *
 * <p>A path is names with dots between them, each perhaps with the number of an element: {@code errors[0].field}; {@code [-1]}
 * is the last. The empty path and {@code $} are the whole document. A name asked of a list gives the list of what its elements
 * have under it. A list may be asked for {@code size()}, {@code find { ... }} and {@code findAll { ... }}; the conditions are
 * those of {@link JsonReader}. What is not there is null; what cannot be asked is an IllegalArgumentException.
 *
 * <p>Whole numbers are Integer, Long or BigInteger, by their size, other numbers Double, objects Map, arrays List.
 */
public final class Json {
    private static final ObjectMapper MAPPER =
            new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    private final @Nullable Object root;

    private Json(@Nullable Object root) {
        this.root = root;
    }

    public static Json from(String text) {
        try {
            return new Json(MAPPER.readValue(text, Object.class));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("no JSON: " + e.getOriginalMessage(), e);
        }
    }

    /** What is at a path, as a document of its own. */
    public Json under(String path) {
        return new Json(at(path));
    }

    @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"})
    public <T> T get(String path) {
        return (T) at(path);
    }

    private @Nullable Object at(String path) {
        return new JsonReader(path, root).read();
    }

    public @Nullable String getString(String path) {
        Object there = at(path);
        return there == null ? null : there.toString();
    }

    public int getInt(String path) {
        return convert(path, need(path), Integer.class);
    }

    public long getLong(String path) {
        return convert(path, need(path), Long.class);
    }

    public double getDouble(String path) {
        return convert(path, need(path), Double.class);
    }

    public boolean getBoolean(String path) {
        return convert(path, need(path), Boolean.class);
    }

    private Object need(String path) {
        Object there = at(path);
        if (there == null) {
            throw new IllegalArgumentException("nothing is at " + path + " in " + this);
        }
        return there;
    }

    /** The list at a path, or null where nothing is. */
    public <T> List<T> getList(String path) {
        Object there = at(path);
        if (there != null && !(there instanceof List)) {
            throw new IllegalArgumentException("no list is at " + path + ", but " + there);
        }
        return get(path);
    }

    public <T> List<T> getList(String path, Class<T> type) {
        List<Object> there = getList(path);
        if (there == null) {
            return null;
        }
        List<T> converted = new ArrayList<>();
        for (Object each : there) {
            converted.add(each == null ? null : convert(path, each, type));
        }
        return converted;
    }

    /** The object at a path, or null where nothing is. */
    public <V> Map<String, V> getMap(String path) {
        Object there = at(path);
        if (there != null && !(there instanceof Map)) {
            throw new IllegalArgumentException("no object is at " + path + ", but " + there);
        }
        return get(path);
    }

    private static <T> T convert(String path, Object value, Class<T> type) {
        if (type.isInstance(value)) {
            return type.cast(value);
        }
        String text = value.toString();
        try {
            if (value instanceof Map || value instanceof Collection) {
                throw new NumberFormatException();
            } else if (type == String.class) {
                return type.cast(text);
            } else if (type == Integer.class) {
                return type.cast(new BigDecimal(text).intValueExact());
            } else if (type == Long.class) {
                return type.cast(new BigDecimal(text).longValueExact());
            } else if (type == Double.class) {
                return type.cast(Double.valueOf(text));
            } else if (type == UUID.class) {
                return type.cast(UUID.fromString(text));
            }
        } catch (ArithmeticException | NumberFormatException e) {
            throw new IllegalArgumentException("at " + path + " is no " + type.getSimpleName() + ", but " + text, e);
        }
        throw new IllegalArgumentException("at " + path + " is no " + type.getSimpleName() + ", but " + text);
    }

    /** The document in lines, indented. */
    public String prettify() {
        return write(MAPPER.writerWithDefaultPrettyPrinter());
    }

    /** The document in one line. */
    @Override
    public String toString() {
        return write(MAPPER.writer());
    }

    private String write(com.fasterxml.jackson.databind.ObjectWriter writer) {
        try {
            return writer.writeValueAsString(root);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
