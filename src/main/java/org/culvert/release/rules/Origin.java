package org.culvert.release.rules;

import org.jspecify.annotations.Nullable;

/**
 * Where an animal comes from.
 *
 * @param state its own found place, its mother's, or nobody knows
 * @param at the place; null exactly when nobody knows
 */
public record Origin(OriginState state, @Nullable UncertainPosition at) {
    public enum OriginState {
        found,
        ofMother,
        unknown
    }

    public Origin {
        if ((state == OriginState.unknown) != (at == null)) {
            throw new IllegalArgumentException("an origin has a place exactly when it is known");
        }
    }

    public static Origin unknown() {
        return new Origin(OriginState.unknown, null);
    }

    public static Origin found(UncertainPosition at) {
        return new Origin(OriginState.found, at);
    }
}
