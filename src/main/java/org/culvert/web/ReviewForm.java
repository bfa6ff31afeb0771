package org.culvert.web;

import jakarta.ws.rs.FormParam;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.release.RuleService;
import org.jspecify.annotations.Nullable;

/** The form that says that the source of a release rule was read again, as texts. */
public class ReviewForm {
    private static final int MOST_WORDS = 4000;
    private static final String DAY = "a day such as 2026-07-01";

    @FormParam("version")
    @Nullable
    String version;

    @FormParam("source")
    @Nullable
    String source;

    @FormParam("readOn")
    @Nullable
    String readOn;

    @FormParam("reviewBy")
    @Nullable
    String reviewBy;

    @FormParam("validTo")
    @Nullable
    String validTo;

    @FormParam("reason")
    @Nullable
    String reason;

    /** The form as it stands beside a rule. */
    List<FormField> fields(String ruleId, List<FieldError> wrong) {
        var make = new FormField.Maker("-" + ruleId, wrong);
        return List.of(
                make.day("readOn", "Read on", "", true, readOn),
                make.day("reviewBy", "Review by", "from that day it asks before it passes", true, reviewBy),
                make.lines("source", "Source, where it is another edition", "empty: the same", false, source),
                make.day("validTo", "No longer valid from", "where the source says so", false, validTo),
                make.lines("reason", "What came of the reading", "", true, reason));
    }

    /**
     * Which version of the rule the page showed.
     *
     * @throws InvalidException if that is no number
     */
    int seenVersion() {
        List<FieldError> errors = new ArrayList<>();
        Integer seen = Typed.read("version", version, Integer::valueOf, "the number that the page had", errors);
        if (seen == null) {
            throw InvalidException.of("version", "It is not said which version was seen.", "the form of the page");
        }
        return seen;
    }

    /**
     * The review that is entered.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    RuleService.ReviewEntry entry() {
        List<FieldError> errors = new ArrayList<>();
        LocalDate read = Typed.read("readOn", readOn, LocalDate::parse, DAY, errors);
        LocalDate review = Typed.read("reviewBy", reviewBy, LocalDate::parse, DAY, errors);
        LocalDate to = Typed.read("validTo", validTo, LocalDate::parse, DAY, errors);
        String why = Typed.given(reason);
        String edition = Typed.given(source);
        needed("readOn", read, errors);
        needed("reviewBy", review, errors);
        needed("reason", why, errors);
        bounded("reason", why, errors);
        bounded("source", edition, errors);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return new RuleService.ReviewEntry(
                edition, Objects.requireNonNull(read), Objects.requireNonNull(review), to, Objects.requireNonNull(why));
    }

    private static void needed(String field, @Nullable Object value, List<FieldError> errors) {
        if (value == null && errors.stream().noneMatch(error -> error.field().equals(field))) {
            errors.add(new FieldError(field, "This is needed.", "a value", null));
        }
    }

    private static void bounded(String field, @Nullable String text, List<FieldError> errors) {
        if (text != null && text.length() > MOST_WORDS) {
            errors.add(new FieldError(field, "This is too long.", "at most " + MOST_WORDS + " characters", null));
        }
    }
}
