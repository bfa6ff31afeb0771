package org.culvert.hotspot.when;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Which collisions are asked about.
 *
 * @param periodFrom first day; with {@code periodTo} left out too, the five calendar years before this one
 * @param periodTo last day
 * @param taxonGroup all animals when left out
 * @param comparedWith another group
 * @param owner of the roads; all when left out
 */
public record SeasonQuestion(
        @Nullable LocalDate periodFrom,
        @Nullable LocalDate periodTo,
        @Nullable String taxonGroup,
        @Nullable String comparedWith,
        @Nullable String owner) {}
