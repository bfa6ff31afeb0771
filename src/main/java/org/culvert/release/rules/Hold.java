package org.culvert.release.rules;

import java.time.Instant;

/**
 * A stop on moving or letting go an animal for the health of people or animals. Nothing overrides it; it ends when the
 * authority that asked for it, or a licensed vet, has cleared it. Whom it concerns is kept elsewhere, for very few.
 *
 * @param since from when
 */
public record Hold(Kind kind, Instant since) {
    /** Why. */
    public enum Kind {
        /** A bat, or another animal that may carry rabies or a lyssavirus, bit, scratched or licked someone. */
        exposure,
        /** One suspicion of a disease that must be notified. */
        notifiableDisease,
        /** A vet or an authority asked for it on another ground. */
        asked
    }
}
