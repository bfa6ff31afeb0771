package org.culvert.web;

import jakarta.ws.rs.FormParam;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.culvert.call.CallEntry.Answer;
import org.culvert.dispatch.DispatchService.Outcome;
import org.culvert.dispatch.DispatchService.OutcomeEntry;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/** How an attendance ended and what was found at the scene, as texts. */
public class SceneForm {
    private static final int MOST_WORDS = 4000;
    private static final int LONGEST_NAME = 200;
    private static final int MOST_YOUNG = 1000;

    @FormParam("outcome")
    @Nullable
    String outcome;

    @FormParam("passedOnTo")
    @Nullable
    String passedOnTo;

    @FormParam("pouchChecked")
    @Nullable
    String pouchChecked;

    @FormParam("youngFound")
    @Nullable
    String youngFound;

    @FormParam("carcassSigned")
    @Nullable
    String carcassSigned;

    @FormParam("carcassMoved")
    @Nullable
    String carcassMoved;

    @FormParam("words")
    @Nullable
    String words;

    /** As the page gave it: see {@link org.culvert.platform.ledger.FormOnce}. */
    @FormParam("key")
    @Nullable
    public String key;

    /**
     * The outcome.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    public OutcomeEntry entry() {
        List<FieldError> errors = new ArrayList<>();
        Outcome ended = one(Outcome.values(), "outcome", outcome, errors);
        if (ended == null && errors.isEmpty()) {
            errors.add(new FieldError("outcome", "It is not said how it ended.", "one of the list", null));
        }
        Answer pouch = one(Answer.values(), "pouchChecked", pouchChecked, errors);
        String typed = Typed.given(youngFound);
        Integer young = null;
        if (typed != null) {
            if (typed.matches("\\d{1,4}") && Integer.parseInt(typed) <= MOST_YOUNG) {
                young = Integer.valueOf(typed);
            } else {
                errors.add(new FieldError("youngFound", "That is no number of young.", "0 or more", null));
            }
        }
        tooLong("passedOnTo", passedOnTo, LONGEST_NAME, errors);
        tooLong("words", words, MOST_WORDS, errors);
        if (!errors.isEmpty() || ended == null) {
            throw new InvalidException(errors);
        }
        return new OutcomeEntry(
                ended,
                null,
                Typed.given(passedOnTo),
                pouch,
                young,
                yesOrNo(carcassSigned),
                yesOrNo(carcassMoved),
                Typed.given(words));
    }

    public Map<String, String> typed() {
        Map<String, String> typed = new HashMap<>();
        typed.put("outcome", text(outcome));
        typed.put("passedOnTo", text(passedOnTo));
        typed.put("pouchChecked", text(pouchChecked));
        typed.put("youngFound", text(youngFound));
        typed.put("carcassSigned", text(carcassSigned));
        typed.put("carcassMoved", text(carcassMoved));
        typed.put("words", text(words));
        return typed;
    }

    private static <T extends Enum<T>> @Nullable T one(
            T[] all, String field, @Nullable String text, List<FieldError> errors) {
        String given = Typed.given(text);
        if (given == null) {
            return null;
        }
        for (T value : all) {
            if (value.name().equals(given)) {
                return value;
            }
        }
        errors.add(new FieldError(field, "This cannot be read: " + given + ".", "one of the list", null));
        return null;
    }

    private static @Nullable Boolean yesOrNo(@Nullable String text) {
        return Objects.equals(text, "yes") ? Boolean.TRUE : Objects.equals(text, "no") ? Boolean.FALSE : null;
    }

    private static void tooLong(String field, @Nullable String text, int most, List<FieldError> errors) {
        if (text != null && text.length() > most) {
            errors.add(new FieldError(field, "This is too long.", "at most " + most + " characters", null));
        }
    }

    private static String text(@Nullable String text) {
        return Objects.requireNonNullElse(text, "");
    }
}
