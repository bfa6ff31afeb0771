package org.culvert.web.forms;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What was typed into a form, as texts by the names of its fields. */
public record SentFields(Map<String, List<String>> told) {
    /** Of a form that is shown for the first time. */
    public static final SentFields NOTHING = new SentFields(Map.of());

    /** One text a field. */
    public static SentFields of(Map<String, String> texts) {
        Map<String, List<String>> told = new TreeMap<>();
        texts.forEach((name, text) -> told.put(name, List.of(text)));
        return new SentFields(told);
    }

    /** As it was typed; empty where nothing was. */
    public String text(String name) {
        List<String> texts = told.getOrDefault(name, List.of());
        return texts.isEmpty() ? "" : texts.get(0);
    }

    public List<String> texts(String name) {
        return told.getOrDefault(name, List.of());
    }

    /** Without the spaces around it; null where nothing was typed. */
    public @Nullable String given(String name) {
        String text = text(name).strip();
        return text.isEmpty() ? null : text;
    }
}
