package org.culvert.release.rules;

import org.culvert.release.rules.Site.Consent;
import org.jspecify.annotations.Nullable;

/**
 * What somebody says of the hour of the release; null: not said.
 *
 * @param matesGoToo whether animals that it was raised with go with it
 */
public record Conditions(@Nullable Light light, @Nullable Weather weather, Consent matesGoToo) {
    public static final Conditions NOT_SAID = new Conditions(null, null, Consent.unknown);

    /** When of the day. */
    public enum Light {
        day,
        night,
        twilight
    }

    /** Whether the weather is likely to be hard on it: heat, cold, storm, flood. */
    public enum Weather {
        fair,
        hard
    }
}
