package org.culvert.web.settings;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.SeenRecords;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.Labels;
import org.culvert.web.forms.Reference;
import org.culvert.web.forms.SentFields;
import org.culvert.web.settings.KeptKind.Deed;
import org.culvert.web.settings.KeptKind.Kept;
import org.culvert.web.settings.SheetItem.Cell;
import org.jspecify.annotations.Nullable;

/** Shows what is kept of a whole, kind by kind, and the form of something that may be done with a record of it. */
@ApplicationScoped
class KeptPages {
    /** Records of a kind. */
    public record Section(String key, String name, List<SheetItem> items) {}

    private static final Pattern WORD = Pattern.compile("[a-z]+([A-Z][a-z]+)*");
    private static final Set<String> NOT_SHOWN = Set.of(
            "id",
            "number",
            "caseNumber",
            "collision",
            "metresAlongLink",
            "chainagePrecisionMetres",
            "stepKey",
            "record",
            "note",
            "sha256",
            "exif",
            "advice",
            "cautions",
            "tests",
            "gate",
            "sayToRescuer");
    /** What of a record is a record of its own. */
    private static final Set<String> OWN_RECORDS =
            Set.of("animal", "whereabouts", "fate", "body", "discharge", "pendingHandOver");

    private static final List<Map.Entry<String, Reference>> NAMES = List.of(
            Map.entry("organisationId", Reference.organisations),
            Map.entry("clinicId", Reference.organisations),
            Map.entry("memberId", Reference.members),
            Map.entry("leadMemberId", Reference.members),
            Map.entry("carerMemberId", Reference.members),
            Map.entry("releasedByMemberId", Reference.members),
            Map.entry("limitId", Reference.limits),
            Map.entry("cause", Reference.causes),
            Map.entry("taxonGroup", Reference.groups));

    private final Template all;
    private final Template form;
    private final Wholes wholes;
    private final SheetForms forms;
    private final RegionService region;
    private final SheetChoices choices;
    private final Labels labels;
    private final ToldValues values;
    private final SeenRecords seen;

    KeptPages(
            @Location("kept.html") Template all,
            @Location("kept-act.html") Template form,
            Wholes wholes,
            SheetForms forms,
            RegionService region,
            SheetChoices choices,
            Labels labels,
            ToldValues values,
            SeenRecords seen) {
        this.all = all;
        this.form = form;
        this.wholes = wholes;
        this.forms = forms;
        this.region = region;
        this.choices = choices;
        this.labels = labels;
        this.values = values;
        this.seen = seen;
    }

    TemplateInstance all(Whole whole, UUID id, List<FieldError> errors) {
        List<Section> sections = new ArrayList<>();
        for (KeptKind kind : wholes.kinds(whole)) {
            List<SheetItem.Deed> deeds = wholes.usable(kind).stream()
                    .map(deed -> SheetItem.Deed.of(deed.act()))
                    .toList();
            List<SheetItem> items = wholes.seen(whole, kind, id).stream()
                    .map(kept -> item(kept, deeds))
                    .toList();
            if (!items.isEmpty()) {
                sections.add(new Section(kind.sheet().key(), kind.name(), items));
            }
        }
        return about(all, whole, id)
                .data("sections", sections)
                .data("pictures", wholes.takesPictures(whole))
                .data("originals", wholes.opensOriginals())
                .data("errors", errors)
                .data("once", UUID.randomUUID().toString());
    }

    /** What a form stands at before anything is typed. */
    SentFields shown(Act<?> act, Kept kept) {
        return switch (act.name()) {
            case "correction" -> EntryBody.typed(forms.shapes(act), kept.told(), region.zone());
            case "changes" -> EntryBody.typed(forms.shapes(act), stepsInForce(kept.told()), region.zone());
            default -> SentFields.NOTHING;
        };
    }

