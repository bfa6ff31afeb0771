package org.culvert.road.traffic;

/**
 * How much of the roads has which kind of figure.
 *
 * @param countedKilometres from counts
 * @param estimatedKilometres from records of estimates
 * @param roadsFileKilometres from the file of roads, which says no year
 * @param unknownKilometres of unknown traffic
 * @param countsNotUsed counts and estimates of the period that say nothing of both directions in a year, or have no place
 *     on the current roads
 * @param rule how the figures were found, in one sentence
 * @param sha256 of the figures of all pieces of road: the same figures have the same
 */
public record TrafficUsed(
        int yearFrom,
        int yearTo,
        double countedKilometres,
        double estimatedKilometres,
        double roadsFileKilometres,
        double unknownKilometres,
        int countsNotUsed,
        String rule,
        String sha256) {}
