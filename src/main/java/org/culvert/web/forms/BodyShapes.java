package org.culvert.web.forms;

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
import org.culvert.road.PlaceAsGiven;
import org.culvert.roster.RosterService;
import org.culvert.web.forms.FieldShape.Cell;
import org.culvert.web.forms.FieldShape.Column;
import org.culvert.web.forms.FieldShape.Kind;
import org.jspecify.annotations.Nullable;

/** Makes the fields of a form of the class that the API reads the body by. */
public final class BodyShapes {
    /** Texts that are longer than this get some lines. */
    private static final int LONG = 900;

    /** What people say has no end that the body tells of. */
    private static final String WORDS = "words";

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

    private BodyShapes() {}

    /**
     * The fields of a body, in its order.
     *
     * @param leftOut fields that the form does without, with all under them
     */
    public static List<FieldShape> of(Class<?> body, Set<String> leftOut) {
        List<FieldShape> shapes = new ArrayList<>();
        add(body, "", true, leftOut, shapes);
        return shapes;
    }

    private static void add(
            Class<?> body, String before, boolean needed, Set<String> leftOut, List<FieldShape> shapes) {
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
            if (type instanceof Class<?> one && one.isRecord() && !isGeometry(one) && one != PlaceAsGiven.class) {
                add(one, name + ".", wanted, leftOut, shapes);
            } else {
                shapes.add(shape(name, component.getName(), type, field)
                        .isNeeded(wanted)
                        .isChange(change));
            }
        }
    }

    private static boolean isGeometry(Class<?> type) {
        return Arrays.stream(type.getRecordComponents())
                .anyMatch(component ->
                        component.getGenericType().getTypeName().equals("java.util.List<java.lang.Object>"));
    }

    private static FieldShape shape(String name, String own, Type type, Field field) {
        Reference reference = REFERENCES.get(own);
        Size size = field.getAnnotation(Size.class);
        int most = type == String.class && size != null && size.max() < Integer.MAX_VALUE ? size.max() : 0;
        List<String> values = values(type, field);
        return new FieldShape(
                name,
                kind(own, type, reference, values, most),
                false,
                false,
                false,
                values,
                reference,
                columns(type, reference),
                most);
    }

    private static Kind kind(String name, Type type, @Nullable Reference reference, List<String> values, int most) {
        if (isOf(type, List.class)) {
            return reference != null || !values.isEmpty()
                    ? Kind.ticks
                    : argument(type, 0) instanceof Class<?> row && row.isRecord() ? Kind.table : Kind.list;
        }
        if (isOf(type, Map.class)) {
            return Kind.counts;
        }
        if (!values.isEmpty() || reference != null && (type == UUID.class || type == String.class)) {
            return Kind.choice;
        }
        if (type == boolean.class || type == Boolean.class) {
            return Kind.truth;
        }
        if (type == LocalDate.class) {
            return Kind.day;
        }
        if (type == MonthDay.class) {
            return Kind.monthDay;
        }
        if (type == Instant.class) {
            return Kind.moment;
        }
        if (type == PlaceAsGiven.class) {
            return Kind.place;
        }
        if (type instanceof Class<?> one && one.isRecord()) {
            return Kind.geometry;
        }
        if (isFigure(type)) {
            return Kind.number;
        }
        return most > LONG || most == 0 && name.equals(WORDS) ? Kind.lines : Kind.text;
    }

    private static List<Column> columns(Type type, @Nullable Reference reference) {
        return isOf(type, List.class)
                        && reference == null
                        && argument(type, 0) instanceof Class<?> row
                        && row.isRecord()
                ? Arrays.stream(row.getRecordComponents())
                        .map(one -> new Column(one.getName(), cell(one.getType()), constants(one.getType())))
                        .toList()
                : List.of();
    }

    private static Cell cell(Class<?> type) {
        return type == boolean.class || type == Boolean.class ? Cell.truth : isFigure(type) ? Cell.number : Cell.text;
    }

    private static boolean isFigure(Type type) {
        return type instanceof Class<?> figure
                && (figure.isPrimitive() || Number.class.isAssignableFrom(figure))
                && figure != boolean.class;
    }

    private static List<String> values(Type type, Field field) {
        Type one = isOf(type, List.class) ? argument(type, 0) : type;
        List<String> constants = constants(one);
        return constants.isEmpty() && type == String.class ? alternatives(field) : constants;
    }

    private static List<String> constants(Type type) {
        return type instanceof Class<?> choice && choice.isEnum()
                ? Arrays.stream(choice.getEnumConstants())
                        .map(value -> ((Enum<?>) value).name())
                        .toList()
                : List.of();
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
