package org.culvert.web.forms;

import jakarta.ws.rs.FormParam;
import java.lang.reflect.Field;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What was typed into a form, as texts by the names of its fields. */
public record SentFields(Map<String, List<String>> told) {
    /** Of a form that is shown for the first time. */
    public static final SentFields NOTHING = new SentFields(Map.of());

    /** Reads every field of a form that a browser sends; how it proves itself is none of what was typed. */
    public static SentFields of(Object form) {
        Map<String, List<String>> told = new TreeMap<>();
        for (Field field : form.getClass().getDeclaredFields()) {
            FormParam name = field.getAnnotation(FormParam.class);
            if (name != null && !name.value().equals("key")) {
                List<String> texts = texts(field, form);
                if (!texts.isEmpty()) {
                    told.put(name.value(), texts);
                }
            }
        }
        return new SentFields(told);
    }

    private static List<String> texts(Field field, Object form) {
        try {
            field.setAccessible(true);
            Object value = field.get(form);
            return value instanceof List<?> list
                    ? list.stream().map(Object::toString).toList()
                    : value == null ? List.of() : List.of(value.toString());
        } catch (IllegalAccessException e) {
            throw new IllegalStateException("a form is read by its own server", e);
        }
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
