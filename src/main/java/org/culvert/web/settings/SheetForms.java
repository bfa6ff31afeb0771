package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.forms.BodyShapes;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.FieldShape.Kind;
import org.culvert.web.forms.Labels;
import org.culvert.web.forms.Reference;
import org.culvert.web.forms.SentFields;

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
    private final Labels labels;
    private final Map<Act<?>, List<FieldShape>> shapes = new ConcurrentHashMap<>();

    SheetForms(SheetChoices choices, Labels labels) {
        this.choices = choices;
        this.labels = labels;
    }

    List<FieldShape> shapes(Act<?> act) {
        return shapes.computeIfAbsent(act, one -> BodyShapes.of(one.body(), one.leftOut()));
    }

    /** The form of an act as it stands, with what is wrong with it. */
    EntryForm form(Sheet sheet, Act<?> act, SentFields typed, List<FieldError> errors) {
        var form = new EntryForm(
                "f", typed, errors.stream().map(SheetForms::ofTheForm).toList());
        for (FieldShape shape : shapes(act)) {
            form.add(shape, labels.field(label(sheet, shape)), hint(shape), options(shape));
        }
        return form;
    }

    /** Some operations take several of what the form tells one of. */
    private static FieldError ofTheForm(FieldError error) {
        return new FieldError(
                error.field().replaceFirst("^(0|\\[0]|entries\\[0]|entries\\.0)\\.", ""),
                error.detail(),
                error.wanted(),
                error.otherReading());
    }

    private List<Option> options(FieldShape shape) {
        if (shape.kind() == Kind.truth) {
            return EntryForm.truths(labels.choice("yes"), labels.choice("no"));
        }
        Reference reference = shape.reference();
        List<Option> options = new ArrayList<>();
        shape.values().forEach(value -> options.add(new Option(value, labels.choice(value))));
        if (reference != null) {
            choices.of(reference).forEach((value, words) -> options.add(new Option(value, words)));
        }
        return options;
    }

    /** By which its words are found. */
    static String label(Sheet sheet, FieldShape shape) {
        return shape.last().equals("validTo") && sheet.hasLastDay() ? "lastDay" : shape.last();
    }

    private String hint(FieldShape shape) {
        String name = hintName(shape);
        String said = name.isEmpty() ? "" : labels.hint(name);
        return shape.columns().isEmpty()
                ? said
                : said + " "
                        + String.join(
                                " | ",
                                shape.columns().stream()
                                        .map(FieldShape.Column::name)
                                        .toList());
    }

    /** Name of its hint, empty where it has none. */
    static String hintName(FieldShape shape) {
        if (shape.kind() == Kind.monthDay) {
            return "monthDay";
        }
        if (HINTS.contains(shape.last())) {
            return shape.last();
        }
        return shape.kind() == Kind.list ? "oneALine" : shape.kind() == Kind.table ? "table" : "";
    }
}
