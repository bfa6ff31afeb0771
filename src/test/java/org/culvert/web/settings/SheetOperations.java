package org.culvert.web.settings;

import io.quarkus.arc.Arc;
import java.util.ArrayList;
import java.util.List;
import org.culvert.web.acts.Act;

/** Operations of the API that the forms of sheets carry out, each with the one that reads the sheet. */
public record SheetOperations(String reads, String operation) {
    public static List<SheetOperations> all() {
        return Arc.container().instance(Sheets.class).get().all().stream()
                .flatMap(sheet -> sheet.acts().stream()
                        .map(one -> new SheetOperations(sheet.reads(), one.act().operation())))
                .toList();
    }

    /** What may be done with things of sheets. */
    public static List<Act<?>> acts() {
        List<Act<?>> acts = new ArrayList<>();
        Arc.container()
                .instance(Sheets.class)
                .get()
                .all()
                .forEach(sheet -> sheet.acts().forEach(one -> acts.add(one.act())));
        return acts;
    }
}
