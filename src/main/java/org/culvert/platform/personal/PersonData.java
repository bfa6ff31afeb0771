package org.culvert.platform.personal;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Everything held about one person, for that person: what is kept, why, since when, from whom, and for how long.
 *
 * @param purposes why it is kept
 * @param source where it came from
 * @param recipients to whom it went
 * @param earlier what was written of them before it was corrected
 * @param erasureReason what they said when they asked to be erased
 */
public record PersonData(
        PersonView person,
        String purposes,
        String source,
        String recipients,
        List<Earlier> earlier,
        List<CallTold> calls,
        List<EarlierWords> earlierWords,
        List<Held> held,
        @Nullable Membership membership,
        List<AuthorisationTold> authorisations,
        List<VaccinationTold> vaccinations,
        List<ExposureTold> exposures,
        List<AttendanceTold> attendances,
        List<AccountTold> accounts,
        @Nullable String erasureReason) {

    /** How they were written down until an instant. */
    public record Earlier(
            @Nullable String name,
            @Nullable String phone,
            @Nullable String email,
            @Nullable String address,
            Instant until) {}

    /** A call of theirs. */
    public record CallTold(
            UUID callId,
            UUID incidentId,
            Instant receivedAt,
            Instant recordedAt,
            @Nullable String policeReference,
            @Nullable String words,
            @Nullable String placeAsGiven) {}

    /** Words of a call as they stood until an instant. */
    public record EarlierWords(UUID callId, @Nullable String words, Instant until) {}

    /** An animal that they answered for. */
    public record Held(UUID caseId, Instant from, @Nullable Instant to) {}

    /** What the roster says of a member. */
    public record Membership(
            UUID memberId,
            String callSign,
            String organisation,
            @Nullable Double homeLatitude,
            @Nullable Double homeLongitude,
            boolean attends,
            boolean cares,
            @Nullable String vetRegistration,
            @Nullable LocalDate leftOn) {}

    /** An authorisation of theirs. */
    public record AuthorisationTold(
            String jurisdiction, String authorisationClass, String number, LocalDate validFrom, LocalDate validTo) {}

    /** A vaccination of theirs. */
    public record VaccinationTold(
            String against, LocalDate givenOn, @Nullable LocalDate currentUntil, String basis) {}

    /**
     * A bite, scratch, lick, needle or venom of theirs, or of a child that they are to be reached for.
     *
     * @param asGuardian true for the latter, of which only the time is told
     */
    public record ExposureTold(
            UUID exposureId,
            boolean asGuardian,
            Instant happenedAt,
            @Nullable UUID caseId,
            @Nullable UUID incidentId,
            @Nullable String kind,
            @Nullable String bodyPart,
            @Nullable String washed,
            @Nullable Integer washedMinutes,
            @Nullable String protectiveKit,
            @Nullable String words,
            @Nullable Instant toldAt,
            @Nullable String toldUnit,
            @Nullable String toldReference,
            @Nullable String outcome) {}

    /** An incident that they went to. */
    public record AttendanceTold(
            UUID attendanceId,
            UUID incidentId,
            Instant offeredAt,
            @Nullable String outcome) {}

    /**
     * An account of theirs.
     *
     * @param sessions when each session began that is still kept
     * @param tokens names of their tokens
     */
    public record AccountTold(
            String username,
            String roles,
            Instant createdAt,
            @Nullable Instant disabledAt,
            List<Instant> sessions,
            List<String> tokens) {}
}
