package org.culvert.hotspot.works;

import java.util.List;
import org.culvert.road.traffic.TrafficUsed;
import org.jspecify.annotations.Nullable;

/**
 * What an answer rests on.
 *
 * @param incidentsInPeriod incidents of any cause in the period
 * @param collisionsCounted collisions of the group that is asked about, on the whole network, in the season
 * @param collisionsOfAllAnimals those of all animals
 * @param timedByReport of those counted, how many count on the day they were reported
 * @param placedByJunction of those counted, how many lie by a junction whose roads are equally likely
 * @param networkNumber version of the roads
 * @param traffic which traffic was used, of the years before where works are asked about; null where none was
 * @param notControlled what may have changed the figures and is not allowed for
 */
public record AnswerBasis(
        int incidentsInPeriod,
        int collisionsCounted,
        int collisionsOfAllAnimals,
        int timedByReport,
        int placedByJunction,
        List<Reason> leftOut,
        int networkNumber,
        @Nullable TrafficUsed traffic,
        List<String> notControlled) {
    /** How many incidents were left out for a reason. */
    public record Reason(String reason, int incidents) {}
}
