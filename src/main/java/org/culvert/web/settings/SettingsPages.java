package org.culvert.web.settings;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.SeenRecords;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.ActForms;
import org.culvert.web.acts.ToldThing;
import org.culvert.web.acts.ToldThing.Deed;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.SentFields;
import org.culvert.web.kept.KeptLinks;
import org.jspecify.annotations.Nullable;

/** Shows sheets: all, one with its things, and the form of an act. */
@ApplicationScoped
class SettingsPages {
    /**
     * A sheet among others.
     *
     * @param key name of its words
     * @param alone whether there is one thing of it alone
     * @param entered whether there is any, even if none holds
     * @param held how many of its things hold
     * @param due how many of these are to be looked at again
     */
    public record Card(String key, String address, boolean alone, boolean entered, int held, int due, boolean more) {}

    /** Sheets that are for one thing. */
    public record Group(String purpose, List<Card> cards) {}

    /** Things of a sheet in one state. */
    public record Things(String state, List<ToldThing> items) {}

    private final Template all;
    private final Template one;
    private final Template form;
    private final Template once;
    private final Sheets sheets;
    private final SheetItems items;
    private final ActForms forms;
    private final RegionService region;
    private final SeenRecords seen;
    private final KeptLinks kept;

    SettingsPages(
            @Location("settings.html") Template all,
            @Location("settings-kind.html") Template one,
            @Location("settings-act.html") Template form,
            @Location("settings-once.html") Template once,
            Sheets sheets,
            SheetItems items,
            ActForms forms,
            RegionService region,
            SeenRecords seen,
            KeptLinks kept) {
        this.all = all;
        this.one = one;
        this.form = form;
        this.once = once;
        this.sheets = sheets;
        this.items = items;
        this.forms = forms;
        this.region = region;
        this.seen = seen;
        this.kept = kept;
    }

    TemplateInstance all() {
        Map<Sheet.Purpose, List<Card>> cards = new LinkedHashMap<>();
        for (Sheet sheet : sheets.readable()) {
            if (sheet.purpose() == Sheet.Purpose.people) {
                continue;
            }
            Sheet.Listed listed = sheet.list();
            int held = 0;
            int due = 0;
            for (Object thing : listed.items()) {
                String state = items.state(sheet, thing);
                held += state.equals(SheetItems.HOLDS) || state.equals(SheetItems.DUE) ? 1 : 0;
                due += state.equals(SheetItems.DUE) ? 1 : 0;
            }
            cards.computeIfAbsent(sheet.purpose(), purpose -> new ArrayList<>())
                    .add(new Card(
                            sheet.key(),
                            sheet.home(),
                            sheet.isAlone(),
                            !listed.items().isEmpty(),
                            held,
                            due,
                            listed.more()));
        }
        return all.data(
                "groups",
                cards.entrySet().stream()
                        .map(entry -> new Group(entry.getKey().name(), entry.getValue()))
                        .toList());
    }

    TemplateInstance one(Sheet sheet) {
        List<Deed> ofOne = new ArrayList<>();
        List<Deed> ofNone = new ArrayList<>();
        for (SheetAct<?> usable : sheets.usable(sheet)) {
            (usable.act().ofOne() ? ofOne : ofNone).add(Deed.of(usable.act()));
        }
        Sheet.Listed listed = sheet.list();
        Map<String, List<ToldThing>> byState = new LinkedHashMap<>();
        SheetItems.STATES.forEach(state -> byState.put(state, new ArrayList<>()));
        for (Object thing : listed.items()) {
            ToldThing item = items.item(sheet, items.seen(thing), ofOne);
            byState.getOrDefault(item.state(), new ArrayList<>())
                    .add(
                            item.state().equals(SheetItems.ENDED)
                                    ? new ToldThing(
                                            item.id(),
                                            item.title(),
                                            item.state(),
                                            item.until(),
                                            item.cells(),
                                            item.note(),
                                            List.of())
                                    : item);
        }
        byState.values().forEach(list -> list.sort(Comparator.comparing(ToldThing::until)));
        return one.data("sheet", sheet.name())
                .data("key", sheet.key())
                .data("alone", sheet.isAlone())
                .data("acts", ofNone)
                .data("more", listed.more())
                .data("purpose", sheet.purpose().name())
                .data("files", SheetFiles.KINDS.contains(sheet.name()))
                .data("keptToo", kept.isKept(sheet.name()))
                .data(
                        "things",
                        byState.entrySet().stream()
                                .filter(entry -> !entry.getValue().isEmpty())
                                .map(entry -> new Things(entry.getKey(), entry.getValue()))
                                .toList());
    }

    /** What a form of an act stands at before anything is typed. */
    SentFields shown(Sheet sheet, Act<?> act, UUID id) {
        boolean filled =
                act.ofOne() && (act.name().equals("correction") || act.name().equals("sensitivity")) || sheet.isAlone();
        return filled ? EntryBody.typed(forms.shapes(act), thing(sheet, id), region.zone()) : SentFields.NOTHING;
    }

    /**
     * The form of an act.
     *
     * @param id {@link SheetAct#NONE} where it is not done to one thing
     * @param typed what was typed; null where nothing was yet
     */
    TemplateInstance form(Sheet sheet, Act<?> act, UUID id, @Nullable SentFields typed, List<FieldError> errors) {
        ToldThing item = act.ofOne() ? items.item(sheet, thing(sheet, id), List.of()) : null;
        SentFields stands = typed == null ? shown(sheet, act, id) : typed;
        String tag = act.tag();
        return form.data("sheet", sheet.name())
                .data("key", sheet.key())
                .data("home", sheet.home())
                .data("act", Deed.of(act))
                .data("item", item)
                .data("of", id.equals(SheetAct.NONE) ? "" : id.toString())
                .data("seen", tag == null ? "" : seen.tag(tag, sheet.isAlone() ? "" : id.toString()))
                .data("form", forms.form(act, stands, errors, sheet::called, Map.of()))
                .data("once", UUID.randomUUID().toString());
    }

    /** What is shown this once. */
    TemplateInstance once(Sheet sheet, Object made) {
        return once.data("key", sheet.key())
                .data("home", sheet.home())
                .data("secret", items.seen(made).path("secret").asText());
    }

    private JsonNode thing(Sheet sheet, UUID id) {
        if (sheet.isAlone()) {
            return sheet.find(id).map(items::seen).orElseGet(JsonNodeFactory.instance::objectNode);
        }
        return items.seen(sheet.find(id).orElseThrow(() -> new NotFoundException(sheet.name(), id)));
    }
}
