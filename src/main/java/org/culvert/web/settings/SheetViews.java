package org.culvert.web.settings;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.ToldThing;

/** Things of sheets for pages that show them among others. */
@ApplicationScoped
public class SheetViews {
    private final Sheets sheets;
    private final SheetItems items;

    SheetViews(Sheets sheets, SheetItems items) {
        this.sheets = sheets;
        this.items = items;
    }

    /** Some things of a sheet, as whoever asks sees them, with what they may do with each. */
    public List<ToldThing> items(String name, List<?> things) {
        Sheet sheet = sheets.readable(name);
        List<ToldThing.Deed> deeds = sheets.usable(sheet).stream()
                .map(SheetAct::act)
                .filter(Act::ofOne)
                .map(ToldThing.Deed::of)
                .toList();
        return things.stream()
                .map(thing -> {
                    JsonNode seen = items.seen(thing);
                    return items.item(
                            sheet, seen, items.state(sheet, seen).equals(SheetItems.ENDED) ? List.of() : deeds);
                })
                .toList();
    }

    /** Everything that is told of something, in sections with their parts. */
    public List<Section> sections(Object told) {
        List<Section> sections = new ArrayList<>();
        List<ToldThing.Cell> facts = new ArrayList<>();
        items.seen(told).fields().forEachRemaining(field -> {
            JsonNode value = field.getValue();
            if (value.isArray() && !value.isEmpty() && value.get(0).isObject()) {
                List<List<ToldThing.Cell>> parts = new ArrayList<>();
                value.forEach(part -> parts.add(items.cells(part)));
                sections.add(new Section(items.label(field.getKey()), parts));
            } else if (value.isObject()) {
                sections.add(new Section(items.label(field.getKey()), List.of(items.cells(value))));
            } else if (!value.isNull() && !(value.isArray() && value.isEmpty())) {
                facts.addAll(items.cells(field.getKey(), value));
            }
        });
        if (!facts.isEmpty()) {
            sections.add(0, new Section("", List.of(facts)));
        }
        return sections;
    }

    /** @param title empty where it needs none */
    public record Section(String title, List<List<ToldThing.Cell>> parts) {}
}
