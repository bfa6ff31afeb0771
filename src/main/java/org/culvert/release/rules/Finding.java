package org.culvert.release.rules;

import org.jspecify.annotations.Nullable;

/**
 * What one test says of one animal and one place.
 *
 * @param key the rule's identifier, or the name of a test that stands without a rule, such as {@value #INTRODUCED} or {@value
 *     #LOCAL_RULE}
 * @param test what was asked
 * @param kind the rule's kind, null for the tests that stand without a rule
 * @param lifting what lifts it where it was not passed
 * @param separation how far the place is from the origin; null where the origin is unknown or distance was not asked
 * @param limitMetres what the distance was held against
 * @param words what it comes to
 * @param rule the rule as it stood, null for the tests that stand without one
 */
public record Finding(
        String key,
        String test,
        @Nullable RuleKind kind,
        Lifting lifting,
        Verdict verdict,
        @Nullable Separation separation,
        @Nullable Double limitMetres,
        String words,
        @Nullable Rule rule) {
    /** An introduced kind is not released at all. */
    public static final String INTRODUCED = "introducedTaxon";

    /** No collision hotspot of its group is near in a coming season. */
    public static final String HOTSPOTS_NEAR = "hotspotsNear";

    /** Some rule of the place's own jurisdiction is known for the animal. */
    public static final String LOCAL_RULE = "localRuleKnown";

    /** Whether it is in the way until something lifts it. */
    public boolean stands() {
        return verdict != Verdict.pass && lifting.stands();
    }

    /** Whether another run found the same: the same rule at the same revision, and the same verdict. */
    public boolean agreesWith(Finding other) {
        return key.equals(other.key) && verdict == other.verdict && version() == other.version();
    }

    private int version() {
        return rule == null ? -1 : rule.version();
    }
}
