package org.culvert.platform.sight;

import com.fasterxml.jackson.databind.JsonNode;
import java.lang.reflect.GenericArrayType;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Walks an answer beside the type it was made of, and names every field that the table does not let a role see. */
final class FieldWalk {
    private final SightTable table;
    private final Set<String> kinds = new TreeSet<>();
    private int looked;

    FieldWalk(SightTable table) {
        this.table = table;
    }

    List<String> walk(JsonNode node, Type type, String role, String where) {
        List<String> wrong = new ArrayList<>();
        walk(node, type, null, role, where, wrong);
        return wrong;
    }

    int looked() {
        return looked;
    }

    int kinds() {
        return kinds.size();
    }

    private void walk(
            JsonNode node, Type type, @Nullable Type argument, String role, String where, List<String> wrong) {
        if (node.isNull()) {
            return;
        }
        if (type instanceof TypeVariable && argument != null) {
            walk(node, argument, null, role, where, wrong);
        } else if (type instanceof ParameterizedType parameterized) {
            Type first = parameterized.getActualTypeArguments()[0];
            Class<?> raw = (Class<?>) parameterized.getRawType();
            if (raw == RestResponse.class) {
                walk(node, first, null, role, where, wrong);
            } else if (Collection.class.isAssignableFrom(raw)) {
                node.forEach(element ->
                        walk(element, first instanceof TypeVariable ? argument : first, argument, role, where, wrong));
            } else if (SightModule.isOurs(raw)) {
                fields(node, raw, first, role, where, wrong);
            }
        } else if (type instanceof GenericArrayType array) {
            node.forEach(element -> walk(element, array.getGenericComponentType(), argument, role, where, wrong));
        } else if (type instanceof Class<?> plain && Outgoing.isOurChoice(plain)) {
            chosen(node, plain, role, where, wrong);
        } else if (type instanceof Class<?> plain && SightModule.isOurs(plain)) {
            fields(node, plain, null, role, where, wrong);
        }
    }

    /** Walks beside the one of several records that speaks least against it: where it is none of them, something does. */
    private void chosen(JsonNode node, Class<?> choice, String role, String where, List<String> wrong) {
        Class<?> fitting = Arrays.stream(choice.getPermittedSubclasses())
                .min(Comparator.comparingInt(
                        one -> new FieldWalk(table).walk(node, one, role, where).size()))
                .orElseThrow();
        walk(node, fitting, null, role, where, wrong);
    }

    private void fields(
            JsonNode node, Class<?> record, @Nullable Type argument, String role, String where, List<String> wrong) {
        String resource = Resources.name(record);
        node.properties().forEach(entry -> {
            String name = entry.getKey();
            looked++;
            kinds.add(resource + " " + name);
            if (table.neverShows(resource, name, role)) {
                wrong.add(where + " shows " + resource + " " + name + " to " + role);
            }
            RecordComponent component = Arrays.stream(record.getRecordComponents())
                    .filter(candidate -> candidate.getName().equals(name))
                    .findFirst()
                    .orElse(null);
            if (component == null) {
                wrong.add(where + ": " + resource + " has no component " + name);
            } else {
                walk(entry.getValue(), component.getGenericType(), argument, role, where, wrong);
            }
        });
    }
}
