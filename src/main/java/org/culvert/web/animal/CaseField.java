package org.culvert.web.animal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import org.culvert.platform.InvalidException;

/**
 * A field of a form, called as the value is called in the body that the API takes, so that what that says of it stands beside it.
 *
 * @param path such as {@code findings[0].side}
 * @param needed whether the form says that it is needed; what is needed in fact the API's reader says
 * @param more whether it stands among what is rarely told
 * @param values of a choice, where these are always the same
 */
record CaseField(String path, Type type, boolean needed, boolean more, List<String> values) {
    enum Type {
        line,
        lines,
        number,
        /** A day and an hour by the region's clocks. */
        moment,
        day,
        choice,
        /** A choice of yes and no that the API reads as true and false. */
        flag,
        hidden
    }

    private static final List<String> FLAG = List.of("yes", "no");
    private static final String FIRST = "[0]";

    static CaseField of(Type type, String path) {
        return new CaseField(path, type, false, false, type == Type.flag ? FLAG : List.of());
    }

    static CaseField choice(String path, String... values) {
        return new CaseField(path, Type.choice, false, false, List.of(values));
    }

    static <T extends Enum<T>> CaseField choice(String path, T[] values) {
        return new CaseField(
                path,
                Type.choice,
                false,
                false,
                Arrays.stream(values).map(Enum::name).toList());
    }

    CaseField isNeeded() {
        return new CaseField(path, type, true, more, values);
    }

    CaseField isMore() {
        return new CaseField(path, type, needed, true, values);
    }

    /** What it is called where it stands. */
    String name() {
        return path.substring(path.lastIndexOf('.') + 1);
    }

    /** Whether a list of choices is the page's own matter. */
    boolean isOfThePage() {
        return type == Type.choice && values.isEmpty();
    }

    /** Lays what was typed where the body has it. */
    void put(ObjectNode body, String typed, ZoneId zone) {
        ObjectNode at = body;
        String[] steps = path.split("\\.", -1);
        for (int i = 0; i < steps.length - 1; i++) {
            at = into(at, steps[i]);
        }
        at.set(steps[steps.length - 1], value(typed, zone));
    }

    private static ObjectNode into(ObjectNode at, String step) {
        if (!step.endsWith(FIRST)) {
            return at.get(step) instanceof ObjectNode there ? there : at.putObject(step);
        }
        String name = step.substring(0, step.length() - FIRST.length());
        return at.get(name) instanceof ArrayNode list && list.get(0) instanceof ObjectNode there
                ? there
                : at.putArray(name).addObject();
    }

    private JsonNode value(String typed, ZoneId zone) {
        return switch (type) {
            case number -> number(typed);
            case moment -> moment(typed, zone);
            case flag ->
                typed.equals("yes") || typed.equals("no")
                        ? BooleanNode.valueOf(typed.equals("yes"))
                        : TextNode.valueOf(typed);
            case line, lines, day, choice, hidden -> TextNode.valueOf(typed);
        };
    }

    /** In many languages a comma stands where others write a point; what is no number the API's reader refuses. */
    private static JsonNode number(String typed) {
        String plain = typed.replace(',', '.');
        if (plain.matches("-?\\d{1,15}")) {
            return LongNode.valueOf(Long.parseLong(plain));
        }
        try {
            double number = Double.parseDouble(plain);
            return Double.isFinite(number) ? DoubleNode.valueOf(number) : TextNode.valueOf(typed);
        } catch (NumberFormatException e) {
            return TextNode.valueOf(typed);
        }
    }

    private JsonNode moment(String typed, ZoneId zone) {
        try {
            return TextNode.valueOf(
                    LocalDateTime.parse(typed).atZone(zone).toInstant().toString());
        } catch (DateTimeException e) {
            throw InvalidException.of(
                    path, "This cannot be read: " + typed + ".", "a day and an hour such as 2026-11-25T18:30");
        }
    }
}
