package org.culvert.web.kept;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.culvert.care.growth.GrowthService;
import org.culvert.care.health.SuspicionEntries;
import org.culvert.care.health.SuspicionService;
import org.culvert.care.placement.PlacementService;
import org.culvert.care.plan.CareEntryService;
import org.culvert.care.plan.PlanEntries;
import org.culvert.care.plan.PlanService;
import org.culvert.release.approvals.ApprovalService;
import org.culvert.release.holds.HoldService;

/** Of a case: its plans and what was entered to them, its placements, what keeps it from going on. */
@ApplicationScoped
class CareKinds {

    private final PlanService plans;
    private final CareEntryService entries;
    private final GrowthService growth;
    private final PlacementService placements;
    private final SuspicionService suspicions;
    private final HoldService holds;
    private final ApprovalService approvals;

    CareKinds(
            PlanService plans,
            CareEntryService entries,
            GrowthService growth,
            PlacementService placements,
            SuspicionService suspicions,
            HoldService holds,
            ApprovalService approvals) {
        this.plans = plans;
        this.entries = entries;
        this.growth = growth;
        this.placements = placements;
        this.suspicions = suspicions;
        this.holds = holds;
        this.approvals = approvals;
    }

    List<KeptKind> kinds() {
        return List.of(
                KeptKind.of("aftercare-plans", "GET /api/cases/{id}/aftercare-plans", plans::listPlans)
                        .act(
                                "changes",
                                "POST /api/aftercare-plans/{id}/changes",
                                "aftercare-plan",
                                PlanEntries.ChangeEntry.class,
                                (ids, entry) -> plans.change(ids.id(), entry))
                        .act(
                                "ending",
                                "POST /api/aftercare-plans/{id}/ending",
                                "aftercare-plan",
                                PlanEntries.PlanEndingEntry.class,
                                (ids, entry) -> plans.end(ids.id(), entry)),
                KeptKind.paged("care-entries", "GET /api/cases/{id}/care-entries", entries::listEntries)
                        .corrected(
                                "/api/care-entries/{id}",
                                "care-entry",
                                PlanEntries.CareEntryCorrection.class,
                                (ids, entry) -> entries.correct(ids.id(), entry))
                        .withdrawn(
                                "/api/care-entries/{id}/withdrawal",
                                "care-entry",
                                (ids, why) -> entries.withdraw(ids.id(), why.reason())),
                KeptKind.of("body-measurements", "GET /api/body-measurements/{id}", growth::listMeasurements)
                        .withdrawn(
                                "/api/body-measurements/{id}/withdrawal",
                                "body-measurement",
                                (ids, why) -> growth.withdraw(ids.id(), why.reason())),
                KeptKind.of("placements", "GET /api/cases/{id}/placements", placements::listPlacements)
                        .corrected(
                                "/api/placements/{id}",
                                "placement",
                                PlacementService.PlacementCorrection.class,
                                (ids, entry) -> placements.correct(ids.id(), entry)),
                KeptKind.of("disease-suspicions", "GET /api/cases/{id}/disease-suspicions", suspicions::listSuspicions)
                        .corrected(
                                "/api/disease-suspicions/{id}",
                                "disease-suspicion",
                                SuspicionEntries.SuspicionCorrection.class,
                                (ids, entry) -> suspicions.correct(ids.id(), entry)),
                KeptKind.of("holds", "GET /api/cases/{id}/holds", holds::listHolds)
                        .corrected(
                                "/api/holds/{id}",
                                "hold",
                                HoldService.HoldCorrection.class,
                                (ids, entry) -> holds.correct(ids.id(), entry)),
                KeptKind.of("release-approvals", "GET /api/cases/{id}/release-approvals", approvals::listForCase)
                        .withdrawn(
                                "/api/release-approvals/{id}/withdrawal",
                                "release-approval",
                                (ids, why) -> approvals.withdraw(ids.id(), why.reason())));
    }
}
