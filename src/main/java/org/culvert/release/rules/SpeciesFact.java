package org.culvert.release.rules;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What has been published of a taxon that bears on where and when it may go back.
 *
 * @param scientificName the taxon, its lower ranks included
 * @param metres for {@link Kind#movementRange} and {@link Kind#nestToWater}
 * @param activePeriod for {@link Kind#activePeriod}
 * @param words what was published, with its spread
 * @param source where
 * @param reviewBy the day from which it should be looked for again
 */
public record SpeciesFact(
        Kind kind,
        String scientificName,
        @Nullable Double metres,
        @Nullable ActivePeriod activePeriod,
        String words,
        String source,
        LocalDate readOn,
        LocalDate reviewBy) {
    /** What a fact is about. */
    public enum Kind {
        /** How far apart the places are that one individual uses. */
        movementRange,
        /** How far from water it nests at most. */
        nestToWater,
        /** It lives in water: the same water, or its catchment, is asked for where a rule asks. */
        aquatic,
        /** When of the day it is about. */
        activePeriod
    }

    /** When of the day an animal is about. */
    public enum ActivePeriod {
        day,
        night,
        twilight,
        anyTime
    }

    /** How far an individual goes by facts of one kind of animal; the greatest published, where several are. */
    public static OptionalDouble movementRangeMetres(List<SpeciesFact> facts) {
        return facts.stream()
                .filter(fact -> fact.kind == Kind.movementRange && fact.metres != null)
                .mapToDouble(SpeciesFact::metres)
                .max();
    }

    /** Whether it is about this taxon. */
    public boolean isAbout(String name) {
        return Rule.isOf(scientificName, name);
    }
}
