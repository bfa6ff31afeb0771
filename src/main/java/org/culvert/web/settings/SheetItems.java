package org.culvert.web.settings;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.RegionService;
import org.culvert.platform.sight.Sight;
import org.culvert.web.acts.ActForms;
import org.culvert.web.acts.Choices;
import org.culvert.web.acts.ToldThing;
import org.culvert.web.acts.ToldThing.Cell;
import org.culvert.web.acts.ToldThing.Deed;
import org.culvert.web.acts.ToldValues;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.Labels;
import org.culvert.web.forms.Reference;
import org.jspecify.annotations.Nullable;

/** Shows things as far as whoever asks may see them: they are written as the API writes them, and read from there. */
@ApplicationScoped
class SheetItems {
    static final String DUE = "due";
    static final String HOLDS = "holds";
    static final String LATER = "later";
    static final String ENDED = "ended";

    /** In the order of the page. */
    static final List<String> STATES = List.of(DUE, HOLDS, LATER, ENDED);

    private static final Set<String> NOT_SHOWN = Set.of(
            "id",
            "record",
            "note",
            "geometry",
            "holdsHere",
            "reviewDue",
            "adoptions",
            "cautions",
            "steps",
            "vocabulary");

    private static final int MOST_ELEMENTS = 12;
    private static final Pattern IDENTIFIER = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");

    /** Of how many degrees; none means that no place is told. */
    private static final String GRID = "sensitivityGridDegrees";

    /** What {@link #state} looks at. */
    private static final Set<String> OF_STATE = Set.of(
            "endedAt",
            "withdrawnAt",
            "validFrom",
            "validTo",
            "until",
            "leftOn",
            "reviewBy",
            "sensitivityReviewBy",
            "reviewDue");

    private final ObjectMapper mapper;
    private final ActForms forms;
    private final Choices choices;
    private final Labels labels;
    private final ToldValues values;
    private final AreaWords areas;
    private final CaseService cases;
    private final Sight sight;
    private final RegionService region;
    private final Clock clock;

    SheetItems(
            ObjectMapper mapper,
            ActForms forms,
            Choices choices,
            Labels labels,
            ToldValues values,
            AreaWords areas,
            CaseService cases,
            Sight sight,
            RegionService region,
            Clock clock) {
        this.mapper = mapper;
        this.forms = forms;
        this.choices = choices;
        this.labels = labels;
        this.values = values;
        this.areas = areas;
        this.cases = cases;
        this.sight = sight;
        this.region = region;
        this.clock = clock;
    }

    LocalDate today() {
        return clock.instant().atZone(region.zone()).toLocalDate();
    }

    /** As whoever asks sees it. */
    JsonNode seen(Object thing) {
        return mapper.valueToTree(thing);
    }

    ToldThing item(Sheet sheet, JsonNode thing, List<Deed> acts) {
        Set<String> worded = new HashSet<>();
        Map<String, Reference> references = new HashMap<>();
        for (SheetAct<?> one : sheet.acts()) {
            for (FieldShape shape : forms.shapes(one.act())) {
                if (!shape.values().isEmpty()) {
                    worded.add(shape.name());
                }
                if (shape.reference() != null) {
                    references.put(shape.name(), shape.reference());
                }
            }
        }
        List<Cell> title = new ArrayList<>();
        List<Cell> cells = new ArrayList<>();
        for (String field : sheet.titles()) {
            if (thing.hasNonNull(field)) {
                title.add(cell(sheet, field, thing.get(field), worded, references));
            }
        }
        thing.fields().forEachRemaining(field -> {
            if (!NOT_SHOWN.contains(field.getKey())
                    && !isNamedBeside(field.getKey(), thing)
                    && !sheet.titles().contains(field.getKey())
                    && !field.getValue().isNull()
                    && !(field.getValue().isContainerNode() && field.getValue().isEmpty())) {
                if (field.getValue().isObject()
                        && !references.containsKey(field.getKey())
                        && !field.getKey().equals("placesByGroup")) {
                    field.getValue()
                            .fields()
                            .forEachRemaining(part ->
                                    add(cells, cell(sheet, part.getKey(), part.getValue(), worded, references)));
                } else {
                    add(cells, cell(sheet, field.getKey(), field.getValue(), worded, references));
                }
            }
        });
        return new ToldThing(
                thing.path("id").asText(""),
                title,
                state(sheet, thing),
                thing.path("reviewBy").asText(""),
                cells,
                thing.path("note").asText(""),
                acts);
    }

    /** What is no words of people is left out. */
    private static void add(List<Cell> cells, Cell cell) {
        if (!cell.text().isEmpty()) {
            cells.add(cell);
        }
    }

