package org.culvert.hotspot.beside;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What other methods show, for comparison: nothing here is a hotspot.
 *
 * @param sentence that nothing is claimed
 * @param groups within one distance of each other
 * @param groupsOfAnyDensity without a distance to be chosen
 * @param together by K as it is counted
 * @param togetherCorrected by K, corrected for how much road there is at each distance
 */
public record Secondary(
        String sentence,
        Segments segments,
        Segments neighbours,
        Groups groups,
        Groups groupsOfAnyDensity,
        Together together,
        Together togetherCorrected) {
    /**
     * Segments of equal length, tested one by one.
     *
     * @param method what was computed, after whom, and what it is blind to
     * @param segmentMetres their length
     * @param tested how many; 0 where there was too little or too much to test
     * @param found those with an adjusted p of at most 0.05, the smallest first, at most fifty
     */
    public record Segments(String method, double segmentMetres, int tested, List<Segment> found) {}

    /**
     * @param expected by length of road; null where the method has none
     * @param alsoOnShiftedGrid whether a segment that overlaps it was found on the grid shifted by half a segment; null where
     *     there is no such grid
     */
    public record Segment(
            String road,
            double fromChainageMetres,
            double toChainageMetres,
            @Nullable Integer incidents,
            @Nullable Double expected,
            double adjustedP,
            @Nullable Boolean alsoOnShiftedGrid) {}

    /**
     * Groups by density along the roads.
     *
     * @param epsMetres how near is near; null where the method chooses none
     * @param minimumIncidents how many make a group's core
     * @param count how many groups
     * @param ungrouped collisions in none
     * @param largest the largest, at most twenty
     */
    public record Groups(
            String method,
            @Nullable Double epsMetres,
            int minimumIncidents,
            int count,
            @Nullable Integer ungrouped,
            List<Group> largest) {}

    /**
     * @param road on which most of it lies
     * @param fromChainageMetres of its outermost collisions on that road
     */
    public record Group(
            String road,
            double fromChainageMetres,
            double toChainageMetres,
            @Nullable Integer incidents) {}

    /**
     * Whether collisions lie nearer together than spread evenly over the roads.
     *
     * @param radiiMetres distances
     * @param observed K at each
     * @param even mean K of even sets
     * @param madP p of the greatest difference; null where it was not computed
     * @param madRadiusMetres where that is
     * @param nearer whether they are nearer together there
     * @param dclfP p of the sum of squared differences
     */
    public record Together(
            String method,
            List<Double> radiiMetres,
            List<Double> observed,
            List<Double> even,
            @Nullable Double madP,
            @Nullable Double madRadiusMetres,
            @Nullable Boolean nearer,
            @Nullable Double dclfP,
            int simulations) {}
}
