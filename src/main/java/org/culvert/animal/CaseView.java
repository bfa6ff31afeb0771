package org.culvert.animal;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.referral.ReferralService;
import org.culvert.call.PlaceView;
import org.culvert.platform.ledger.RecordView;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/**
 * A case, with its chain of custody whole.
 *
 * @param temporaryNumber under which it was taken in, in a surge
 * @param state {@code found}, {@code inCare}, {@code handOverPending} or {@code ended}, derived from custody and fate
 * @param origin {@code found}, {@code ofMother} or {@code unknown}
 * @param custodyGaps spans in which nobody is recorded as holder, between links and after the last one: shown, not refused
 * @param referOut why the network's holders may not hold it, and where it goes instead; empty where nothing of that is entered
 */
public record CaseView(
        UUID id,
        long number,
        @Nullable String temporaryNumber,
        String state,
        AnimalView animal,
        UUID incidentId,
        @Nullable UUID attendanceId,
        String cause,
        Instant foundAt,
        Instant recordedAt,
        String origin,
        @Nullable PlaceView foundPlace,
        boolean dependentYoung,
        List<CustodyView> custody,
        List<Gap> custodyGaps,
        List<ReferralService.ReferOutView> referOut,
        @Nullable HandOverView pendingHandOver,
        @Nullable WhereaboutsView whereabouts,
        @Nullable FateView fate,
        @Nullable BodyView body,
        RecordView record) {

    public record AnimalView(
            UUID id,
            UUID taxonId,
            String scientificName,
            String vernacularName,
            String taxonGroup,
            UUID taxonGroupId,
            String identificationVerificationStatus,
            String sex,
            @Nullable String lifeStage,
            @Nullable UUID motherId,
            @Nullable String naturalMarks,
            @Nullable LocalDate bornOn,
            @Nullable Integer bornDoubtDays,
            RecordView record) {}

    /**
     * One link of custody.
     *
     * @param authorisation number of the authorisation listed for the holder on the first day; null when none was listed
     * @param otherLicence a licence that is not the network's, under which it was taken
     */
    public record CustodyView(
            UUID id,
            Holder holder,
            Instant from,
            @Nullable Instant to,
            @Nullable String authorisation,
            @Nullable OtherLicenceView otherLicence,
            Instant recordedAt,
            RecordView record) {}

    /** @param to null while it lasts */
    public record Gap(Instant from, @Nullable Instant to) {}

    /** A licence that is not the network's; without an organisation it is the taker's own. */
    public record OtherLicenceView(@Nullable String organisation, String number, String jurisdiction) {}

    /** A hand-over: pending while it is neither accepted nor refused. */
    public record HandOverView(
            UUID id,
            UUID caseId,
            Holder taker,
            @Nullable OtherLicenceView otherLicence,
            @Nullable Instant offeredAt,
            @Nullable Instant acceptedAt,
            @Nullable Instant refusedAt,
            @Nullable String refusedReason,
            RecordView record) {}

    public record WhereaboutsView(
            UUID id,
            @Nullable UUID organisationId,
            @Nullable UUID memberId,
            @Nullable String words,
            @Nullable Instant since,
            RecordView record) {}

    public record FateView(
            String fate,
            @Nullable Instant at,
            @Nullable String method,
            @Nullable String authority,
            @Nullable String approvedBy,
            boolean barbiturate,
            @Nullable String deathConfirmedBy,
            @Nullable Instant deathConfirmedAt,
            @Nullable UUID releaseId,
            RecordView record) {}

    public record BodyView(
            UUID id,
            @Nullable Holder holder,
            String barbiturate,
            @Nullable String disposal,
            @Nullable Instant disposedAt,
            RecordView record) {}
}
