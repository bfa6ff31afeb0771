package org.culvert.web.animal;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseView;
import org.culvert.care.clock.ClockService;
import org.culvert.care.clock.ClockViews.CaseClockView;
import org.culvert.care.plan.CarePlans;
import org.culvert.clinic.ClinicService;
import org.culvert.platform.RegionService;
import org.culvert.platform.sight.Sight;
import org.culvert.release.holds.HoldService;
import org.culvert.release.rules.Hold;

/** What is most pressing of each of some cases. */
@ApplicationScoped
class CaseNeeds {
    private static final int MOST_CLOCKS = 500;

    /** The most pressing first. */
    enum Need {
        limitOver,
        held,
        nobodyAnswers,
        offered,
        limitSoon,
        taskMissed,
        seeAgainOver,
        inCare
    }

    private final ClockService clocks;
    private final HoldService holds;
    private final CarePlans plans;
    private final ClinicService clinic;
    private final RegionService region;
    private final Clock clock;
    private final Sight sight;

    CaseNeeds(
            ClockService clocks,
            HoldService holds,
            CarePlans plans,
            ClinicService clinic,
            RegionService region,
            Clock clock,
            Sight sight) {
        this.clocks = clocks;
        this.holds = holds;
        this.plans = plans;
        this.clinic = clinic;
        this.region = region;
        this.clock = clock;
        this.sight = sight;
    }

    /** Of open cases, by case. */
    Map<UUID, Need> of(List<CaseView> open) {
        Set<UUID> ids = open.stream().map(CaseView::id).collect(Collectors.toSet());
        Map<UUID, Need> needs = new HashMap<>();
        if (ids.isEmpty()) {
            return needs;
        }
        if (sight.sees("visit.discharge", "reviewOn")) {
            clinic.notSeenAgain(ids, clock.instant().atZone(region.zone()).toLocalDate())
                    .forEach(id -> needs.put(id, Need.seeAgainOver));
        }
        if (sight.sees("aftercare-plan", "tasks")) {
            plans.listMissed().stream()
                    .map(one -> one.seen().id())
                    .filter(ids::contains)
                    .forEach(id -> needs.put(id, Need.taskMissed));
        }
        List<CaseClockView> running = clocks.listClocks(null, MOST_CLOCKS, null).items();
        press(needs, ids, running, "warned", Need.limitSoon);
        for (CaseView one : open) {
            if (one.pendingHandOver() != null) {
                needs.put(one.id(), Need.offered);
            }
            if (one.custody().isEmpty() || one.custodyGaps().stream().anyMatch(gap -> gap.to() == null)) {
                needs.put(one.id(), Need.nobodyAnswers);
            }
        }
        for (Hold.Kind kind : Hold.Kind.values()) {
            holds.heldAmong(ids, kind).forEach(id -> needs.put(id, Need.held));
        }
        press(needs, ids, running, "overdue", Need.limitOver);
        ids.forEach(id -> needs.putIfAbsent(id, Need.inCare));
        return needs;
    }

    private static void press(
            Map<UUID, Need> needs, Collection<UUID> ids, List<CaseClockView> clocks, String state, Need need) {
        clocks.stream()
                .filter(clock -> clock.state().equals(state))
                .map(CaseClockView::caseId)
                .filter(ids::contains)
                .forEach(id -> needs.put(id, need));
    }
}
