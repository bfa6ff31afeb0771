package org.culvert.platform;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.BeanProperty;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.deser.ContextualDeserializer;
import com.fasterxml.jackson.databind.deser.std.NumberDeserializers;
import com.fasterxml.jackson.databind.deser.std.StringDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.datatype.jsr310.deser.InstantDeserializer;
import com.fasterxml.jackson.datatype.jsr310.deser.LocalDateDeserializer;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;
import jakarta.validation.constraints.Size;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/**
 * What no JSON that is sent here may hold, in whatever field: what the database cannot keep, what is no finite number, and
 * what is deeper or longer than anything that is meant. Fields with closer limits have these besides.
 */
@Singleton
class JsonLimits implements ObjectMapperCustomizer {
    static final int LONGEST_TEXT = 20_000;
    /** The limit of a text whose field says none: names, references and the like. */
    static final int UNSAID = 2_000;

    static final int DEEPEST = 64;
    static final int LONGEST_NUMBER = 100;
    private static final int LONGEST_NAME = 1_000;

    /** After the modules for times, whose readers would otherwise stand before ours. */
    @Override
    public int priority() {
        return MINIMUM_PRIORITY;
    }

    @Override
    @SuppressWarnings("deprecation")
    public void customize(ObjectMapper mapper) {
        mapper.getFactory()
                .setStreamReadConstraints(StreamReadConstraints.builder()
                        .maxNestingDepth(DEEPEST)
                        .maxNumberLength(LONGEST_NUMBER)
                        .maxNameLength(LONGEST_NAME)
                        .build());
        mapper.getFactory().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION.mappedFeature());
        mapper.enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
        // A true is no 1, "3" is no 3, 3.7 eggs are not 3, and nothing is no entry of a list
        mapper.disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT);
        mapper.disable(MapperFeature.ALLOW_COERCION_OF_SCALARS);
        mapper.setDefaultSetterInfo(JsonSetter.Value.forContentNulls(Nulls.FAIL));
        mapper.registerModule(new SimpleModule("limits")
                .addDeserializer(String.class, new TextReader(LONGEST_TEXT))
                .addDeserializer(Double.class, new NumberReader(null))
                .addDeserializer(double.class, new NumberReader(0.0))
                .addDeserializer(Instant.class, new InstantReader())
                .addDeserializer(LocalDate.class, new DateReader()));
    }

    /**
     * Refuses what PostgreSQL (U+0000) or UTF-8 (half a surrogate pair) cannot write, control characters, and texts that are
     * longer than their field says, or than a field may be that says nothing.
     */
    private static final class TextReader extends JsonDeserializer<@Nullable String> implements ContextualDeserializer {
        private final int longest;

        TextReader(int longest) {
            this.longest = longest;
        }

        @Override
        public JsonDeserializer<?> createContextual(DeserializationContext context, @Nullable BeanProperty property) {
            if (property == null || property.getMember() == null || property.getType() == null) {
                return this;
            }
            boolean isText = property.getType().hasRawClass(String.class);
            if (!isText && !property.getType().isContainerType()) {
                // A correction: who makes it knows how long the field may be
                return this;
            }
            // Of a list, the limit is one of its entries, not of their texts
            Size size = isText ? property.getMember().getAnnotation(Size.class) : null;
            return new TextReader(size == null ? UNSAID : Math.min(size.max(), LONGEST_TEXT));
        }

        @Override
        public @Nullable String deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (parser.currentToken().isBoolean()) {
                return (String) context.handleUnexpectedToken(String.class, parser);
            }
            String text = StringDeserializer.instance.deserialize(parser, context);
            if (text == null) {
                return null;
            }
            if (text.length() > longest) {
                throw refused(context, String.class, "This is too long.", "at most " + longest + " characters");
            }
            if (!isText(text)) {
                throw refused(
                        context,
                        String.class,
                        "This holds a character that no text holds.",
                        "text without control characters and without halves of surrogate pairs");
            }
            return text;
        }
    }

    /** Whether every character can be kept and shown. */
    static boolean isText(String text) {
        return text.codePoints()
                .allMatch(c -> (c >= 0x20 && c != 0x7f && (c < Character.MIN_SURROGATE || c > Character.MAX_SURROGATE))
                        || c == '\n'
                        || c == '\r'
                        || c == '\t');
    }

    /** A finite number: Jackson would read the text "NaN" as one, and 1e400 as infinite. */
    private static final class NumberReader extends JsonDeserializer<@Nullable Double> {
        private final @Nullable Double none;

        NumberReader(@Nullable Double none) {
            this.none = none;
        }

        @Override
        public @Nullable Double deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            Class<?> type = none == null ? Double.class : double.class;
            Double number =
                    (Double) NumberDeserializers.find(type, type.getName()).deserialize(parser, context);
            if (number != null && !Double.isFinite(number)) {
                throw refused(context, type, "This is no finite number.", "a number");
            }
            return number;
        }

        @Override
        public @Nullable Double getNullValue(DeserializationContext context) {
            return none;
        }
    }

    private static final class InstantReader extends JsonDeserializer<Instant> {
        @Override
        public Instant deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (!isFilled(parser)) {
                return (Instant) context.handleUnexpectedToken(Instant.class, parser);
            }
            Instant instant = InstantDeserializer.INSTANT.deserialize(parser, context);
            requireYear(context, Instant.class, instant == null ? 1 : yearOf(instant));
            return instant;
        }

        private static long yearOf(Instant instant) {
            return instant.atOffset(ZoneOffset.UTC).getYear();
        }
    }

    private static final class DateReader extends JsonDeserializer<LocalDate> {
        @Override
        public LocalDate deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (!isFilled(parser)) {
                return (LocalDate) context.handleUnexpectedToken(LocalDate.class, parser);
            }
            LocalDate date = LocalDateDeserializer.INSTANCE.deserialize(parser, context);
            requireYear(context, LocalDate.class, date == null ? 1 : date.getYear());
            return date;
        }
    }

    /** No number is a time, and no empty text is one that is left out. */
    private static boolean isFilled(JsonParser parser) throws IOException {
        return parser.hasToken(JsonToken.VALUE_STRING) && !parser.getText().isBlank();
    }

    /** RFC 3339 has years of four digits; a year 0 there is none of the calendar's. */
    private static void requireYear(DeserializationContext context, Class<?> type, long year) throws IOException {
        if (year < 1 || year > 9999) {
            throw refused(context, type, "No such year is meant.", "a year from 0001 to 9999");
        }
    }

    private static IOException refused(DeserializationContext context, Class<?> type, String detail, String wanted) {
        return com.fasterxml.jackson.databind.exc.ValueInstantiationException.from(
                context.getParser(), detail, context.constructType(type), InvalidException.of("", detail, wanted));
    }
}
