package org.culvert.web;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.words.FrameWords;
import org.jspecify.annotations.Nullable;

/**
 * One field of a form, with what was typed into it and what is wrong with that.
 *
 * @param id its own on the page, on which a form may stand more than once
 * @param kind {@code choice}, {@code line}, {@code lines}, {@code day} or {@code number}
 * @param hint what to type, empty where the label says it all
 * @param options of a choice, none else
 * @param wrong empty where nothing is
 */
public record FormField(
        String name,
        String id,
        String label,
        String kind,
        String hint,
        boolean required,
        String value,
        List<Option> options,
        String wrong) {

    public record Option(String value, String words) {}

    /** Makes the fields of one form. */
    static final class Maker {
        private final String idEnd;
        private final List<FieldError> errors;

        /** @param idEnd what every identifier ends with, empty where the form stands once on its page */
        Maker(String idEnd, List<FieldError> errors) {
            this.idEnd = idEnd;
            this.errors = errors;
        }

        FormField line(String name, String label, String hint, boolean required, @Nullable String typed) {
            return field(name, label, "line", hint, required, typed, List.of());
        }

        FormField lines(String name, String label, String hint, boolean required, @Nullable String typed) {
            return field(name, label, "lines", hint, required, typed, List.of());
        }

        FormField day(String name, String label, String hint, boolean required, @Nullable String typed) {
            return field(name, label, "day", hint, required, typed, List.of());
        }

        FormField number(String name, String label, String hint, @Nullable String typed) {
            return field(name, label, "number", hint, false, typed, List.of());
        }

        <T extends Enum<T>> FormField choice(
                String name,
                String label,
                boolean required,
                @Nullable String typed,
                T[] all,
                Function<T, String> words) {
            return choice(
                    name,
                    label,
                    required,
                    typed,
                    Arrays.stream(all)
                            .map(one -> new Option(one.name(), words.apply(one)))
                            .toList());
        }

        FormField choice(String name, String label, boolean required, @Nullable String typed, List<Option> options) {
            return field(name, label, "choice", "", required, typed, options);
        }

        private FormField field(
                String name,
                String label,
                String kind,
                String hint,
                boolean required,
                @Nullable String typed,
                List<Option> options) {
            String wrong = errors.stream()
                    .filter(error -> error.field().equals(name))
                    .map(error -> error.detail() + " "
                            + Languages.wordsNow(FrameWords.class).rightWouldBe() + " " + error.wanted() + ".")
                    .findFirst()
                    .orElse("");
            return new FormField(
                    name,
                    name + idEnd,
                    label,
                    kind,
                    hint,
                    required,
                    Objects.requireNonNullElse(typed, ""),
                    options,
                    wrong);
        }
    }
}
