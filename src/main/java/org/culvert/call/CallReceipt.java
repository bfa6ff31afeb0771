package org.culvert.call;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What the dispatcher hears back when a call is kept.
 *
 * @param incidentNumber the number to say on the telephone
 * @param place the place as understood, with the other roads when one cannot be told from another
 * @param peopleFirst what comes before any animal, when someone is hurt, on the road, or might be
 * @param sayToCaller the usual cautions for what was told
 * @param mayBeTheSame incidents near in space, time and kind, most likely first: offered for joining, never joined
 */
public record CallReceipt(
        UUID callId,
        UUID incidentId,
        long incidentNumber,
        @Nullable PlaceView place,
        List<String> peopleFirst,
        List<String> sayToCaller,
        List<Candidate> mayBeTheSame) {

    /**
     * An incident that may be the same.
     *
     * @param metresApart geodesic distance between the two places
     * @param hoursApart between the two reports
     */
    public record Candidate(UUID incidentId, long incidentNumber, double metresApart, double hoursApart, String why) {}
}
