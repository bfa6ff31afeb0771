package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.culvert.call.CallEntry;
import org.culvert.dispatch.ClosingService;
import org.culvert.dispatch.DispatchService;
import org.culvert.dispatch.GateKeeper;
import org.culvert.dispatch.GateTest;
import org.jspecify.annotations.Nullable;

/** What the desk did with the incidents of the last weeks: sent somebody through the gate, or ended them by words. */
@ApplicationScoped
class DeskWork {
    private static final Duration STILL_OPEN = Duration.ofHours(36);

    private final DispatchService dispatch;
    private final ClosingService closings;
    private final GateKeeper gate;
    private final CaseWork cases;

    DeskWork(DispatchService dispatch, ClosingService closings, GateKeeper gate, CaseWork cases) {
        this.dispatch = dispatch;
        this.closings = closings;
        this.gate = gate;
        this.cases = cases;
    }

    /** Works on one incident; {@code end} is when the region's records end. */
    void work(DemoRegion region, UUID incidentId, Incident incident, Instant end) {
        Dice dice = new Dice(region.settings().seed(), "desk work on " + incident.number());
        Incident.Call call = incident.calls().get(incident.calls().size() - 1);
        boolean open = call.received().isAfter(end.minus(STILL_OPEN));
        if (open && dice.chance(0.4)) {
            return;
        }
        switch (call.outcome()) {
            case "collected", "deadChecked", "notFound" -> attend(region, incidentId, incident, call, open, dice);
            default -> close(region, incidentId, ClosingService.ClosingOutcome.valueOf(call.outcome()), call);
        }
    }

    private void close(DemoRegion region, UUID incidentId, ClosingService.ClosingOutcome outcome, Incident.Call call) {
        closings.close(
                incidentId,
                new ClosingService.ClosingEntry(
                        outcome,
                        call.recorded().plusSeconds(1200),
                        outcome == ClosingService.ClosingOutcome.passedOn
                                ? region.settings().roadsAuthority()
                                : null,
                        null,
                        switch (outcome) {
                            case leftWell -> "It went off by itself while the caller watched.";
                            case notAttendedUnsafe -> "There is no place to stand off the traffic.";
                            case notAttendedNobody -> "Nobody was free within two hours.";
                            case adviceOnly -> "The caller will look again in the morning and ring.";
                            case passedOn -> "A large animal in a lane.";
                        }));
    }

    private void attend(
            DemoRegion region, UUID incidentId, Incident incident, Incident.Call call, boolean open, Dice dice) {
        Instant at = call.received().plusSeconds(60L * dice.from(3, 20));
        List<GateKeeper.Candidate> able = gate.whoCanGo(incidentId, at).stream()
                .filter(candidate -> candidate.notBecause().isEmpty())
                .toList();
        DispatchService.@Nullable AttendanceEntry entry = able.size() < 2 ? null : who(incidentId, able, at, dice);
        if (entry == null) {
            close(region, incidentId, ClosingService.ClosingOutcome.notAttendedUnsafe, call);
            return;
        }
        UUID attendance = dispatch.send(incidentId, entry).id();
        if (open && dice.chance(0.5)) {
            return;
        }
        dispatch.accept(attendance, new DispatchService.StepEntry(at.plusSeconds(180)));
        dispatch.depart(attendance, new DispatchService.StepEntry(at.plusSeconds(600)));
        Instant there = at.plusSeconds(60L * dice.from(20, 55));
        dispatch.arrive(attendance, new DispatchService.StepEntry(there));
        DispatchService.Outcome outcome = DispatchService.Outcome.valueOf(call.outcome());
        boolean dead = outcome == DispatchService.Outcome.deadChecked;
        boolean pouch = dead && region.settings().group(incident.taxonGroup()).pouch();
        boolean young = pouch
                && call.animals().stream()
                        .anyMatch(animal ->
                                animal.mother() > 0 && animal.vitality().equals("alive"));
        Instant ended = there.plusSeconds(60L * dice.from(10, 30));
        dispatch.end(
                attendance,
                new DispatchService.OutcomeEntry(
                        outcome,
                        ended,
                        null,
                        pouch ? CallEntry.Answer.yes : null,
                        pouch ? young ? 1 : 0 : null,
                        dead ? Boolean.TRUE : null,
                        dead ? dice.chance(0.7) : null));
        if (outcome == DispatchService.Outcome.collected || young) {
            cases.open(region, incidentId, incident, call, attendance, entry.leadMemberId(), there, dice);
        }
    }

    /** One alone where the gate lets one go; else two, with the police told, by a decision of the coordinator. */
    private DispatchService.@Nullable AttendanceEntry who(
            UUID incidentId, List<GateKeeper.Candidate> able, Instant at, Dice dice) {
        UUID lead = able.get(dice.below(Math.min(3, able.size() - 1))).memberId();
        var alone = new DispatchService.AttendanceEntry(lead, null, at, null, null);
        if (dispatch.askGate(incidentId, alone).mayGo()) {
            return alone;
        }
        UUID helper = able.get(Math.min(3, able.size() - 1)).memberId();
        String police = String.format(Locale.ROOT, "P%06d", dice.below(1_000_000));
        var two = new DispatchService.AttendanceEntry(lead, List.of(helper), at, police, null);
        DispatchService.GateView answer = dispatch.askGate(incidentId, two);
        if (answer.mayGo()) {
            return two;
        }
        boolean onlyPolicy = answer.tests().stream()
                .filter(test -> !test.verdict().equals("pass") && !test.kind().equals("advice"))
                .map(GateTest::kind)
                .allMatch("policy"::equals);
        return onlyPolicy
                ? new DispatchService.AttendanceEntry(
                        lead, List.of(helper), at, police, "Police hold the lane; two people with lights.")
                : null;
    }
}
