package org.culvert.web.forms;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.MonthDay;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.culvert.web.Typed;
import org.culvert.web.forms.FieldShape.Cell;
import org.culvert.web.forms.FieldShape.Column;

/** One value as people type it and as bodies have it. */
final class TypedValue {
    /** What was typed is no such value. */
    static final class UnreadableException extends Exception {
        private static final long serialVersionUID = 1L;

        private final String detail;
        private final String wanted;

        UnreadableException(String detail, String wanted) {
            super(detail);
            this.detail = detail;
            this.wanted = wanted;
        }

        String detail() {
            return detail;
        }

        String wanted() {
            return wanted;
        }
    }

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String CELLS = "\\|";
    private static final String BETWEEN = " | ";
    private static final String WHOLE = "[-+]?\\d{1,15}";
    private static final String FIGURE = "[-+]?\\d{1,15}(\\.\\d{1,12})?";
    private static final int EARLIEST_YEAR = 1800;
    private static final int LATEST_YEAR = 2999;

    private TypedValue() {}

    /** What would be right, of fields of a kind. */
    static String wanted(FieldShape shape) {
        return switch (shape.kind()) {
            case count -> "a whole number";
            case number -> "a number";
            case truth -> "yes or no";
            case day -> "a day such as 2026-07-01";
            case monthDay -> "a month and a day such as 09-01";
            case moment -> "a day and an hour such as 2026-11-25T18:30";
            case choice, ticks ->
                shape.values().isEmpty() ? "one of the list" : "one of " + String.join(", ", shape.values());
            case counts -> "a name and a figure a line, such as macropods: 2";
            case table -> "lines of " + shape.columns().size() + " parts with | between them";
            case geometry -> "a geometry of GeoJSON (RFC 7946)";
            case text, lines, list -> "some words";
            case place -> "a place in one line, such as a road and its kilometre";
            case file -> "a file";
            case hidden -> "a value";
        };
    }

    /**
     * As a body has it.
     *
     * @param texts without the spaces around them, none of them empty; several of ticks alone
     */
    static JsonNode read(FieldShape shape, List<String> texts, ZoneId zone) throws UnreadableException {
        String text = texts.isEmpty() ? "" : texts.get(0);
        return switch (shape.kind()) {
            case hidden, text, lines, place, file -> NODES.textNode(text);
            case choice -> NODES.textNode(known(shape, text));
            case ticks -> {
                ArrayNode chosen = NODES.arrayNode();
                for (String one : texts) {
                    chosen.add(known(shape, one));
                }
                yield chosen;
            }
            case list -> {
                ArrayNode list = NODES.arrayNode();
                lines(text).forEach(list::add);
                yield list;
            }
            case count -> {
                if (!text.matches("\\d{1,9}")) {
                    throw unreadable(shape, text);
                }
                yield NODES.numberNode(Integer.parseInt(text));
            }
            case number -> figure(shape, text);
            case truth -> truth(shape, text);
            case day -> NODES.textNode(day(shape, text));
            case monthDay -> NODES.textNode(monthDay(shape, text));
            case moment -> NODES.textNode(moment(shape, text, zone));
            case counts -> counts(shape, lines(text));
            case table -> table(shape, lines(text));
            case geometry -> geometry(shape, text);
        };
    }

    private static UnreadableException unreadable(FieldShape shape, String text) {
        return new UnreadableException(Typed.unreadable(text), wanted(shape));
    }

    private static String known(FieldShape shape, String text) throws UnreadableException {
        if (!shape.values().isEmpty() && !shape.values().contains(text)) {
            throw unreadable(shape, text);
        }
        return text;
    }

    /** In many languages a comma stands where others write a point. */
    private static JsonNode figure(FieldShape shape, String text) throws UnreadableException {
        String pointed = text.replace(',', '.');
        if (!pointed.matches(FIGURE)) {
            throw unreadable(shape, text);
        }
        String plain = pointed.replace("+", "");
        return pointed.matches(WHOLE)
                ? NODES.numberNode(Long.parseLong(plain))
                : NODES.numberNode(new BigDecimal(plain));
    }

    private static JsonNode truth(FieldShape shape, String text) throws UnreadableException {
        if (!text.equals("true") && !text.equals("false")) {
            throw unreadable(shape, text);
        }
        return NODES.booleanNode(text.equals("true"));
    }

