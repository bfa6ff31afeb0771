package org.culvert.call;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;

/**
 * One incident as road evidence sees it: no caller, no animal.
 *
 * @param joined whether it stands under another incident, which is then the one that counts
 * @param collision whether its cause is a collision
 * @param roadLinkId the link it is pinned to, or null when no road is near or no place was given
 * @param otherRoads the other roads near the place when the road is in doubt, else none
 * @param taxonGroups keys of the groups that its calls, and those of incidents joined to it, tell of
 * @param position where its place is, for the sun; null when no place was given
 */
public record CollisionReport(
        UUID incidentId,
        boolean joined,
        boolean collision,
        @Nullable Instant happenedAt,
        @Nullable Instant happenedNotBefore,
        Instant reportedAt,
        boolean hasPlace,
        @Nullable UUID roadLinkId,
        @Nullable Double metresAlongLink,
        @Nullable Double chainageMetres,
        @Nullable Double chainagePrecisionMetres,
        @Nullable Double coordinateUncertaintyInMeters,
        boolean roadIsInDoubt,
        List<OtherRoad> otherRoads,
        Set<String> taxonGroups,
        @Nullable Position position) {

    /** Where it would lie if it were on another road that is as likely, or nearly so. */
    public record OtherRoad(UUID roadLinkId, double metresAlongLink) {}
}
