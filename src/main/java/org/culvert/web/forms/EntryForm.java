package org.culvert.web.forms;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.forms.EntryField.Kind;
import org.culvert.web.forms.EntryField.Option;

/**
 * A form as it stands on a page, whose fields are named as those of the body that it makes. A name with points in it is of a
 * part of the body.
 */
public final class EntryForm {
    private static final int EARLIEST_YEAR = 1800;
    private static final int LATEST_YEAR = 2999;

    private final String name;
    private final SentFields typed;
    private final List<FieldError> wrong;
    private final List<EntryField> fields = new ArrayList<>();

    /**
     * @param name of the form, its own on the page
     * @param wrong what is wrong with what was typed
     */
    public EntryForm(String name, SentFields typed, List<FieldError> wrong) {
        this.name = name;
        this.typed = typed;
        this.wrong = wrong;
    }

    public String name() {
        return name;
    }

    public List<EntryField> fields() {
        return fields;
    }

    /** Whether it was sent and stands there again. */
    public boolean isAgain() {
        return !wrong.isEmpty();
    }

    /** All that is wrong, for its head. */
    public List<FieldError> wrong() {
        return wrong;
    }

    public EntryForm text(String field, String label, String hint, boolean needed) {
        return add(field, Kind.text, label, hint, needed, List.of());
    }

    public EntryForm lines(String field, String label, String hint, boolean needed) {
        return add(field, Kind.lines, label, hint, needed, List.of());
    }

    /** Several texts, one a line. */
    public EntryForm list(String field, String label, String hint, boolean needed) {
        return add(field, Kind.list, label, hint, needed, List.of());
    }

    public EntryForm count(String field, String label, String hint, boolean needed) {
        return add(field, Kind.count, label, hint, needed, List.of());
    }

    public EntryForm number(String field, String label, String hint, boolean needed) {
        return add(field, Kind.number, label, hint, needed, List.of());
    }

    public EntryForm day(String field, String label, String hint, boolean needed) {
        return add(field, Kind.day, label, hint, needed, List.of());
    }

    /** A day and an hour of the region's. */
    public EntryForm moment(String field, String label, String hint) {
        return add(field, Kind.moment, label, hint, false, List.of());
    }

    public EntryForm choice(String field, String label, String hint, boolean needed, List<Option> options) {
        return add(field, Kind.choice, label, hint, needed, options);
    }

    public <T extends Enum<T>> EntryForm choice(
            String field, String label, boolean needed, T[] all, Function<String, String> words) {
        return choice(field, label, "", needed, options(all, words));
    }

    public EntryForm truth(String field, String label, boolean needed, String yes, String no) {
        return add(field, Kind.truth, label, "", needed, List.of(new Option("true", yes), new Option("false", no)));
    }

    public EntryForm ticks(String field, String label, String hint, boolean needed, List<Option> options) {
        return add(field, Kind.ticks, label, hint, needed, options);
    }

    public EntryForm file(String field, String label, String hint, boolean needed) {
        return add(field, Kind.file, label, hint, needed, List.of());
    }

    /** Every value of a list as one that can be chosen. */
    public static <T extends Enum<T>> List<Option> options(T[] all, Function<String, String> words) {
        return Arrays.stream(all)
                .map(one -> new Option(one.name(), words.apply(one.name())))
                .toList();
    }

    private EntryForm add(String field, Kind kind, String label, String hint, boolean needed, List<Option> options) {
        fields.add(new EntryField(
                field,
                name + "-" + field.replace('.', '-'),
                kind,
                label,
                hint,
                needed,
                options,
                typed.texts(field),
                wrong.stream()
                        .filter(error -> error.field().equals(field)
                                || error.field().startsWith(field + "[")
                                || error.field().startsWith(field + "."))
                        .toList()));
        return this;
    }

    /**
     * The body of a request that says the same.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    public ObjectNode body(ZoneId zone) {
        List<FieldError> errors = new ArrayList<>();
        ObjectNode body = body(zone, errors);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return body;
    }

    /** @param errors gets each field that cannot be read, which is left out of the body */
    public ObjectNode body(ZoneId zone, List<FieldError> errors) {
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        for (EntryField field : fields) {
            String text = field.value().strip();
            ObjectNode part = part(body, field.name());
            String last = field.name().substring(field.name().lastIndexOf('.') + 1);
            switch (field.kind()) {
                case file -> {}
                case ticks -> {
                    var list = part.putArray(last);
                    field.values().stream().filter(one -> !one.isBlank()).forEach(list::add);
                }
                case list -> {
                    var list = part.putArray(last);
                    text.lines()
                            .map(String::strip)
                            .filter(one -> !one.isEmpty())
                            .forEach(list::add);
                }
                default -> {
                    if (!text.isEmpty()) {
                        put(part, last, field, text, zone, errors);
                    } else if (field.needed()) {
                        errors.add(new FieldError(field.name(), "This is missing.", "a value", null));
                    }
                }
            }
        }
        return body;
    }

    private static void put(
            ObjectNode part, String last, EntryField field, String text, ZoneId zone, List<FieldError> errors) {
        switch (field.kind()) {
            case count -> {
                if (text.matches("\\d{1,9}")) {
                    part.put(last, Integer.parseInt(text));
                } else {
                    errors.add(unreadable(field, text, "a whole number"));
                }
            }
            case number -> {
                String pointed = text.replace(',', '.');
                if (pointed.matches("[-+]?\\d{1,12}(\\.\\d{1,12})?")) {
                    part.put(last, new BigDecimal(pointed.replace("+", "")));
                } else {
                    errors.add(unreadable(field, text, "a number"));
                }
            }
            case truth -> {
                if (text.equals("true") || text.equals("false")) {
                    part.put(last, text.equals("true"));
                } else {
                    errors.add(unreadable(field, text, "yes or no"));
                }
            }
            case moment -> {
                try {
                    LocalDateTime at = LocalDateTime.parse(text);
                    if (at.getYear() < EARLIEST_YEAR || at.getYear() > LATEST_YEAR) {
                        throw new DateTimeException("nobody means that year");
                    }
                    part.put(last, at.atZone(zone).toInstant().toString());
                } catch (DateTimeException e) {
                    errors.add(unreadable(field, text, "a day and an hour such as 2026-11-25T18:30"));
                }
            }
            case day -> {
                try {
                    LocalDate day = LocalDate.parse(text);
                    if (day.getYear() < EARLIEST_YEAR || day.getYear() > LATEST_YEAR) {
                        throw new DateTimeException("nobody means that year");
                    }
                    part.put(last, text);
                } catch (DateTimeException e) {
                    errors.add(unreadable(field, text, "a day such as 2026-07-01"));
                }
            }
            default -> part.put(last, text);
        }
    }

    private static FieldError unreadable(EntryField field, String text, String wanted) {
        String shown = text.length() <= 60 ? text : text.substring(0, 60).strip() + " …";
        return new FieldError(
                field.name(), String.format(Locale.ROOT, "This cannot be read: %s.", shown), wanted, null);
    }

    private static ObjectNode part(ObjectNode body, String name) {
        ObjectNode part = body;
        String[] names = name.split("\\.");
        for (int i = 0; i < names.length - 1; i++) {
            part = part.get(names[i]) instanceof ObjectNode found ? found : part.putObject(names[i]);
        }
        return part;
    }
}
