package org.culvert.web.settings;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.lang.reflect.Field;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.ledger.Change;
import org.culvert.roster.RosterService;
import org.culvert.web.settings.SheetChoices.Reference;
import org.jspecify.annotations.Nullable;

/**
 * A field of a form, as the body of the API makes it.
 *
 * @param name as the API calls it, with dots where it is in something that is itself in the body
 * @param needed whether the API refuses a body without it
 * @param change whether it is left as it is unless something else is typed
 * @param words the values to choose from, none where it is no choice
 * @param reference which things it names, null where it names none
 * @param row what each line of a table holds, null where it is none
 * @param most longest text, 0 where nobody says
 */
record Shape(
        String name,
        Kind kind,
        boolean needed,
        boolean change,
        List<String> words,
        @Nullable Reference reference,
        @Nullable Class<?> row,
        int most) {
    /** How it is typed. */
    enum Kind {
        line,
        text,
        lines,
        number,
        day,
        monthDay,
        moment,
        yesNo,
        choice,
        ticks,
        counts,
        table,
        json
    }

    /** Texts that are longer than this get some lines. */
    private static final int LONG = 900;

    /** Names that things of other rooms go by. */
    private static final Map<String, Reference> REFERENCES = Map.ofEntries(
            Map.entry("taxonGroup", Reference.groups),
            Map.entry("otherGroup", Reference.groups),
            Map.entry("taxonGroups", Reference.groups),
            Map.entry("treats", Reference.groups),
            Map.entry("organisationId", Reference.organisations),
            Map.entry("clinicId", Reference.clinics),
            Map.entry("memberId", Reference.members),
            Map.entry("memberIds", Reference.members),
            Map.entry("supervisorId", Reference.members),
            Map.entry("taxonId", Reference.taxa),
            Map.entry("syndromeId", Reference.syndromes),
            Map.entry("conditionId", Reference.conditions),
            Map.entry("limitId", Reference.limits),
            Map.entry("cause", Reference.causes),
            Map.entry("holderMemberId", Reference.members),
            Map.entry("fromMemberId", Reference.members),
            Map.entry("releasedByMemberId", Reference.members));

    /** The fields of a body, in its order. */
    static List<Shape> of(Class<?> body, Set<String> leftOut) {
        List<Shape> shapes = new ArrayList<>();
        add(body, "", true, leftOut, shapes);
        return shapes;
    }

    /** The last part of its name, by which it has its label. */
    String label() {
        return name.substring(name.lastIndexOf('.') + 1);
    }

    boolean isMany() {
        return kind == Kind.ticks;
    }

    private static void add(Class<?> body, String before, boolean needed, Set<String> leftOut, List<Shape> shapes) {
        for (RecordComponent component : body.getRecordComponents()) {
            String name = before + component.getName();
            if (leftOut.contains(name)) {
                continue;
            }
            Field field = field(body, component.getName());
            Type type = component.getGenericType();
            boolean change = isOf(type, Change.class);
            if (change) {
                type = argument(type, 0);
            }
            boolean wanted = needed
                    && !change
                    && (field.isAnnotationPresent(NotNull.class)
                            || field.isAnnotationPresent(NotBlank.class)
                            || field.isAnnotationPresent(NotEmpty.class)
                            || component.getType().isPrimitive());
            if (type instanceof Class<?> one && one.isRecord() && !isJson(one)) {
                add(one, name + ".", wanted, leftOut, shapes);
            } else {
                shapes.add(shape(name, component.getName(), type, wanted, change, field));
            }
        }
    }

    private static boolean isJson(Class<?> type) {
        return Arrays.stream(type.getRecordComponents())
                .anyMatch(component ->
                        component.getGenericType().getTypeName().equals("java.util.List<java.lang.Object>"));
    }

    private static Shape shape(String name, String own, Type type, boolean needed, boolean change, Field field) {
        Reference reference = REFERENCES.get(own);
        Size size = field.getAnnotation(Size.class);
        int most = type == String.class && size != null && size.max() < Integer.MAX_VALUE ? size.max() : 0;
        List<String> words = List.of();
        Class<?> row = null;
        Kind kind;
        if (isOf(type, List.class)) {
            Type inner = argument(type, 0);
            if (reference != null) {
                kind = Kind.ticks;
            } else if (inner instanceof Class<?> choice && choice.isEnum()) {
                kind = Kind.ticks;
                words = names(choice);
            } else if (inner instanceof Class<?> record && record.isRecord()) {
                kind = Kind.table;
                row = record;
            } else {
                kind = Kind.lines;
            }
        } else if (isOf(type, Map.class)) {
            kind = Kind.counts;
        } else if (type instanceof Class<?> choice && choice.isEnum()) {
            kind = Kind.choice;
            words = names(choice);
        } else if (reference != null && (type == UUID.class || type == String.class)) {
            kind = Kind.choice;
        } else if (type == boolean.class || type == Boolean.class) {
            kind = Kind.yesNo;
        } else if (type == LocalDate.class) {
            kind = Kind.day;
        } else if (type == MonthDay.class) {
            kind = Kind.monthDay;
        } else if (type == Instant.class) {
            kind = Kind.moment;
        } else if (type instanceof Class<?> record && record.isRecord()) {
            kind = Kind.json;
        } else if (type == String.class) {
            words = alternatives(field);
            kind = !words.isEmpty() ? Kind.choice : most > LONG ? Kind.text : Kind.line;
        } else if (type instanceof Class<?> figure && (figure.isPrimitive() || Number.class.isAssignableFrom(figure))) {
            kind = Kind.number;
        } else {
            kind = Kind.line;
        }
        return new Shape(name, kind, needed, change, words, reference, row, most);
    }

    /** Texts that may be one of some words alone. */
    private static List<String> alternatives(Field field) {
        if (field.getDeclaringClass() == RosterService.OrganisationEntry.class
                && field.getName().equals("kind")) {
            return RosterService.ORGANISATION_KINDS;
        }
        Pattern pattern = field.getAnnotation(Pattern.class);
        return pattern != null && pattern.regexp().matches("[A-Za-z]+(\\|[A-Za-z]+)+")
                ? List.of(pattern.regexp().split("\\|"))
                : List.of();
    }

    private static List<String> names(Class<?> choice) {
        return Arrays.stream(choice.getEnumConstants())
                .map(one -> ((Enum<?>) one).name())
                .toList();
    }

    private static Field field(Class<?> body, String name) {
        try {
            return body.getDeclaredField(name);
        } catch (NoSuchFieldException impossible) {
            throw new IllegalStateException("a record has a field for each component", impossible);
        }
    }

    private static boolean isOf(Type type, Class<?> raw) {
        return type instanceof ParameterizedType of && of.getRawType() == raw;
    }

    private static Type argument(Type type, int at) {
        return ((ParameterizedType) type).getActualTypeArguments()[at];
    }
}
