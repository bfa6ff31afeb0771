package org.culvert.exchange.auditfile;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseView;
import org.culvert.animal.photograph.PhotographView;
import org.culvert.call.IncidentView;
import org.culvert.care.clutch.ClutchViews;
import org.culvert.care.plan.AftercarePlanView;
import org.culvert.care.plan.CareEntryView;
import org.culvert.clinic.VisitView;
import org.culvert.dispatch.DispatchService;
import org.culvert.platform.ledger.RecordView;
import org.culvert.release.AssessmentService;
import org.culvert.release.ReleaseView;
import org.culvert.release.approvals.ApprovalService;
import org.culvert.release.fitness.FitnessService;
import org.culvert.release.holds.HoldService;
import org.culvert.release.nonrelease.NonReleaseView;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * Everything on one animal's one time with the network, each record with both clocks.
 *
 * @param knownAt it tells what was recorded until then
 * @param revisions how often records of it were revised, all together
 * @param timeline one entry for each record and step, in the order of what happened; what nobody knows the time of comes first
 * @param custody each link with what authorised it, day by day
 * @param incident with its calls
 * @param signatures who signed or approved what, as it was entered
 * @param inspections who read this before, and why
 */
public record AuditFile(
        UUID caseId,
        long caseNumber,
        Instant knownAt,
        int revisions,
        List<AuditEntry> timeline,
        CaseView animal,
        IncidentView incident,
        List<DispatchService.AttendanceView> attendances,
        List<AuditedLink> custody,
        List<CaseView.WhereaboutsView> whereabouts,
        List<VisitView> visits,
        List<AftercarePlanView> aftercarePlans,
        List<CareEntryView> careEntries,
        List<ClutchViews.ClutchView> clutches,
        List<PhotographView> photographs,
        List<HoldService.CaseHoldView> holds,

        @Schema(implementation = Object[].class, description = "As /api/cases/{id}/fitness-checks shows each.")
        List<FitnessService.SignedCheckView> fitnessChecks,

        List<ApprovalService.ReleaseApprovalView> approvals,

        @Schema(implementation = Object[].class, description = "As /api/assessments/{id} shows each.")
        List<AssessmentService.AssessmentView> assessments,

        List<ReleaseView> releases,
        List<NonReleaseView> nonReleaseDecisions,
        List<AuditSignature> signatures,
        List<Inspections.InspectionView> inspections,
        String note) {

    /**
     * A record or a step of one.
     *
     * @param at when it happened; null where nobody knows
     * @param section of this document in which it stands
     * @param words what it was, in short
     * @param revisions how often it was revised
     */
    public record AuditEntry(
            @Nullable Instant at,
            Instant recordedAt,
            String recordedBy,
            @Nullable Long lateByHours,
            String section,
            @Nullable UUID recordId,
            String words,
            int revisions) {}

    /**
     * A link of custody.
     *
     * @param holder call sign of a member, name of an organisation, or somebody outside the network
     * @param authorisation that was recorded with it
     * @param days spans of days, from its first to its last or to today, each with the authorisation by which the holder might
     *     hold the animal as it is listed, or with none
     * @param notListed those of them on which none was
     */
    public record AuditedLink(
            UUID linkId,
            String holder,
            Instant from,
            @Nullable Instant to,
            @Nullable String authorisation,
            CaseView.@Nullable OtherLicenceView otherLicence,
            List<AuditedDays> days,
            List<DaySpan> notListed,
            RecordView record) {}

    /**
     * Days, first and last included, that read alike.
     *
     * @param authorisation number; null where none was listed that holds
     * @param cannotTell whether one might hold, if it were known where the holder keeps animals
     * @param against what speaks against those that are listed and do not hold, in words
     */
    public record AuditedDays(
            LocalDate from, LocalDate to, @Nullable String authorisation, boolean cannotTell, List<String> against) {}

    /** Days, first and last included. */
    public record DaySpan(LocalDate from, LocalDate to) {}

    /**
     * @param what was signed or approved
     * @param capacity such as a vet's registration, where it was entered
     */
    public record AuditSignature(
            String what,
            @Nullable UUID recordId,
            String name,
            @Nullable String capacity,
            @Nullable Instant at,
            Instant recordedAt) {}
}
