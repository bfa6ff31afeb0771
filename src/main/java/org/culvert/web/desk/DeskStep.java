package org.culvert.web.desk;

import jakarta.ws.rs.FormParam;
import java.util.Arrays;
import org.culvert.call.CallEntry.Answer;
import org.culvert.dispatch.ClosingService.ClosingEntry;
import org.culvert.dispatch.ClosingService.ClosingOutcome;
import org.culvert.dispatch.DispatchService.Outcome;
import org.culvert.dispatch.DispatchService.OutcomeEntry;
import org.culvert.platform.InvalidException;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** A step of an attendance, or the end of an incident to which nobody goes, as it is typed. */
public class DeskStep {
    /** {@code accept}, {@code depart}, {@code arrive} or {@code end}. */
    @FormParam("act")
    @Nullable
    String act;

    @FormParam("outcome")
    @Nullable
    String outcome;

    @FormParam("passedOnTo")
    @Nullable
    String passedOnTo;

    @FormParam("theirReference")
    @Nullable
    String theirReference;

    @FormParam("because")
    @Nullable
    String because;

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

    @FormParam("key")
    @Nullable
    String key;

    OutcomeEntry outcomeEntry() {
        return new OutcomeEntry(
                one("outcome", Outcome.class, outcome),
                null,
                upTo("passedOnTo", passedOnTo, 200),
                Typed.given(pouchChecked) == null ? null : one("pouchChecked", Answer.class, pouchChecked),
                young(),
                carcassSigned == null ? null : Boolean.TRUE,
                carcassMoved == null ? null : Boolean.TRUE);
    }

    ClosingEntry closingEntry() {
        String reason = upTo("because", because, 2000);
        if (reason == null) {
            throw InvalidException.of("because", "It is not said why nobody goes.", "some words");
        }
        return new ClosingEntry(
                one("outcome", ClosingOutcome.class, outcome),
                null,
                upTo("passedOnTo", passedOnTo, 200),
                upTo("theirReference", theirReference, 200),
                reason);
    }

    private @Nullable Integer young() {
        String text = Typed.given(youngFound);
        if (text == null) {
            return null;
        }
        if (!text.matches("\\d{1,3}")) {
            throw InvalidException.of("youngFound", "That is no number of young.", "0 or more");
        }
        return Integer.valueOf(text);
    }

    private static <E extends Enum<E>> E one(String field, Class<E> of, @Nullable String typed) {
        return Arrays.stream(of.getEnumConstants())
                .filter(constant -> constant.name().equals(typed))
                .findFirst()
                .orElseThrow(() -> InvalidException.of(field, "It is not said which.", "one of the list"));
    }

    private static @Nullable String upTo(String field, @Nullable String typed, int most) {
        String text = Typed.given(typed);
        if (text != null && text.length() > most) {
            throw InvalidException.of(field, "This is too long.", "at most " + most + " characters");
        }
        return text;
    }
}
