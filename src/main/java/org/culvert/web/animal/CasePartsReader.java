package org.culvert.web.animal;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.culvert.animal.photograph.PhotographService;
import org.culvert.animal.photograph.PhotographView;
import org.culvert.care.clock.ClockService;
import org.culvert.care.clock.ClockViews.CaseClocksView;
import org.culvert.care.clutch.ClutchService;
import org.culvert.care.clutch.ClutchViews.ClutchView;
import org.culvert.care.growth.GrowthService;
import org.culvert.care.growth.GrowthViews.GrowthView;
import org.culvert.care.growth.GrowthViews.MeasuredView;
import org.culvert.care.health.SuspicionService;
import org.culvert.care.placement.PlacementService;
import org.culvert.care.placement.PlacementService.PlacementView;
import org.culvert.care.plan.AftercarePlanView;
import org.culvert.care.plan.CareEntryService;
import org.culvert.care.plan.CareEntryView;
import org.culvert.care.plan.PlanService;
import org.culvert.clinic.ClinicService;
import org.culvert.clinic.VisitView;
import org.culvert.platform.Page;
import org.culvert.platform.sight.Sight;
import org.culvert.release.AssessmentService;
import org.culvert.release.AssessmentService.AssessmentView;
import org.culvert.release.SiteService;
import org.culvert.release.approvals.ApprovalService;
import org.culvert.release.fitness.FitnessService;
import org.culvert.release.holds.HoldService;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.release.nonrelease.NonReleaseView;

/** Gathers what the asker may see of a case, from all rooms, by the table of who sees what. */
@ApplicationScoped
class CasePartsReader {
    private static final int MOST = 100;
    private static final int SHOWN = 30;

    private final ClockService clocks;
    private final HoldService holds;
    private final SuspicionService suspicions;
    private final PhotographService photographs;
    private final ClinicService clinic;
    private final GrowthService growth;
    private final PlanService plans;
    private final CareEntryService entries;
    private final PlacementService placements;
    private final FitnessService checks;
    private final AssessmentService assessments;
    private final SiteService sites;
    private final ApprovalService approvals;
    private final NonReleaseService decisions;
    private final ClutchService clutches;
    private final Sight sight;

    CasePartsReader(
            ClockService clocks,
            HoldService holds,
            SuspicionService suspicions,
            PhotographService photographs,
            ClinicService clinic,
            GrowthService growth,
            PlanService plans,
            CareEntryService entries,
            PlacementService placements,
            FitnessService checks,
            AssessmentService assessments,
            SiteService sites,
            ApprovalService approvals,
            NonReleaseService decisions,
            ClutchService clutches,
            Sight sight) {
        this.clocks = clocks;
        this.holds = holds;
        this.suspicions = suspicions;
        this.photographs = photographs;
        this.clinic = clinic;
        this.growth = growth;
        this.plans = plans;
        this.entries = entries;
        this.placements = placements;
        this.checks = checks;
        this.assessments = assessments;
        this.sites = sites;
        this.approvals = approvals;
        this.decisions = decisions;
        this.clutches = clutches;
        this.sight = sight;
    }

    CaseParts read(UUID caseId, CaseTongue tongue) {
        CaseClocksView told = clocks.ofCase(caseId);
        Page<PhotographView> pictures = photographs.listOfCase(caseId, MOST, null);
        return new CaseParts(
                told.clocks(),
                told.said(),
                holds.listHolds(caseId),
                suspicions.listSuspicions(caseId),
                seen("photograph", pictures.items(), PhotographView::id).stream()
                        .filter(one -> one.withdrawnAt() == null)
                        .toList(),
                pictures.next() != null,
                sight.sees("visit", "diagnosis") ? seen("visit", clinic.listVisits(caseId), VisitView::id) : null,
                sight.sees("growth", "measurements") ? grown(caseId, tongue) : null,
                sight.sees("aftercare-plan", "tasks") ? care(caseId) : null,
                sight.sees("assessment", "overall") ? release(caseId) : null);
    }

    private CaseParts.Growth grown(UUID caseId, CaseTongue tongue) {
        GrowthView told = growth.grow(caseId);
        int all = told.measurements().size();
        List<MeasuredView> last = told.measurements().subList(Math.max(0, all - SHOWN), all);
        return new CaseParts.Growth(WeightPicture.of(told.measurements(), tongue), last, all > SHOWN, told.note());
    }

    private CaseParts.Care care(UUID caseId) {
        Page<CareEntryView> some = entries.listEntries(caseId, SHOWN, null);
        return new CaseParts.Care(
                seen("aftercare-plan", plans.listPlans(caseId), AftercarePlanView::id),
                seen("care-entry", some.items(), CareEntryView::id),
                some.next() != null,
                seen("placement", placements.listPlacements(caseId), PlacementView::id),
                sight.sees("placement", "tests"));
    }

    private CaseParts.Release release(UUID caseId) {
        Page<AssessmentView> some = assessments.listAssessments(caseId, SHOWN, null);
        List<AssessmentView> asked = seen("assessment", some.items(), AssessmentView::id);
        return new CaseParts.Release(
                checks.listChecks(caseId),
                asked,
                some.next() != null,
                names(asked),
                approvals.listForCase(caseId),
                seen("non-release", decisions.listOfCase(caseId), NonReleaseView::id),
                seen("clutch", clutches.listClutches(caseId), ClutchView::id),
                sight.sees("release-approval", "reference"));
    }

    private Map<UUID, String> names(List<AssessmentView> asked) {
        // Of a sensitive kind a site's name leads to its place
        if (!sight.seesExactly("site", "name")) {
            return Map.of();
        }
        return sites.namesById(asked.stream()
                .map(AssessmentView::siteId)
                .filter(Objects::nonNull)
                .toList());
    }

    /** Of some records those that the asker may see; what comes back is in the order in which it came. */
    private <T> List<T> seen(String resource, List<T> views, Function<T, UUID> id) {
        Set<UUID> own =
                Set.copyOf(sight.onlySeen(resource, views.stream().map(id).toList()));
        return views.stream().filter(one -> own.contains(id.apply(one))).toList();
    }
}
