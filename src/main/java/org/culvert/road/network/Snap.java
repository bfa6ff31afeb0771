package org.culvert.road.network;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a position may be on.
 *
 * @param candidates one for each link within the radius, the likeliest first; empty if there is none
 * @param ambiguous whether another road than the best one's is about as likely: then a person decides
 * @param rivalRoads numbers of those other roads
 * @param radiusMetres how far was looked
 * @param nameFound whether a road of the given name is among the candidates; null if no name was given
 * @param directionUsed whether the given direction was understood; null if none was given
 * @param nearestBeyond the nearest link where none is within the radius, if there is one within 20 km
 */
public record Snap(
        List<SnapCandidate> candidates,
        boolean ambiguous,
        List<Integer> rivalRoads,
        double radiusMetres,
        @Nullable Boolean nameFound,
        @Nullable Boolean directionUsed,
        @Nullable SnapCandidate nearestBeyond) {
    public Optional<SnapCandidate> best() {
        return candidates.isEmpty() ? Optional.empty() : Optional.of(candidates.get(0));
    }

    static Snap nothing(double radiusMetres) {
        return new Snap(List.of(), false, List.of(), radiusMetres, null, null, null);
    }
}
