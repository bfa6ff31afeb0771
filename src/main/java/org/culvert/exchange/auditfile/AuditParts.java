package org.culvert.exchange.auditfile;

import java.util.List;
import org.culvert.animal.CaseView;
import org.culvert.animal.photograph.PhotographView;
import org.culvert.call.IncidentView;
import org.culvert.care.clutch.ClutchViews;
import org.culvert.care.plan.AftercarePlanView;
import org.culvert.care.plan.CareEntryView;
import org.culvert.clinic.VisitView;
import org.culvert.dispatch.DispatchService;
import org.culvert.release.AssessmentService;
import org.culvert.release.ReleaseView;
import org.culvert.release.approvals.ApprovalService;
import org.culvert.release.fitness.FitnessService;
import org.culvert.release.holds.HoldService;
import org.culvert.release.nonrelease.NonReleaseView;

/** What the rooms say of one animal, before it is put in order. */
record AuditParts(
        CaseView animal,
        IncidentView incident,
        List<DispatchService.AttendanceView> attendances,
        List<AuditFile.AuditedLink> custody,
        List<CaseView.WhereaboutsView> whereabouts,
        List<VisitView> visits,
        List<AftercarePlanView> aftercarePlans,
        List<CareEntryView> careEntries,
        List<ClutchViews.ClutchView> clutches,
        List<PhotographView> photographs,
        List<HoldService.CaseHoldView> holds,
        List<FitnessService.SignedCheckView> fitnessChecks,
        List<ApprovalService.ReleaseApprovalView> approvals,
        List<AssessmentService.AssessmentView> assessments,
        List<ReleaseView> releases,
        List<NonReleaseView> nonReleaseDecisions) {}
