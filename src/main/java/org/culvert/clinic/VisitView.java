package org.culvert.clinic;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/** A visit as kept, with what was found, read, done and ordered in it. */
public record VisitView(
        UUID id,
        UUID caseId,
        UUID clinicId,
        boolean ofBody,
        Instant arrivedAt,
        @Nullable Instant leftAt,
        @Nullable Instant stabilisedAt,
        @Nullable Double weightGrams,
        @Nullable Integer bodyCondition,
        String gravid,
        @Nullable String diagnosis,
        @Nullable String causeOfDeath,
        List<FindingView> findings,
        List<ReadingView> readings,
        List<ProcedureView> procedures,
        List<DrugOrders.DrugOrderView> drugOrders,
        @Nullable DischargeView discharge,
        RecordView record) {

    /** What was found, as kept. */
    public record FindingView(
            UUID id,
            String bodyPart,
            ClinicService.Side side,
            @Nullable String part,
            ClinicService.@Nullable FindingKind kind,
            String finding,
            RecordView record) {}

    /** What was read off a film, as kept. */
    public record ReadingView(
            UUID id,
            String what,
            @Nullable Integer counted,
            String reader,
            ClinicService.Confidence confidence,
            @Nullable Instant at,
            RecordView record) {}

    /** What was done, as kept. */
    public record ProcedureView(
            UUID id,
            String procedure,
            String vetName,
            String vetRegistration,
            @Nullable Instant at,
            RecordView record) {}

    /** What a vet sent it on with, as kept. */
    public record DischargeView(
            String vetName,
            String vetRegistration,
            String plan,
            @Nullable String limits,
            @Nullable String mayHold,
            @Nullable LocalDate reviewOn,
            @Nullable Instant at,
            RecordView record) {}
}
