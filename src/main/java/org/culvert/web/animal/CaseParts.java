package org.culvert.web.animal;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.animal.photograph.PhotographView;
import org.culvert.care.clock.ClockViews.CaseClockView;
import org.culvert.care.clutch.ClutchViews.ClutchView;
import org.culvert.care.growth.GrowthViews.MeasuredView;
import org.culvert.care.health.DiseaseSuspicionView;
import org.culvert.care.placement.PlacementService.PlacementView;
import org.culvert.care.plan.AftercarePlanView;
import org.culvert.care.plan.CareEntryView;
import org.culvert.clinic.VisitView;
import org.culvert.release.AssessmentService.AssessmentView;
import org.culvert.release.approvals.ApprovalService.ReleaseApprovalView;
import org.culvert.release.fitness.FitnessService.SignedCheckView;
import org.culvert.release.holds.HoldService.CaseHoldView;
import org.culvert.release.nonrelease.NonReleaseView;
import org.jspecify.annotations.Nullable;

/**
 * What one asker may see of a case beside the case itself; a part without a right is null.
 *
 * @param morePhotographs whether there are older ones
 */
public record CaseParts(
        List<CaseClockView> clocks,
        List<String> clocksNotLookedAt,
        List<CaseHoldView> holds,
        List<DiseaseSuspicionView> suspicions,
        List<PhotographView> photographs,
        boolean morePhotographs,
        @Nullable List<VisitView> visits,
        @Nullable Growth growth,
        @Nullable Care care,
        @Nullable Release release) {

    /**
     * @param last the latest measurements
     * @param more whether there are earlier ones
     */
    public record Growth(@Nullable WeightPicture picture, List<MeasuredView> last, boolean more, String note) {}

    /**
     * @param moreEntries whether there are older ones
     * @param tests whether the asker may read what was tested when it was placed
     */
    public record Care(
            List<AftercarePlanView> plans,
            List<CareEntryView> entries,
            boolean moreEntries,
            List<PlacementView> placements,
            boolean tests) {
        public @Nullable AftercarePlanView inForce() {
            return plans.stream().filter(AftercarePlanView::inForce).findFirst().orElse(null);
        }
    }

    /**
     * @param moreAssessments whether there are older ones
     * @param sites names of the sites of the assessments
     * @param references whether the asker may read what proves an approval
     */
    public record Release(
            List<SignedCheckView> checks,
            List<AssessmentView> assessments,
            boolean moreAssessments,
            Map<UUID, String> sites,
            List<ReleaseApprovalView> approvals,
            List<NonReleaseView> decisions,
            List<ClutchView> clutches,
            boolean references) {
        public @Nullable String site(@Nullable UUID id) {
            return id == null ? null : sites.get(id);
        }
    }

    /** The last visit that has not ended. */
    public @Nullable VisitView openVisit() {
        return visits == null
                ? null
                : visits.stream()
                        .filter(one -> one.leftAt() == null)
                        .reduce((one, later) -> later)
                        .orElse(null);
    }

    /** The last visit, ended or not. */
    public @Nullable VisitView lastVisit() {
        return visits == null || visits.isEmpty() ? null : visits.get(visits.size() - 1);
    }
}
