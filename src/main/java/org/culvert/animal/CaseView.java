package org.culvert.animal;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.call.PlaceView;
import org.culvert.platform.ledger.RecordView;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/**
 * A case, with its chain of custody whole.
 *
 * @param state {@code found}, {@code inCare}, {@code handOverPending} or {@code ended}, derived from custody and fate
 * @param origin {@code found}, {@code ofMother} or {@code unknown}
 * @param custodyGaps spans between links in which nobody is recorded as holder: shown, not refused
 */
public record CaseView(
        UUID id,
        long number,
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
            RecordView record) {}

    /**
     * One link of custody.
     *
     * @param authorisation number of the authorisation listed for the holder on the first day; null when none was listed
     */
    public record CustodyView(
            UUID id,
            Holder holder,
            Instant from,
            @Nullable Instant to,
            @Nullable String authorisation,
            Instant recordedAt,
            RecordView record) {}

    public record Gap(Instant from, Instant to) {}

    /** A hand-over: pending while it is neither accepted nor refused. */
    public record HandOverView(
            UUID id,
            UUID caseId,
            Holder taker,
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
