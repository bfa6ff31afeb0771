package org.culvert.exchange.demo;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What truly happened at one place and time, and the calls that told of it.
 *
 * @param point where on a road, when the cause is a collision
 * @param plantId the planted stretch that this is one of the extra collisions of
 */
record Incident(
        int number,
        String cause,
        String taxonGroup,
        Instant happened,
        Spot spot,
        Exposure.@Nullable RoadPoint point,
        @Nullable String plantId,
        DeskJoin deskJoin,
        List<Call> calls) {

    /** What the desk made of a second call about the same animal. */
    enum DeskJoin {
        /** There was no second call. */
        NONE,
        /** It was known at once to be about the first one's incident. */
        AT_ONCE,
        /** It became an incident of its own, which was joined to the first afterwards. */
        LATER,
        /** Nobody noticed. */
        NEVER
    }

    /**
     * One person's report.
     *
     * @param eventEarliest the earliest it can have happened as the caller knows, null when unknown
     * @param eventLatest the latest, null when unknown
     */
    record Call(
            String id,
            Instant received,
            Instant recorded,
            @Nullable Instant eventEarliest,
            @Nullable Instant eventLatest,
            String callerKey,
            GivenPlace place,
            String words,
            String anyoneHurt,
            String offTheRoad,
            String policeReference,
            List<Animal> animals,
            String outcome) {}

    /** One or more alike animals; the mother is given by her place in the call's list, from 1, or 0. */
    record Animal(
            String scientificName,
            String identificationVerificationStatus,
            int individualCount,
            String vitality,
            String lifeStage,
            String sex,
            int mother) {}
}
