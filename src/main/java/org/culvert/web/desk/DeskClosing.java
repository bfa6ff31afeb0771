package org.culvert.web.desk;

import jakarta.ws.rs.FormParam;
import java.util.Arrays;
import org.culvert.dispatch.ClosingService.ClosingEntry;
import org.culvert.dispatch.ClosingService.ClosingOutcome;
import org.culvert.platform.InvalidException;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** The end of an incident to which nobody goes, as it is typed. */
public class DeskClosing {
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

    @FormParam("key")
    @Nullable
    String key;

    ClosingEntry entry() {
        String reason = upTo("because", because, 2000);
        if (reason == null) {
            throw InvalidException.of("because", "It is not said why nobody goes.", "some words");
        }
        return new ClosingEntry(
                one(outcome),
                null,
                upTo("passedOnTo", passedOnTo, 200),
                upTo("theirReference", theirReference, 200),
                reason);
    }

    private static ClosingOutcome one(@Nullable String typed) {
        return Arrays.stream(ClosingOutcome.values())
                .filter(constant -> constant.name().equals(typed))
                .findFirst()
                .orElseThrow(() -> InvalidException.of("outcome", "It is not said which.", "one of the list"));
    }

    private static @Nullable String upTo(String field, @Nullable String typed, int most) {
        String text = Typed.given(typed);
        if (text != null && text.length() > most) {
            throw InvalidException.of(field, "This is too long.", "at most " + most + " characters");
        }
        return text;
    }
}
