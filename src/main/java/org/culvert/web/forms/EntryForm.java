package org.culvert.web.forms;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.FieldShape.Kind;

/**
 * A form as it stands on a page, whose fields are named as those of the body that it makes. Fields are told one by one, or
 * come of the body's class by {@link BodyShapes}.
 */
public final class EntryForm {
    /** Something that is wrong, with where it stands; of the whole form, label and identifier are empty. */
    public record Wrong(String id, String label, FieldError error) {}

    private final String name;
    private final SentFields typed;
    private final List<FieldError> wrong;
    private final UnaryOperator<String> beside;
    private final List<EntryField> fields = new ArrayList<>();
    private String rareTitle = "";

    /**
     * @param name of the form, its own on the page
     * @param wrong what is wrong with what was typed
     */
    public EntryForm(String name, SentFields typed, List<FieldError> wrong) {
        this(name, typed, wrong, UnaryOperator.identity());
    }

    /** @param beside which field of the form a field of the body is told by, where these are called otherwise */
    public EntryForm(String name, SentFields typed, List<FieldError> wrong, UnaryOperator<String> beside) {
        this.name = name;
        this.typed = typed;
        this.beside = beside;
        this.wrong = wrong.stream()
                .map(error -> error.at(beside.apply(FieldError.named(error.field()))))
                .toList();
    }

    public String name() {
        return name;
    }

    /** Whether a place is typed into it. */
    public boolean hasPlace() {
        return fields.stream().anyMatch(field -> field.shape().kind() == Kind.place);
    }

    /** Those that are mostly told. */
    public List<EntryField> fields() {
        return fields.stream().filter(field -> !field.shape().rare()).toList();
    }

    /** Those that are rarely told. */
    public List<EntryField> rare() {
        return fields.stream().filter(field -> field.shape().rare()).toList();
    }

    /** Heads what is rarely told. */
    public String rareTitle() {
        return rareTitle;
    }

    /** Whether something is typed into what is rarely told, or wrong there. */
    public boolean isRareOpen() {
        return rare().stream().anyMatch(EntryField::isTouched);
    }

    /** Whether it was sent and stands there again. */
    public boolean isAgain() {
        return !wrong.isEmpty();
    }

    /** All that is wrong, for its head. */
    public List<Wrong> wrong() {
        return wrong.stream()
                .map(error -> fields.stream()
                        .filter(field -> field.shape().kind() != Kind.hidden
                                && field.wrong().contains(error))
                        .findFirst()
                        .map(field -> new Wrong(field.id(), field.label(), error))
                        .orElseGet(() -> new Wrong("", "", error)))
                .toList();
    }

    /** What is wrong with the whole, or with something that it has no field for. */
    public List<FieldError> astray() {
        return wrong().stream()
                .filter(one -> one.id().isEmpty())
                .map(Wrong::error)
                .toList();
    }

    public EntryForm text(String field, String label, String hint, boolean needed) {
        return add(Kind.text, field, label, hint, needed, List.of());
    }

    public EntryForm lines(String field, String label, String hint, boolean needed) {
        return add(Kind.lines, field, label, hint, needed, List.of());
    }

    /** Several texts, one a line. */
    public EntryForm list(String field, String label, String hint, boolean needed) {
        return add(Kind.list, field, label, hint, needed, List.of());
    }

    public EntryForm count(String field, String label, String hint, boolean needed) {
        return add(Kind.count, field, label, hint, needed, List.of());
    }

    public EntryForm number(String field, String label, String hint, boolean needed) {
        return add(Kind.number, field, label, hint, needed, List.of());
    }

    public EntryForm day(String field, String label, String hint, boolean needed) {
        return add(Kind.day, field, label, hint, needed, List.of());
    }

    /** A day and an hour of the region's. */
    public EntryForm moment(String field, String label, String hint) {
        return add(Kind.moment, field, label, hint, false, List.of());
    }

    public EntryForm choice(String field, String label, String hint, boolean needed, List<Option> options) {
        return add(Kind.choice, field, label, hint, needed, options);
    }

    public <T extends Enum<T>> EntryForm choice(
            String field, String label, boolean needed, T[] all, Function<String, String> words) {
        return add(FieldShape.choice(field, all).isNeeded(needed), label, "", options(all, words));
    }

    public EntryForm truth(String field, String label, boolean needed, String yes, String no) {
        return add(Kind.truth, field, label, "", needed, truths(yes, no));
    }

    public EntryForm ticks(String field, String label, String hint, boolean needed, List<Option> options) {
        return add(Kind.ticks, field, label, hint, needed, options);
    }

    public EntryForm file(String field, String label, String hint, boolean needed) {
        return add(Kind.file, field, label, hint, needed, List.of());
    }

    private EntryForm add(Kind kind, String field, String label, String hint, boolean needed, List<Option> options) {
        return add(FieldShape.of(kind, field).isNeeded(needed), label, hint, options);
    }

    /** Any field. */
    public EntryForm add(FieldShape shape, String label, String hint, List<Option> options) {
        fields.add(new EntryField(
                shape,
                name + "-" + shape.name().replaceAll("[^A-Za-z0-9]", "-"),
                label,
                hint,
                options,
                typed.texts(shape.name()),
                wrong.stream().filter(error -> shape.isOf(error.field())).toList()));
        return this;
    }

    /** Heads what is rarely told with some words. */
    public EntryForm rarely(String title) {
        rareTitle = title;
        return this;
    }

    /** Every value of a list as one that can be chosen. */
    public static <T extends Enum<T>> List<Option> options(T[] all, Function<String, String> words) {
        return Arrays.stream(all)
                .map(one -> new Option(one.name(), words.apply(one.name())))
                .toList();
    }

    /** Yes and no as they can be chosen. */
    public static List<Option> truths(String yes, String no) {
        return List.of(new Option("true", yes), new Option("false", no));
    }

    /** What was typed, as the API would take it, with what cannot be read of it. */
    public EntryBody read(ZoneId zone) {
        return EntryBody.of(fields.stream().map(EntryField::shape).toList(), typed, SentFields.NOTHING, zone, beside);
    }
}
