package org.culvert.web.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.web.forms.FieldShape.Kind;
import org.jspecify.annotations.Nullable;

/**
 * The body that a form makes of what was typed.
 *
 * @param told as the API takes it, without what cannot be read
 * @param wrong each field that is missing or cannot be read
 * @param beside which field of the form a field of the body is told by
 */
public record EntryBody(ObjectNode told, List<FieldError> wrong, UnaryOperator<String> beside) {
    private static final String FIRST = "[0]";

    /**
     * Reads what was typed.
     *
     * @param shown what the form stood at, of fields that are left as they are unless something else is typed
     */
    public static EntryBody of(List<FieldShape> shapes, SentFields typed, SentFields shown, ZoneId zone) {
        return of(shapes, typed, shown, zone, UnaryOperator.identity());
    }

    static EntryBody of(
            List<FieldShape> shapes, SentFields typed, SentFields shown, ZoneId zone, UnaryOperator<String> beside) {
        var body = new EntryBody(JsonNodeFactory.instance.objectNode(), new ArrayList<>(), beside);
        for (FieldShape shape : shapes) {
            List<String> texts = cleaned(typed.texts(shape.name()));
            boolean left =
                    shape.kind() == Kind.file || shape.change() && texts.equals(cleaned(shown.texts(shape.name())));
            if (!left) {
                body.add(shape, texts, zone);
            }
        }
        return body;
    }

    private void add(FieldShape shape, List<String> texts, ZoneId zone) {
        if (!texts.isEmpty() || saysNone(shape)) {
            try {
                put(shape.name(), TypedValue.read(shape, texts, zone));
            } catch (TypedValue.UnreadableException e) {
                refuse(shape.name(), e.detail(), e.wanted());
            }
        } else if (shape.needed()) {
            refuse(shape.name(), "This is missing.", TypedValue.wanted(shape));
        } else if (shape.change()) {
            put(shape.name(), JsonNodeFactory.instance.nullNode());
        }
    }

    /** Whether nothing typed means a list without elements: whether that will do, the API says. */
    private static boolean saysNone(FieldShape shape) {
        return switch (shape.kind()) {
            case ticks -> true;
            case list, counts, table -> shape.needed();
            default -> false;
        };
    }

    private static List<String> cleaned(List<String> texts) {
        return texts.stream()
                .map(text -> text.replace("\r\n", "\n").strip())
                .filter(text -> !text.isEmpty())
                .toList();
    }

    private void put(String name, JsonNode value) {
        ObjectNode part = told;
        String[] steps = name.split("\\.", -1);
        for (int i = 0; i < steps.length - 1; i++) {
            part = into(part, steps[i]);
        }
        part.set(steps[steps.length - 1], value);
    }

    private static ObjectNode into(ObjectNode part, String step) {
        if (!step.endsWith(FIRST)) {
            return part.get(step) instanceof ObjectNode there ? there : part.putObject(step);
        }
        String name = step.substring(0, step.length() - FIRST.length());
        return part.get(name) instanceof ArrayNode list && list.get(0) instanceof ObjectNode there
                ? there
                : part.putArray(name).addObject();
    }

    /** Says of one more field what is wrong with it. */
    public void refuse(String field, String detail, String wanted) {
        wrong.add(new FieldError(field, detail, wanted, null));
    }

    /** Puts what a reader makes of a text into its place, or says of the field what the reader says of it. */
    public void readAs(String field, Function<String, JsonNode> reader) {
        JsonNode part = told;
        String[] steps = field.split("\\.", -1);
        for (int i = 0; i < steps.length - 1; i++) {
            part = part.path(steps[i]);
        }
        String last = steps[steps.length - 1];
        if (part instanceof ObjectNode object && object.path(last).isTextual()) {
            try {
                object.set(last, reader.apply(object.path(last).asText()));
            } catch (InvalidException e) {
                object.remove(last);
                e.errors().forEach(error -> wrong.add(error.at(field)));
            }
        }
    }

    /** Takes out what was typed into a field that the body does not have there; null where nothing was. */
    public @Nullable String take(String field) {
        JsonNode value = told.remove(field);
        return value == null ? null : value.asText();
    }

    /** As {@link #take}, of an identifier. */
    public @Nullable UUID takeId(String field) {
        String text = take(field);
        return text == null ? null : tried(() -> Paging.uuid(field, text));
    }

    /** What a reader makes of something typed; null where it refuses that, which is told with all else that is wrong. */
    public <T> @Nullable T tried(Supplier<T> reader) {
        try {
            return reader.get();
        } catch (InvalidException e) {
            wrong.addAll(e.errors());
            return null;
        }
    }

    /**
     * Reads the body as that of a request is read, so that all that is wrong is said at once.
     *
     * @throws InvalidException naming every field that is wrong
     */
    public <T> T read(FormBodies bodies, Class<T> type) {
        List<FieldError> all = new ArrayList<>(wrong);
        try {
            T entry = bodies.read(told, type);
            if (all.isEmpty()) {
                return entry;
            }
        } catch (InvalidException e) {
            e.errors().stream()
                    .map(error -> error.at(beside.apply(FieldError.named(error.field()))))
                    .filter(error -> wrong.stream().noneMatch(before -> isOf(before.field(), error.field())))
                    .forEach(all::add);
        }
        throw new InvalidException(all);
    }

    /** Whether something was said of a field before, or of something in it. */
    private static boolean isOf(String before, String field) {
        return before.equals(field) || before.startsWith(field + ".") || before.startsWith(field + "[");
    }

    /** What a form shows of a thing that is there. */
    public static SentFields typed(List<FieldShape> shapes, JsonNode thing, ZoneId zone) {
        Map<String, List<String>> typed = new LinkedHashMap<>();
        for (FieldShape shape : shapes) {
            JsonNode value = thing.at("/" + shape.name().replace(FIRST, "/0").replace('.', '/'));
            if (!value.isMissingNode() && !value.isNull()) {
                typed.put(shape.name(), TypedValue.write(shape, value, zone));
            }
        }
        return new SentFields(typed);
    }
}
