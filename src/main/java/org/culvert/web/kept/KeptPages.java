package org.culvert.web.kept;

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
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.SeenRecords;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.ActForms;
import org.culvert.web.acts.Choices;
import org.culvert.web.acts.ToldThing;
import org.culvert.web.acts.ToldThing.Cell;
import org.culvert.web.acts.ToldValues;
import org.culvert.web.acts.WordKeys;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.Labels;
import org.culvert.web.forms.Reference;
import org.culvert.web.forms.SentFields;
import org.culvert.web.kept.KeptKind.Deed;
import org.culvert.web.kept.KeptKind.Kept;
import org.jspecify.annotations.Nullable;

/** Shows what is kept of a whole, kind by kind, and the form of something that may be done with a record of it. */
@ApplicationScoped
class KeptPages {
    /**
     * Records of a kind.
     *
     * @param older address of the page with the older ones, empty where there are none
     */
    public record Section(String key, String name, List<ToldThing> items, String older) {}

    /** What records of a whole are called, read where a field refers to one. */
    private static final class Names {
        private final Whole whole;
        private final UUID id;
        private final Map<String, Map<String, String>> read = new HashMap<>();

        Names(Whole whole, UUID id) {
            this.whole = whole;
            this.id = id;
        }

        /** Empty for what whoever asks does not see. */
        String of(String field, String record) {
            Function<UUID, Offered> named = whole.named().get(field);
            return named == null
                    ? ""
                    : read.computeIfAbsent(field, one -> named.apply(id).words())
                            .getOrDefault(record, "");
        }
    }

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
    private final ActForms forms;
    private final RegionService region;
    private final Choices choices;
    private final Labels labels;
    private final ToldValues values;
    private final SeenRecords seen;

    KeptPages(
            @Location("kept.html") Template all,
            @Location("kept-act.html") Template form,
            Wholes wholes,
            ActForms forms,
            RegionService region,
            Choices choices,
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
        Names names = new Names(whole, id);
        return sections(
                whole,
                id,
                wholes.kinds(whole).stream()
                        .map(kind -> section(whole, id, kind, null, names))
                        .filter(section ->
                                !section.items().isEmpty() || !section.older().isEmpty())
                        .toList(),
                false,
                errors);
    }

    /** The records of one kind that are older than one of them. */
    TemplateInstance older(Whole whole, UUID id, KeptKind kind, UUID before) {
        return sections(whole, id, List.of(section(whole, id, kind, before, new Names(whole, id))), true, List.of());
    }

    private TemplateInstance sections(
            Whole whole, UUID id, List<Section> sections, boolean older, List<FieldError> errors) {
        return about(all, whole, id)
                .data("sections", sections)
                .data("older", older)
                .data("pictures", !older && wholes.takesPictures(whole))
                .data("originals", wholes.opensOriginals())
                .data("errors", errors)
                .data("once", UUID.randomUUID().toString());
    }

    private Section section(Whole whole, UUID id, KeptKind kind, @Nullable UUID before, Names names) {
        List<ToldThing.Deed> deeds = wholes.usable(kind).stream()
                .map(deed -> ToldThing.Deed.of(deed.act()))
                .toList();
        KeptKind.Listed listed = wholes.seen(whole, kind, id, before);
        return new Section(
                kind.key(),
                kind.name(),
                listed.items().stream().map(kept -> item(kept, deeds, names)).toList(),
                listed.next() == null
                        ? ""
                        : "/kept/" + whole.name() + "/" + id + "?kind=" + kind.name() + "&before=" + listed.next());
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
        Map<String, Offered> chosen = chosen(whole, id, act);
        Map<String, Map<String, String>> words = new HashMap<>();
        chosen.forEach((field, offered) -> words.put(field, offered.words()));
        return about(form, whole, id)
                .data("kind", kind.name())
                .data("key", kind.key())
                .data("act", ToldThing.Deed.of(act))
                .data("item", item(kept, List.of(), new Names(whole, id)))
                .data("of", kept.ids().id().toString())
                .data(
                        "seen",
                        tag == null
                                ? ""
                                : seen.tag(
                                        tag,
                                        Wholes.tagged(whole, act, kept.ids()).toString()))
                .data("form", forms.form(act, typed == null ? shown(act, kept) : typed, errors, field -> field, words))
                .data(
                        "most",
                        chosen.values().stream().mapToInt(Offered::most).max().orElse(0))
                .data("once", UUID.randomUUID().toString());
    }

    /** By the fields of a form that name records of the whole, what there is to choose from. */
    Map<String, Offered> chosen(Whole whole, UUID id, Act<?> act) {
        Map<String, Offered> chosen = new HashMap<>();
        for (FieldShape shape : forms.shapes(act)) {
            Function<UUID, Offered> named = whole.named().get(shape.name());
            if (named != null) {
                chosen.put(shape.name(), named.apply(id));
            }
        }
        return chosen;
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
                    && !typed.told().containsKey(part.getName())
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
                .data("wholeKey", WordKeys.of(whole.name()))
                .data("number", told.path("number").asText(""))
                .data("id", id.toString())
                .data("page", wholes.pageOf(whole, id));
    }

    private ToldThing item(Kept kept, List<ToldThing.Deed> deeds, Names names) {
        JsonNode told = kept.told();
        boolean ended = told.hasNonNull("withdrawnAt") || told.hasNonNull("undoneAt");
        List<Cell> cells = new ArrayList<>();
        collect(told, cells, names);
        return new ToldThing(
                kept.ids().id().toString(),
                List.of(),
                ended ? "ended" : "holds",
                "",
                cells,
                "",
                ended ? List.of() : deeds);
    }

    private void collect(JsonNode told, List<Cell> cells, Names names) {
        told.fields().forEachRemaining(field -> {
            String name = field.getKey();
            JsonNode value = field.getValue();
            if (NOT_SHOWN.contains(name) || value.isNull()) {
                return;
            }
            if (value.isObject()) {
                if (!OWN_RECORDS.contains(name)) {
                    collect(value, cells, names);
                }
            } else if (value.isArray()) {
                if (!value.isEmpty() && !value.get(0).isContainerNode()) {
                    List<String> texts = new ArrayList<>();
                    value.forEach(one -> texts.add(text(name, one, names)));
                    texts.removeIf(String::isEmpty);
                    add(cells, name, String.join("; ", texts));
                }
            } else {
                add(cells, name, text(name, value, names));
            }
        });
    }

    private void add(List<Cell> cells, String name, String text) {
        if (!text.isEmpty()) {
            cells.add(new Cell(labels.field(name.equals("roadName") ? "road" : name), text));
        }
    }

    /** Empty for what is no words of people. */
    private String text(String name, JsonNode value, Names names) {
        for (Map.Entry<String, Reference> known : NAMES) {
            if (known.getKey().equals(name)) {
                return choices.of(known.getValue()).getOrDefault(value.asText(), "");
            }
        }
        if (name.endsWith("Id") || name.endsWith("Ids")) {
            return names.of(name, value.asText());
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