    private static String day(FieldShape shape, String text) throws UnreadableException {
        try {
            requireMeant(LocalDate.parse(text).getYear());
            return text;
        } catch (DateTimeException e) {
            throw unreadable(shape, text);
        }
    }

    private static String monthDay(FieldShape shape, String text) throws UnreadableException {
        try {
            return MonthDay.parse(text.startsWith("--") ? text : "--" + text).toString();
        } catch (DateTimeException e) {
            throw unreadable(shape, text);
        }
    }

    private static String moment(FieldShape shape, String text, ZoneId zone) throws UnreadableException {
        try {
            LocalDateTime at = LocalDateTime.parse(text);
            requireMeant(at.getYear());
            return at.atZone(zone).toInstant().toString();
        } catch (DateTimeException e) {
            throw unreadable(shape, text);
        }
    }

    private static void requireMeant(int year) {
        if (year < EARLIEST_YEAR || year > LATEST_YEAR) {
            throw new DateTimeException("nobody means that year");
        }
    }

    private static List<String> lines(String text) {
        return text.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    }

    private static ObjectNode counts(FieldShape shape, List<String> lines) throws UnreadableException {
        ObjectNode counts = NODES.objectNode();
        for (String line : lines) {
            int colon = line.lastIndexOf(':');
            if (colon < 1) {
                throw unreadable(shape, line);
            }
            counts.set(
                    line.substring(0, colon).strip(),
                    figure(shape, line.substring(colon + 1).strip()));
        }
        return counts;
    }

    private static ArrayNode table(FieldShape shape, List<String> lines) throws UnreadableException {
        ArrayNode table = NODES.arrayNode();
        for (String line : lines) {
            String[] cells = line.split(CELLS, -1);
            if (cells.length > shape.columns().size()) {
                throw unreadable(shape, line);
            }
            ObjectNode row = table.addObject();
            for (int i = 0; i < cells.length; i++) {
                String cell = cells[i].strip();
                if (!cell.isEmpty()) {
                    row.set(shape.columns().get(i).name(), cell(shape.columns().get(i), cell));
                }
            }
        }
        return table;
    }

    /** What is no figure, and no yes or no, goes on as it is: the API says in which row that is. */
    private static JsonNode cell(Column column, String text) {
        if (column.cell() == Cell.truth && (text.equals("true") || text.equals("false"))) {
            return NODES.booleanNode(text.equals("true"));
        }
        if (column.cell() == Cell.number && text.matches(WHOLE)) {
            return NODES.numberNode(Long.parseLong(text));
        }
        return column.cell() == Cell.number && text.matches(FIGURE)
                ? NODES.numberNode(new BigDecimal(text))
                : NODES.textNode(text);
    }

    private static JsonNode geometry(FieldShape shape, String text) throws UnreadableException {
        try {
            return JSON.readTree(text);
        } catch (JsonProcessingException e) {
            throw unreadable(shape, text);
        }
    }

    /** As it is typed. */
    static List<String> write(FieldShape shape, JsonNode value, ZoneId zone) {
        return switch (shape.kind()) {
            case ticks -> elements(value);
            case list -> List.of(String.join("\n", elements(value)));
            case monthDay -> List.of(value.asText().replaceFirst("^--", ""));
            case moment ->
                List.of(LocalDateTime.ofInstant(Instant.parse(value.asText()).truncatedTo(ChronoUnit.MINUTES), zone)
                        .toString());
            case counts -> {
                List<String> lines = new ArrayList<>();
                value.fields()
                        .forEachRemaining(one ->
                                lines.add(one.getKey() + ": " + one.getValue().asText()));
                yield List.of(String.join("\n", lines));
            }
            case table -> {
                List<String> lines = new ArrayList<>();
                for (JsonNode row : value) {
                    lines.add(String.join(
                            BETWEEN,
                            shape.columns().stream()
                                    .map(column -> row.path(column.name()))
                                    .map(cell -> cell.isNull() || cell.isMissingNode() ? "" : cell.asText())
                                    .toList()));
                }
                yield List.of(String.join("\n", lines));
            }
            case geometry -> List.of(value.toString());
            case place -> List.of(value.path("verbatim").asText(""));
            default -> List.of(value.asText());
        };
    }

    private static List<String> elements(JsonNode array) {
        List<String> elements = new ArrayList<>();
        array.forEach(element -> elements.add(element.asText()));
        return elements;
    }
}
