package org.culvert.call;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One incident as road evidence sees it: no caller, no animal.
 *
 * @param joined whether it stands under another incident, which is then the one that counts
 * @param collision whether its cause is a collision
 * @param roadLinkId the link it is pinned to, or null when no road is near or no place was given
 * @param taxonGroups keys of the groups that its calls, and those of incidents joined to it, tell of
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
        Set<String> taxonGroups) {}
