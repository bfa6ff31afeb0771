package org.culvert.platform;

import jakarta.ws.rs.BadRequestException;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.ext.ParamConverter;
import jakarta.ws.rs.ext.ParamConverterProvider;
import jakarta.ws.rs.ext.Provider;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Says 400 and which parameter where one cannot be read, instead of that there is nothing at the address. */
@Provider
class ParameterReaders implements ParamConverterProvider {
    @Override
    @SuppressWarnings("unchecked")
    public <T> @Nullable ParamConverter<T> getConverter(Class<T> type, Type generic, Annotation[] annotations) {
        String name = name(annotations);
        if (type == Integer.class) {
            return (ParamConverter<T>) new Reader<Integer>(name, "a whole number", Integer::valueOf);
        }
        if (type == Double.class) {
            return (ParamConverter<T>) new Reader<Double>(name, "a number", Double::valueOf);
        }
        if (type == boolean.class || type == Boolean.class) {
            return (ParamConverter<T>) new Reader<Boolean>(name, "true or false", ParameterReaders::readBoolean);
        }
        if (type == String.class) {
            return (ParamConverter<T>) new Reader<String>(
                    name,
                    "text without control characters, at most " + JsonLimits.LONGEST_TEXT + " characters",
                    ParameterReaders::readText);
        }
        return null;
    }

    private static boolean readBoolean(String text) {
        if (text.equals("true") || text.equals("false")) {
            return text.equals("true");
        }
        throw new IllegalArgumentException("neither");
    }

    private static String readText(String text) {
        if (text.length() > JsonLimits.LONGEST_TEXT || !JsonLimits.isText(text)) {
            throw new IllegalArgumentException("no text");
        }
        return text;
    }

    private static String name(Annotation[] annotations) {
        for (Annotation annotation : annotations) {
            if (annotation instanceof QueryParam parameter) {
                return parameter.value();
            }
            if (annotation instanceof PathParam parameter) {
                return parameter.value();
            }
            if (annotation instanceof FormParam parameter) {
                return parameter.value();
            }
        }
        return "parameter";
    }

    private record Reader<T>(String name, String wanted, Function<String, T> read) implements ParamConverter<T> {
        @Override
        public @Nullable T fromString(@Nullable String text) {
            if (text == null) {
                return null;
            }
            try {
                return read.apply(text);
            } catch (IllegalArgumentException e) {
                throw new BadRequestException(InvalidException.of(name, "This value cannot be read.", wanted));
            }
        }

        @Override
        public String toString(T value) {
            return value.toString();
        }
    }
}
