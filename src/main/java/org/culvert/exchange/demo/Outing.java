package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.call.CallEntry;
import org.culvert.dispatch.DispatchService;
import org.culvert.dispatch.GateKeeper;
import org.culvert.roster.Holder;

/** Goings-out of the demo's stories. */
@ApplicationScoped
class Outing {
    private final DispatchService dispatch;
    private final GateKeeper gate;
    private final CaseService cases;

    Outing(DispatchService dispatch, GateKeeper gate, CaseService cases) {
        this.dispatch = dispatch;
        this.gate = gate;
        this.cases = cases;
    }

    /** Who went, and when they were there. */
    record Done(UUID attendanceId, UUID leadId, Instant there) {}

    /** Sends two people and ends the going-out; the answer is the lead and when they were there. */
    Done goOut(UUID incidentId, Instant start, DispatchService.Outcome outcome, int youngFound) {
        List<UUID> able = gate.whoCanGo(incidentId, start).stream()
                .filter(candidate -> candidate.notBecause().isEmpty())
                .map(GateKeeper.Candidate::memberId)
                .limit(2)
                .toList();
        UUID attendance = dispatch.send(
                        incidentId,
                        new DispatchService.AttendanceEntry(
                                able.get(0),
                                List.of(able.get(1)),
                                start,
                                "P000731",
                                "Police hold the lane; two people with lights."))
                .id();
        dispatch.accept(attendance, new DispatchService.StepEntry(start.plusSeconds(120)));
        dispatch.depart(attendance, new DispatchService.StepEntry(start.plusSeconds(480)));
        Instant there = start.plusSeconds(2100);
        dispatch.arrive(attendance, new DispatchService.StepEntry(there));
        boolean dead = outcome == DispatchService.Outcome.deadChecked;
        dispatch.end(
                attendance,
                new DispatchService.OutcomeEntry(
                        outcome,
                        there.plusSeconds(1200),
                        null,
                        dead ? CallEntry.Answer.yes : null,
                        dead ? youngFound : null,
                        dead ? Boolean.TRUE : null,
                        dead ? Boolean.TRUE : null));
        return new Done(attendance, able.get(0), there);
    }

    UUID open(UUID incidentId, Done outing, CaseEntries.AnimalEntry animal) {
        return cases.open(new CaseEntries.CaseEntry(
                        null,
                        animal,
                        incidentId,
                        outing.attendanceId(),
                        outing.there(),
                        false,
                        false,
                        Holder.member(outing.leadId())))
                .id();
    }
}
