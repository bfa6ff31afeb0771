package org.culvert.web;

import jakarta.ws.rs.FormParam;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.care.plan.PlanEntries;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/** One form of a carer's day: a task that is ticked or skipped, or an entry beside the plan; as texts. */
public class CareForm {
    private static final int MOST_WORDS = 4000;
    private static final double MOST = 1_000_000;

    @FormParam("caseId")
    @Nullable
    String caseId;

    @FormParam("stepKey")
    @Nullable
    String stepKey;

    @FormParam("day")
    @Nullable
    String day;

    @FormParam("kind")
    @Nullable
    String kind;

    @FormParam("value")
    @Nullable
    String value;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("skippedBecause")
    @Nullable
    String skippedBecause;

    @FormParam("at")
    @Nullable
    String at;

    @FormParam("photographId")
    @Nullable
    String photographId;

    /** As the page gave it: see {@link org.culvert.platform.ledger.FormOnce}. */
    @FormParam("key")
    @Nullable
    String key;

    /** Which button was pressed: {@code done}, {@code yes}, {@code no} or {@code skip}. */
    @FormParam("act")
    @Nullable
    String act;

    /** As the page gave it. */
    public @Nullable String key() {
        return key;
    }

    /** Whether it is of a task of a plan, and not of something seen beside it. */
    public boolean isOfTask() {
        return Typed.given(stepKey) != null;
    }

    /** What the form is called on a page: of one task, or of one animal beside its plan. */
    public String name() {
        return isOfTask() ? "t-" + caseId + "-" + stepKey + "-" + day : "b-" + caseId;
    }

    /** What was typed into it, by field. */
    public Map<String, String> typed() {
        Map<String, String> typed = new HashMap<>();
        typed.put("value", Objects.requireNonNullElse(value, ""));
        typed.put("words", Objects.requireNonNullElse(words, ""));
        typed.put("skippedBecause", Objects.requireNonNullElse(skippedBecause, ""));
        typed.put("at", Objects.requireNonNullElse(at, ""));
        typed.put("kind", Objects.requireNonNullElse(kind, ""));
        typed.put("photographId", Objects.requireNonNullElse(photographId, ""));
        return typed;
    }

    /** Whether this is what was sent of a task. */
    public boolean isOf(UUID animal, String key, int ofDay) {
        return animal.toString().equals(caseId)
                && key.equals(stepKey)
                && Integer.toString(ofDay).equals(day);
    }

    /** Whether this is what was sent of an animal beside its plan. */
    public boolean isBeside(UUID animal) {
        return animal.toString().equals(caseId) && Typed.given(stepKey) == null;
    }

    public UUID animal() {
        List<FieldError> errors = new ArrayList<>();
        UUID id = Typed.read("caseId", caseId, UUID::fromString, "an animal of the page", errors);
        if (id == null) {
            throw InvalidException.of("caseId", "It is not said of which animal.", "an animal of the page");
        }
        return id;
    }

    /**
     * The entry.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    public PlanEntries.CareEntryEntry entry(ZoneId zone) {
        List<FieldError> errors = new ArrayList<>();
        String step = Typed.given(stepKey);
        boolean skipped = Objects.equals(act, "skip");
        Integer ofDay = Typed.read("day", day, Integer::valueOf, "a day of the plan", errors);
        if (step != null && (step.length() > 40 || ofDay == null || ofDay < 0)) {
            errors.add(new FieldError("day", "It is not said which task this is.", "a task of the page", null));
        }
        Double number = skipped ? null : Typed.read("value", comma(value), Double::valueOf, "a number", errors);
        if (number != null && !(Math.abs(number) <= MOST)) {
            errors.add(new FieldError("value", "Nobody measures that.", "a number up to 1,000,000", null));
        }
        PlanEntries.CareKind about = step != null
                ? PlanEntries.CareKind.task
                : Typed.read("kind", kind, PlanEntries.CareKind::valueOf, "weight, food, wound or note", errors);
        if (step == null && (about == null || about == PlanEntries.CareKind.task)) {
            errors.add(new FieldError("kind", "It is not said what this is about.", "one of the list", null));
        }
        String reason = Typed.given(skippedBecause);
        if (skipped && reason == null) {
            errors.add(new FieldError("skippedBecause", "It does not say why.", "some words", null));
        }
        tooLong("words", words, errors);
        tooLong("skippedBecause", skippedBecause, errors);
        Instant when = Typed.read(
                "at",
                at,
                text -> LocalDateTime.parse(text).atZone(zone).toInstant(),
                "a day and an hour such as 2026-11-25T18:30",
                errors);
        UUID picture = Typed.read("photographId", photographId, UUID::fromString, "a photograph of the list", errors);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return new PlanEntries.CareEntryEntry(
                about,
                step,
                step == null ? null : ofDay,
                number,
                Objects.equals(act, "yes") ? Boolean.TRUE : Objects.equals(act, "no") ? Boolean.FALSE : null,
                Typed.given(words),
                skipped ? reason : null,
                picture,
                when);
    }

    /** In many languages a comma stands where others write a point. */
    private static @Nullable String comma(@Nullable String text) {
        return text == null ? null : text.strip().replace(',', '.');
    }

    private static void tooLong(String field, @Nullable String text, List<FieldError> errors) {
        int most = field.equals("words") ? MOST_WORDS : MOST_WORDS / 2;
        if (text != null && text.length() > most) {
            errors.add(new FieldError(field, "This is too long.", "at most " + most + " characters", null));
        }
    }
}
