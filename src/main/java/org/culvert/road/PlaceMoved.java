package org.culvert.road;

import java.util.List;
import org.culvert.road.PlaceUnderstood.OnRoad;
import org.jspecify.annotations.Nullable;

/**
 * What became of a place when the roads were imported anew.
 *
 * @param outcome whether it was moved, or why not
 * @param metres between the point on the old road and that on the new one; null where it was not moved
 * @param onRoad the point on the new road; null where it was not moved
 * @param roadInDoubt whether another road is as likely, as it was before
 * @param otherRoads the other candidates
 */
public record PlaceMoved(
        Outcome outcome,
        @Nullable Double metres,
        @Nullable OnRoad onRoad,
        boolean roadInDoubt,
        List<OnRoad> otherRoads) {

    public enum Outcome {
        /** It is on a road of the new version now. */
        moved,
        /** No road of the new version is within its uncertainty. */
        noRoad,
        /** Several roads of the new version are as likely, and before it was none but one. */
        roadInDoubt,
        /** It was given by its chainage, and the chainage of its road runs otherwise now: what is meant is for a person. */
        otherChainage
    }

    static PlaceMoved not(Outcome reason) {
        return new PlaceMoved(reason, null, null, false, List.of());
    }
}
