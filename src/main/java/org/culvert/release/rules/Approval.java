package org.culvert.release.rules;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Somebody's answer to whether animals may be let go at a place.
 *
 * @param of who was asked
 * @param given whether they said yes
 * @param until its last day; null: none was named
 * @param reference what proves it: a letter's number, a document's name
 */
public record Approval(
        Of of,
        boolean given,
        @Nullable LocalDate until,
        @Nullable String reference) {
    /** Whose approval it is. */
    public enum Of {
        landowner,
        protectedArea,
        border,
        wildlifeOfficer
    }

    public boolean holdsOn(LocalDate day) {
        return until == null || !day.isAfter(until);
    }
}
