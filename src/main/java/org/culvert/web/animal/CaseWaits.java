package org.culvert.web.animal;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.culvert.animal.CaseView;
import org.culvert.care.clock.ClockViews.CaseClockView;
import org.culvert.care.health.DiseaseSuspicionView;
import org.culvert.care.plan.AftercarePlanView;
import org.culvert.care.plan.AftercarePlanView.TaskState;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.clinic.VisitView;
import org.culvert.release.holds.HoldService.CaseHoldView;
import org.culvert.release.nonrelease.NonReleaseView;
import org.culvert.web.HolderNames;
import org.culvert.web.words.CaseWords;

/** What has to be decided or done next of one case, the most pressing first. */
final class CaseWaits {
    private static final List<String> STATES = List.of("overdue", "warned", "waits", "cantTell");

    private final CaseView told;
    private final CaseParts parts;
    private final HolderNames names;
    private final CaseTongue tongue;
    private final CaseWords words;
    private final LocalDate today;
    private final List<CaseWait> waits = new ArrayList<>();

    private CaseWaits(CaseView told, CaseParts parts, HolderNames names, CaseTongue tongue, Instant now) {
        this.told = told;
        this.parts = parts;
        this.names = names;
        this.tongue = tongue;
        this.words = tongue.words();
        this.today = tongue.dayOf(now);
    }

    static List<CaseWait> of(CaseView told, CaseParts parts, HolderNames names, CaseTongue tongue, Instant now) {
        CaseWaits made = new CaseWaits(told, parts, names, tongue, now);
        made.clocks("overdue");
        made.holds();
        made.suspicions();
        made.custody();
        made.clocks("warned");
        made.care();
        made.clinic();
        made.body();
        made.clocks("cantTell");
        made.referOut();
        made.waits.sort(Comparator.comparingInt(wait -> STATES.indexOf(wait.state())));
        return List.copyOf(made.waits);
    }

    private void clocks(String state) {
        for (CaseClockView clock : parts.clocks()) {
            if (clock.state().equals(state)) {
                Instant due = clock.dueAt();
                waits.add(CaseWait.of(
                                state,
                                state.equals("overdue")
                                        ? words.limitOver(due == null ? "" : tongue.at(due))
                                        : state.equals("warned")
                                                ? words.limitSoon(due == null ? "" : tongue.at(due))
                                                : words.limitNotKnown())
                        .said(clock.words() + " " + clock.said())
                        .source(clock.source()));
            }
        }
    }

    private void holds() {
        for (CaseHoldView hold : parts.holds()) {
            if (hold.clearing() == null) {
                waits.add(CaseWait.of("overdue", words.heldFor(hold.kind(), tongue.at(hold.since())))
                        .said(String.join(" ", hold.advice()))
                        .leadsTo("#holds", words.toHolds()));
            }
        }
    }

    private void suspicions() {
        for (DiseaseSuspicionView one : parts.suspicions()) {
            if (one.clearedAt() == null && one.told() == null) {
                waits.add(CaseWait.of("overdue", words.notTold(one.condition()))
                        .leadsTo("#suspicions", words.toSuspicions()));
            }
        }
    }

    private void custody() {
        CaseView.HandOverView pending = told.pendingHandOver();
        if (pending != null) {
            waits.add(CaseWait.of(
                            "warned",
                            words.offeredTo(
                                    names.of(pending.taker()),
                                    pending.offeredAt() == null ? "" : tongue.at(pending.offeredAt())))
                    .leadsTo("#custody", words.toCustody()));
        }
        boolean nobody = told.fate() == null && told.custodyGaps().stream().anyMatch(gap -> gap.to() == null);
        if (nobody || (told.fate() == null && told.custody().isEmpty())) {
            waits.add(CaseWait.of("overdue", words.nobodyAnswers()).leadsTo("#custody", words.toCustody()));
        }
    }

    private void care() {
        AftercarePlanView plan = parts.care() == null ? null : parts.care().inForce();
        if (plan == null) {
            VisitView last = parts.lastVisit();
            if (told.fate() == null && parts.care() != null && last != null && last.discharge() != null) {
                waits.add(CaseWait.of("waits", words.noPlanAfterDischarge()).leadsTo("#plan", words.toPlan()));
            }
            return;
        }
        for (TaskView task : plan.tasks()) {
            if (task.state() == TaskState.overdue) {
                waits.add(CaseWait.of(
                                "warned",
                                words.taskMissed(task.words(), tongue.day(task.lastDate()), task.missesInARow()))
                        .leadsTo("#plan", words.toPlan()));
            }
        }
    }

    private void clinic() {
        VisitView open = parts.openVisit();
        if (open != null) {
            waits.add(CaseWait.of(
                            "waits",
                            words.atClinicSince(names.organisation(open.clinicId()), tongue.at(open.arrivedAt())))
                    .leadsTo("#clinic", words.toClinic()));
        }
        VisitView last = parts.lastVisit();
        LocalDate review = last == null || last.discharge() == null
                ? null
                : last.discharge().reviewOn();
        if (told.fate() == null && review != null && !review.isAfter(today.plusDays(1))) {
            waits.add(CaseWait.of(
                            review.isBefore(today) ? "overdue" : "warned",
                            review.isBefore(today)
                                    ? words.wasToBeSeen(tongue.day(review))
                                    : words.seeAgain(tongue.day(review)))
                    .leadsTo("#clinic", words.toClinic()));
        }
        if (parts.release() != null && told.fate() == null) {
            for (NonReleaseView one : parts.release().decisions()) {
                LocalDate due = one.reviewDueOn();
                if (one.withdrawnAt() == null && due != null && !due.isAfter(today)) {
                    waits.add(CaseWait.of("overdue", words.welfareReview(tongue.day(due))));
                }
            }
        }
    }

    private void body() {
        CaseView.BodyView body = told.body();
        if (body != null && body.disposal() == null) {
            waits.add(CaseWait.of(
                            "waits",
                            words.bodyWaits(names.of(body.holder()))
                                    + (body.barbiturate().equals("no") ? "" : " " + words.barbiturateMayBe()))
                    .leadsTo("#end", words.toEnd()));
        }
    }

    private void referOut() {
        told.referOut()
                .forEach(one ->
                        waits.add(CaseWait.of("warned", words.referOut()).said(one.words() + " " + one.referTo())));
    }
}
