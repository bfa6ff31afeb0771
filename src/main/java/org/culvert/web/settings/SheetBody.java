package org.culvert.web.settings;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.jspecify.annotations.Nullable;

/** Makes of what was typed the body that the API takes, and of a thing that is there what a form shows of it. */
@ApplicationScoped
class SheetBody {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final String CELLS = "\\|";
    private static final String BETWEEN = " | ";
    private static final String WHOLE = "-?\\d{1,15}";
    private static final String FIGURE = "-?\\d{1,15}(\\.\\d{1,12})?";

    private final ObjectMapper mapper;
    private final RegionService region;

    SheetBody(ObjectMapper mapper, RegionService region) {
        this.mapper = mapper;
        this.region = region;
    }

    /**
     * The body.
     *
     * @param typed texts by the names of fields; of ticks any number
     * @param shown what the form stood at, of fields that are left as they are unless something else is typed
     * @throws InvalidException naming the field that cannot even be read so far
     */
    ObjectNode told(List<Shape> shapes, Map<String, List<String>> typed, Map<String, List<String>> shown) {
        ObjectNode body = NODES.objectNode();
        for (Shape shape : shapes) {
            List<String> texts = cleaned(typed.get(shape.name()));
            if (shape.change()) {
                List<String> before = cleaned(shown.get(shape.name()));
                if (!texts.equals(before)) {
                    put(body, shape.name(), texts.isEmpty() && !shape.isMany() ? NODES.nullNode() : node(shape, texts));
                }
            } else if (shape.isMany() || shape.kind() == Shape.Kind.counts && shape.needed()) {
                put(body, shape.name(), node(shape, texts));
            } else if (!texts.isEmpty()) {
                put(body, shape.name(), node(shape, texts));
            }
        }
        return body;
    }

    /** What a form shows of a thing. */
    Map<String, List<String>> typed(List<Shape> shapes, JsonNode thing) {
        Map<String, List<String>> typed = new LinkedHashMap<>();
        for (Shape shape : shapes) {
            JsonNode value = thing.at("/" + shape.name().replace('.', '/'));
            if (!value.isMissingNode() && !value.isNull()) {
                typed.put(shape.name(), texts(shape, value));
            }
        }
        return typed;
    }

    private static List<String> cleaned(@Nullable List<String> texts) {
        return texts == null
                ? List.of()
                : texts.stream()
                        .map(text -> text.replace("\r\n", "\n").strip())
                        .filter(text -> !text.isEmpty())
                        .toList();
    }

    private JsonNode node(Shape shape, List<String> texts) {
        String text = texts.isEmpty() ? "" : texts.get(0);
        return switch (shape.kind()) {
            case line, text, day, choice -> NODES.textNode(text);
            case monthDay -> NODES.textNode(text.matches("\\d\\d-\\d\\d") ? "--" + text : text);
            case moment -> NODES.textNode(instant(text));
            case number -> figure(text);
            case yesNo -> yesNo(text);
            case ticks -> array(texts);
            case lines -> array(lines(text));
            case counts -> counts(shape.name(), lines(text));
            case table -> table(shape, lines(text));
            case json -> json(shape.name(), text);
        };
    }

    private List<String> texts(Shape shape, JsonNode value) {
        return switch (shape.kind()) {
            case ticks -> elements(value);
            case lines -> List.of(String.join("\n", elements(value)));
            case monthDay -> List.of(value.asText().replaceFirst("^--", ""));
            case moment -> List.of(local(value.asText()));
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
                    List<String> cells = new ArrayList<>();
                    for (RecordComponent component : components(shape)) {
                        JsonNode cell = row.path(component.getName());
                        cells.add(cell.isNull() || cell.isMissingNode() ? "" : cell.asText());
                    }
                    lines.add(String.join(BETWEEN, cells));
                }
                yield List.of(String.join("\n", lines));
            }
            case json -> List.of(value.toString());
            default -> List.of(value.asText());
        };
    }

    private static RecordComponent[] components(Shape shape) {
        return Objects.requireNonNull(shape.row(), "a table has rows").getRecordComponents();
    }

    private static List<String> elements(JsonNode array) {
        List<String> elements = new ArrayList<>();
        array.forEach(element -> elements.add(element.asText()));
        return elements;
    }

    private static void put(ObjectNode body, String name, JsonNode value) {
        ObjectNode in = body;
        String[] parts = name.split("\\.");
        for (int i = 0; i < parts.length - 1; i++) {
            in = in.withObject("/" + parts[i]);
        }
        in.set(parts[parts.length - 1], value);
    }

    /** What is no figure goes on as it is, so that the API's own reader says what is wrong with it. */
    private static JsonNode figure(String text) {
        if (text.matches(WHOLE)) {
            return NODES.numberNode(Long.parseLong(text));
        }
        return text.matches(FIGURE) ? NODES.numberNode(new BigDecimal(text)) : NODES.textNode(text);
    }

    private static JsonNode yesNo(String text) {
        return text.equals("true") || text.equals("false")
                ? NODES.booleanNode(text.equals("true"))
                : NODES.textNode(text);
    }

    private static ArrayNode array(List<String> texts) {
        ArrayNode array = NODES.arrayNode();
        texts.forEach(array::add);
        return array;
    }

    private static List<String> lines(String text) {
        return text.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    }

    private static ObjectNode counts(String field, List<String> lines) {
        ObjectNode counts = NODES.objectNode();
        for (String line : lines) {
            int colon = line.lastIndexOf(':');
            if (colon < 1) {
                throw InvalidException.of(field, "A line has a name and a figure: " + line + ".", "macropods: 2");
            }
            counts.set(
                    line.substring(0, colon).strip(),
                    figure(line.substring(colon + 1).strip()));
        }
        return counts;
    }

    private static ArrayNode table(Shape shape, List<String> lines) {
        RecordComponent[] components = components(shape);
        ArrayNode table = NODES.arrayNode();
        for (String line : lines) {
            String[] cells = line.split(CELLS, -1);
            if (cells.length > components.length) {
                throw InvalidException.of(
                        shape.name(),
                        "A line has more parts than there are: " + line + ".",
                        components.length + " parts with | between them");
            }
            ObjectNode row = NODES.objectNode();
            for (int i = 0; i < cells.length; i++) {
                String cell = cells[i].strip();
                Class<?> type = components[i].getType();
                if (!cell.isEmpty()) {
                    row.set(
                            components[i].getName(),
                            type == boolean.class || type == Boolean.class
                                    ? yesNo(cell)
                                    : type.isPrimitive() || Number.class.isAssignableFrom(type)
                                            ? figure(cell)
                                            : NODES.textNode(cell));
                }
            }
            table.add(row);
        }
        return table;
    }

    private JsonNode json(String field, String text) {
        try {
            return mapper.readTree(text);
        } catch (JsonProcessingException e) {
            throw InvalidException.of(field, "This cannot be read.", "a geometry of GeoJSON (RFC 7946)");
        }
    }

    /** A day and hour of the region as an instant. */
    private String instant(String text) {
        try {
            return LocalDateTime.parse(text).atZone(region.zone()).toInstant().toString();
        } catch (DateTimeException notLocal) {
            return text;
        }
    }

    private String local(String instant) {
        return LocalDateTime.ofInstant(Instant.parse(instant).truncatedTo(ChronoUnit.MINUTES), region.zone())
                .toString();
    }
}
