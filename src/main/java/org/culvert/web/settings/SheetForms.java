package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.settings.SheetField.Choice;

/** Makes the fields of forms. */
@ApplicationScoped
class SheetForms {
    /** Fields of which people ask what to type. */
    static final Set<String> HINTS = Set.of(
            "jurisdiction",
            "taxonGroup",
            "scientificName",
            "exceptScientificNames",
            "listedAs",
            "placesByGroup",
            "crs",
            "geometry",
            "key",
            "timeZone",
            "countryCode",
            "language",
            "types",
            "csv",
            "extensionGrounds",
            "reviewBy",
            "readOn",
            "recipient",
            "signs",
            "opening",
            "columns",
            "vocabulary",
            "periods",
            "steps",
            "rows",
            "currentUntil",
            "leastIuPerMl");

    private final SheetChoices choices;
    private final Map<Act<?>, List<Shape>> shapes = new ConcurrentHashMap<>();

    SheetForms(SheetChoices choices) {
        this.choices = choices;
    }

    List<Shape> shapes(Act<?> act) {
        return shapes.computeIfAbsent(act, one -> Shape.of(one.body(), one.leftOut()));
    }

    List<SheetField> fields(Sheet sheet, Act<?> act, Map<String, List<String>> typed, List<FieldError> errors) {
        return shapes(act).stream()
                .map(shape -> field(sheet, shape, typed.getOrDefault(shape.name(), List.of()), errors))
                .toList();
    }

    /** What is wrong with the whole, or with something that the form has no field for. */
    List<FieldError> ofTheWhole(Act<?> act, List<FieldError> errors) {
        List<Shape> all = shapes(act);
        return errors.stream()
                .filter(error -> all.stream().noneMatch(shape -> isOf(error, shape)))
                .toList();
    }

    private SheetField field(Sheet sheet, Shape shape, List<String> typed, List<FieldError> errors) {
        String label = shape.label();
        List<Choice> offered = new ArrayList<>();
        shape.words().forEach(word -> offered.add(new Choice(word, word, "", typed.contains(word))));
        if (shape.reference() != null) {
            choices.of(shape.reference())
                    .forEach((value, words) -> offered.add(new Choice(value, "", words, typed.contains(value))));
        }
        return new SheetField(
                shape.name(),
                "f-" + shape.name().replace('.', '-'),
                label.equals("validTo") && sheet.hasLastDay() ? "lastDay" : label,
                shape.kind().name(),
                shape.needed(),
                typed.isEmpty() || shape.isMany() ? "" : typed.get(0),
                offered,
                hint(shape),
                shape.row() == null
                        ? List.of()
                        : Arrays.stream(shape.row().getRecordComponents())
                                .map(RecordComponent::getName)
                                .toList(),
                shape.most(),
                errors.stream().filter(error -> isOf(error, shape)).toList());
    }

    private static String hint(Shape shape) {
        if (shape.kind() == Shape.Kind.monthDay) {
            return "monthDay";
        }
        if (shape.kind() == Shape.Kind.lines && !HINTS.contains(shape.label())) {
            return "oneALine";
        }
        return HINTS.contains(shape.label()) ? shape.label() : "";
    }

    private static boolean isOf(FieldError error, Shape shape) {
        String field = error.field().replaceFirst("^(0|entries\\[0])\\.", "");
        return field.equals(shape.name())
                || field.startsWith(shape.name() + "[")
                || field.startsWith(shape.name() + ".");
    }
}
