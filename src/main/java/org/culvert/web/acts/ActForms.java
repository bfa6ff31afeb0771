package org.culvert.web.acts;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.forms.BodyShapes;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.FieldShape.Cell;
import org.culvert.web.forms.FieldShape.Column;
import org.culvert.web.forms.FieldShape.Kind;
import org.culvert.web.forms.Labels;
import org.culvert.web.forms.Reference;
import org.culvert.web.forms.SentFields;

/** Makes the fields of forms. */
@ApplicationScoped
public class ActForms {
    /** Fields of which people ask what to type. */
    private static final Set<String> HINTS = Set.of(
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

    private final Choices choices;
    private final Labels labels;
    private final Map<Act<?>, List<FieldShape>> shapes = new ConcurrentHashMap<>();

    ActForms(Choices choices, Labels labels) {
        this.choices = choices;
        this.labels = labels;
    }

    public List<FieldShape> shapes(Act<?> act) {
        return shapes.computeIfAbsent(act, one -> BodyShapes.of(one.body(), one.leftOut()));
    }

    /**
     * The form of an act as it stands, with what is wrong with it.
     *
     * @param called by what name the words of a field are found
     * @param offered of fields that name a record of the page's own, by their names, what there is to choose from
     */
    public EntryForm form(
            Act<?> act,
            SentFields typed,
            List<FieldError> errors,
            UnaryOperator<String> called,
            Map<String, Map<String, String>> offered) {
        var form = new EntryForm(
                "f", typed, errors.stream().map(ActForms::ofTheForm).toList());
        for (FieldShape shape : shapes(act)) {
            Map<String, String> chosen = offered.get(shape.name());
            String label = labels.field(called.apply(shape.last()));
            if (chosen == null) {
                form.add(shape, label, hint(shape), options(shape));
            } else {
                form.add(shape.isChoice(), label, hint(shape), chosenFrom(chosen, typed.text(shape.name())));
            }
        }
        return form;
    }

    /** What a field stands at can be left, even if whoever asks does not see what it names. */
    private List<Option> chosenFrom(Map<String, String> chosen, String stands) {
        List<Option> options = new ArrayList<>();
        chosen.forEach((value, words) -> options.add(new Option(value, words)));
        if (!stands.isEmpty() && !chosen.containsKey(stands)) {
            options.add(new Option(stands, labels.choice("asItStands")));
        }
        return options;
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

    private String hint(FieldShape shape) {
        String name = hintName(shape);
        String said = name.isEmpty() ? "" : labels.hint(name);
        return shape.columns().isEmpty()
                ? said
                : said + " "
                        + String.join(
                                " | ",
                                shape.columns().stream().map(this::column).toList());
    }

    /** What stands in a part of a line, with the words that are taken there and what they mean. */
    private String column(Column column) {
        String label = labels.field(column.name());
        List<String> taken = column.cell() == Cell.truth ? List.of("true", "false") : column.values();
        return taken.isEmpty()
                ? label
                : label
                        + taken.stream()
                                .map(value -> meaning(value, column.cell()))
                                .collect(Collectors.joining(", ", " (", ")"));
    }

    private String meaning(String value, Cell cell) {
        String means = labels.choice(cell == Cell.truth ? value.equals("true") ? "yes" : "no" : value);
        return means.equalsIgnoreCase(value) ? value : value + " = " + means;
    }

    /** Name of its hint, empty where it has none. */
    public static String hintName(FieldShape shape) {
        if (shape.kind() == Kind.monthDay) {
            return "monthDay";
        }
        if (shape.kind() == Kind.place) {
            return "saidPlace";
        }
        if (HINTS.contains(shape.last())) {
            return shape.last();
        }
        return shape.kind() == Kind.list ? "oneALine" : shape.kind() == Kind.table ? "table" : "";
    }
}
