package org.culvert.web.settings;

import jakarta.ws.rs.FormParam;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** A form of a sheet as it comes: the name of each field beside its value, and what is ticked as {@code field:value}. */
public class SheetEntry {
    @FormParam("field")
    @Nullable
    List<String> fields;

    @FormParam("value")
    @Nullable
    List<String> values;

    @FormParam("ticked")
    @Nullable
    List<String> ticked;

    /** The thing to which it is done, where it is done to one. */
    @FormParam("of")
    @Nullable
    String of;

    /** What tells the thing as the form showed it. */
    @FormParam("seen")
    @Nullable
    String seen;

    @FormParam("key")
    @Nullable
    String key;

    /**
     * What was typed, by the names of fields; what the form has no field for is left out.
     *
     * @throws InvalidException where fields and values are not as many
     */
    Map<String, List<String>> typed(List<Shape> shapes) {
        List<String> names = fields == null ? List.of() : fields;
        List<String> texts = values == null ? List.of() : values;
        if (names.size() != texts.size()) {
            throw InvalidException.of("field", "Fields and values are not as many.", "the form as the page shows it");
        }
        Map<String, List<String>> typed = new LinkedHashMap<>();
        for (Shape shape : shapes) {
            List<String> told = new ArrayList<>();
            if (shape.isMany()) {
                String before = shape.name() + ":";
                if (ticked != null) {
                    ticked.stream()
                            .filter(one -> one.startsWith(before))
                            .forEach(one -> told.add(one.substring(before.length())));
                }
            } else {
                int at = names.indexOf(shape.name());
                if (at >= 0) {
                    told.add(texts.get(at));
                }
            }
            typed.put(shape.name(), told);
        }
        return typed;
    }
}