    /** @param typed what was typed; null where nothing was yet */
    TemplateInstance form(
            Whole whole,
            UUID id,
            KeptKind kind,
            Deed<?> deed,
            Kept kept,
            @Nullable SentFields typed,
            List<FieldError> errors) {
        Act<?> act = deed.act();
        String tag = act.tag();
        return about(form, whole, id)
                .data("kind", kind.name())
                .data("key", kind.sheet().key())
                .data("act", SheetItem.Deed.of(act))
                .data("item", item(kept, List.of()))
                .data("of", kept.ids().id().toString())
                .data(
                        "seen",
                        tag == null
                                ? ""
                                : seen.tag(
                                        tag,
                                        Wholes.tagged(whole, act, kept.ids()).toString()))
                .data("form", forms.form(kind.sheet(), act, typed == null ? shown(act, kept) : typed, errors))
                .data("once", UUID.randomUUID().toString());
    }

    /**
     * Of parts that change as one only those in which something else is typed.
     *
     * @param body of which the others are taken out
     */
    static void leaveAlone(Act<?> act, ObjectNode body, SentFields typed, SentFields shown) {
        for (RecordComponent part : act.body().getRecordComponents()) {
            if (part.getGenericType() instanceof ParameterizedType of
                    && of.getRawType() == Change.class
                    && body.path(part.getName()).isObject()
                    && under(part, typed).equals(under(part, shown))) {
                body.remove(part.getName());
            }
        }
    }

    private static List<String> under(RecordComponent part, SentFields texts) {
        return texts.told().entrySet().stream()
                .filter(one -> one.getKey().startsWith(part.getName() + "."))
                .flatMap(one ->
                        one.getValue().stream().filter(text -> !text.isBlank()).map(text -> one.getKey() + text))
                .sorted()
                .toList();
    }

    private TemplateInstance about(Template page, Whole whole, UUID id) {
        JsonNode told = wholes.told(whole, id);
        return page.data("whole", whole.name())
                .data("wholeKey", Sheet.key(whole.name()))
                .data("number", told.path("number").asText(""))
                .data("id", id.toString())
                .data("page", wholes.pageOf(whole, id));
    }

    private SheetItem item(Kept kept, List<SheetItem.Deed> deeds) {
        JsonNode told = kept.told();
        boolean ended = told.hasNonNull("withdrawnAt") || told.hasNonNull("undoneAt");
        List<Cell> cells = new ArrayList<>();
        collect(told, cells);
        return new SheetItem(
                kept.ids().id().toString(),
                List.of(),
                ended ? SheetItems.ENDED : SheetItems.HOLDS,
                "",
                cells,
                "",
                ended ? List.of() : deeds);
    }

    private void collect(JsonNode told, List<Cell> cells) {
        told.fields().forEachRemaining(field -> {
            String name = field.getKey();
            JsonNode value = field.getValue();
            if (NOT_SHOWN.contains(name) || value.isNull()) {
                return;
            }
            if (value.isObject()) {
                if (!OWN_RECORDS.contains(name)) {
                    collect(value, cells);
                }
            } else if (value.isArray()) {
                if (!value.isEmpty() && !value.get(0).isContainerNode()) {
                    List<String> texts = new ArrayList<>();
                    value.forEach(one -> texts.add(text(name, one)));
                    texts.removeIf(String::isEmpty);
                    add(cells, name, String.join("; ", texts));
                }
            } else {
                add(cells, name, text(name, value));
            }
        });
    }

    private void add(List<Cell> cells, String name, String text) {
        if (!text.isEmpty()) {
            cells.add(new Cell(labels.field(name.equals("roadName") ? "road" : name), text));
        }
    }

    /** Empty for what is no words of people. */
    private String text(String name, JsonNode value) {
        for (Map.Entry<String, Reference> known : NAMES) {
            if (known.getKey().equals(name)) {
                return choices.of(known.getValue()).getOrDefault(value.asText(), "");
            }
        }
        if (name.endsWith("Id") || name.endsWith("Ids")) {
            return "";
        }
        return value.isTextual() && WORD.matcher(value.asText()).matches()
                ? labels.choice(value.asText())
                : values.said(name, value);
    }

    /** The steps that hold now: a change of a plan takes all that are to hold. */
    private static ObjectNode stepsInForce(JsonNode plan) {
        JsonNode phases = plan.path("phases");
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        ArrayNode steps = body.putArray("steps");
        if (!phases.isEmpty()) {
            phases.get(phases.size() - 1).path("steps").forEach(steps::add);
        }
        return body;
    }
}
