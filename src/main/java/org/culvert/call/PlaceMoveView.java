package org.culvert.call;

import java.time.Instant;
import java.util.SortedMap;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A moving of places to a version of the roads.
 *
 * @param networkNumber number of that version
 * @param state {@code waiting}, {@code underway}, {@code done} or {@code failed}
 * @param places how many were on older versions when it began; null before
 * @param done how many have been looked at
 * @param outcomes how many of them were moved ({@code moved}) or stay where they are, by reason: {@code noRoad},
 *     {@code roadInDoubt}, {@code otherChainage}
 * @param farthestMetres how far the one that was moved farthest is from where it was, on the road; null where none was
 * @param failure why it failed
 */
public record PlaceMoveView(
        UUID id,
        UUID roadNetworkId,
        int networkNumber,
        String state,
        @Nullable Integer places,
        int done,
        SortedMap<String, Integer> outcomes,
        @Nullable Double farthestMetres,
        @Nullable Instant finishedAt,
        @Nullable String failure,
        RecordView record) {

    /**
     * What became of one place.
     *
     * @param incidentId the incident whose place it is, or null where it is a place of something else
     * @param outcome {@code moved}, or why it was not
     * @param metres between the point on the old road and that on the new one
     * @param fromLinkId link of the older version
     * @param toLinkId link of the new version; null where it was not moved
     */
    public record MovedPlace(
            UUID placeId,
            @Nullable UUID incidentId,
            @Nullable Long incidentNumber,
            String outcome,
            @Nullable Double metres,
            UUID fromLinkId,
            @Nullable UUID toLinkId,
            Instant recordedAt) {}
}
