package org.culvert.release.rules.area;

import org.culvert.release.rules.Lifting;

/**
 * How far from its origin an animal may go at most.
 *
 * @param key the rule's identifier, or a word for what is no rule
 * @param words what it says, and of whom
 * @param metres that may be reached and not passed, zero or more
 * @param lifting what lifts it
 */
public record Limit(String key, String words, double metres, Lifting lifting) {
    public Limit {
        if (!(metres >= 0) || Double.isInfinite(metres)) {
            throw new IllegalArgumentException("a limit of " + metres + " m is not possible");
        }
    }
}
