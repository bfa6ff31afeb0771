package org.culvert.release.rules;

/**
 * The place where the animal may be let go.
 *
 * @param jurisdiction ISO 3166 code of the law that holds there, such as {@code AU-QLD}
 * @param landownerConsent whether who owns the land has consented, for the day in question
 */
public record Site(UncertainPosition at, String jurisdiction, Consent landownerConsent) {
    public enum Consent {
        yes,
        no,
        unknown
    }
}