    private Cell cell(
            Sheet sheet, String field, JsonNode value, Set<String> worded, Map<String, Reference> references) {
        if (field.equals("caseId") && value.isTextual()) {
            return new Cell(labels.field("caseNumber"), named(value.asText()));
        }
        String label = label(sheet.called(field));
        Reference reference = references.get(field);
        if (reference == Reference.clinics) {
            reference = Reference.organisations;
        }
        List<String> texts = new ArrayList<>();
        if (value.isArray()) {
            value.forEach(element -> texts.add(text(field, element)));
        } else {
            texts.add(field.equals(GRID) && value.asDouble() == 0 ? labels.choice("notAtAll") : text(field, value));
        }
        if (worded.contains(field)) {
            texts.replaceAll(labels::choice);
        } else if (reference != null) {
            Map<String, String> names = choices.of(reference);
            texts.replaceAll(text -> names.getOrDefault(text, text));
        }
        texts.removeIf(text -> text.isEmpty() || IDENTIFIER.matcher(text).matches());
        int all = texts.size();
        String between = value.isArray() && !value.isEmpty() && value.get(0).isContainerNode() ? "\n" : "; ";
        return new Cell(
                label,
                all > MOST_ELEMENTS
                        ? String.join(between, texts.subList(0, MOST_ELEMENTS)) + " … (" + all + ")"
                        : String.join(between, texts));
    }

    /** A case as people know it; empty for one that whoever asks does not see. */
    private String named(String caseId) {
        UUID id = UUID.fromString(caseId);
        CaseView one = cases.casesById(sight.onlySeen("case", List.of(id))).get(id);
        return one == null ? "" : one.number() + ", " + one.animal().vernacularName();
    }

    String label(String field) {
        return labels.field(field);
    }

    /** What is told of something that is no thing of a sheet. */
    List<Cell> cells(JsonNode thing) {
        List<Cell> cells = new ArrayList<>();
        thing.fields().forEachRemaining(field -> cells.addAll(cells(field.getKey(), field.getValue())));
        return cells;
    }

    List<Cell> cells(String field, JsonNode value) {
        if (value.isNull() || (value.isContainerNode() && value.isEmpty())) {
            return List.of();
        }
        return List.of(new Cell(label(field), text(field, value)));
    }

    /** An identifier says nothing beside the name of the same thing. */
    private static boolean isNamedBeside(String field, JsonNode thing) {
        return field.endsWith("Id") && thing.hasNonNull(field.substring(0, field.length() - 2));
    }

    private String text(String field, JsonNode value) {
        if (value.isNull()) {
            return "";
        }
        if (!value.isContainerNode()) {
            return values.said(field, value);
        }
        if (value.path("coordinates").isArray()) {
            return areas.said(value);
        }
        List<String> parts = new ArrayList<>();
        if (value.isObject()) {
            value.fields().forEachRemaining(part -> {
                if (!part.getValue().isNull() && !NOT_SHOWN.contains(part.getKey())) {
                    parts.add(
                            part.getValue().isNumber()
                                    ? label(part.getKey()) + ": "
                                            + part.getValue().asText()
                                    : text(part.getKey(), part.getValue()));
                }
            });
        } else {
            value.forEach(part -> parts.add(text(field, part)));
        }
        parts.removeIf(part -> part.isEmpty() || IDENTIFIER.matcher(part).matches());
        return joined(parts);
    }

    /** A sentence needs no comma behind it. */
    private static String joined(List<String> parts) {
        StringBuilder all = new StringBuilder();
        for (String part : parts) {
            if (all.length() > 0) {
                all.append(".?!".indexOf(all.charAt(all.length() - 1)) < 0 ? ", " : " ");
            }
            all.append(part);
        }
        return all.toString();
    }

    /** The same of a thing of which nothing is shown, so that no more than its days is written. */
    String state(Sheet sheet, Object thing) {
        if (!thing.getClass().isRecord()) {
            return state(sheet, seen(thing));
        }
        ObjectNode days = mapper.createObjectNode();
        for (RecordComponent part : thing.getClass().getRecordComponents()) {
            if (OF_STATE.contains(part.getName())) {
                days.set(part.getName(), mapper.valueToTree(value(part, thing)));
            }
        }
        return state(sheet, (JsonNode) days);
    }

    private static @Nullable Object value(RecordComponent part, Object thing) {
        try {
            Method accessor = part.getAccessor();
            accessor.setAccessible(true);
            return accessor.invoke(thing);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the " + part.getName() + " of a thing cannot be read", e);
        }
    }

    /** Whether it holds today, as far as its days say. */
    String state(Sheet sheet, JsonNode thing) {
        String today = today().toString();
        String last = day(thing, "validTo", "until", "leftOn");
        if ((thing.hasNonNull("endedAt") && !sheet.isOfThingsDone())
                || thing.hasNonNull("withdrawnAt")
                || (!last.isEmpty() && (sheet.hasLastDay() ? last.compareTo(today) < 0 : last.compareTo(today) <= 0))) {
            return ENDED;
        }
        String first = day(thing, "validFrom");
        if (!first.isEmpty() && first.compareTo(today) > 0) {
            return LATER;
        }
        String review = day(thing, "reviewBy", "sensitivityReviewBy");
        return thing.path("reviewDue").asBoolean(false) || (!review.isEmpty() && review.compareTo(today) <= 0)
                ? DUE
                : HOLDS;
    }

    private static String day(JsonNode thing, String... fields) {
        for (String field : fields) {
            if (thing.hasNonNull(field)) {
                return thing.get(field).asText();
            }
        }
        return "";
    }
}
