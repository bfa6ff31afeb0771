package org.culvert.web.animal;

import jakarta.ws.rs.FormParam;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** What was sent from a form of a case: names of fields and what was typed into each, in one order. */
public class CaseForm {
    private static final int MOST_FIELDS = 60;

    @FormParam("field")
    @Nullable
    List<String> fields;

    @FormParam("value")
    @Nullable
    List<String> values;

    /** As the page gave it: see {@link org.culvert.platform.ledger.FormOnce}. */
    @FormParam("key")
    @Nullable
    String key;

    /** What was typed, by field. */
    Map<String, String> typed() {
        List<String> names = Objects.requireNonNullElse(fields, List.of());
        List<String> told = Objects.requireNonNullElse(values, List.of());
        if (names.size() != told.size() || names.size() > MOST_FIELDS) {
            throw InvalidException.of(
                    "field",
                    "Its fields are not those of the page.",
                    "each field with its value, as the page has them");
        }
        Map<String, String> typed = new TreeMap<>();
        for (int i = 0; i < names.size(); i++) {
            typed.put(names.get(i), told.get(i));
        }
        return typed;
    }
}
