package org.culvert.web.hand;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CustodyService;
import org.culvert.animal.photograph.PhotographService;
import org.culvert.animal.photograph.PhotographService.SentPhotograph;
import org.culvert.care.plan.CareEntryService;
import org.culvert.care.plan.PlanEntries;
import org.culvert.dispatch.DispatchService;
import org.culvert.dispatch.DispatchService.AttendanceView;
import org.culvert.dispatch.DispatchService.StepEntry;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.sight.Sight;
import org.jspecify.annotations.Nullable;

/** Carries out what a form of these pages says, as the API would: of records that the asker sees, and of no step twice. */
@ApplicationScoped
class HandActs {
    private final DispatchService dispatch;
    private final CustodyService custody;
    private final CareEntryService entries;
    private final PhotographService photographs;
    private final Sight sight;

    HandActs(
            DispatchService dispatch,
            CustodyService custody,
            CareEntryService entries,
            PhotographService photographs,
            Sight sight) {
        this.dispatch = dispatch;
        this.custody = custody;
        this.entries = entries;
        this.photographs = photographs;
        this.sight = sight;
    }

    @Transactional
    void enter(UUID caseId, PlanEntries.CareEntryEntry entry) {
        sight.requireSeen("case", caseId);
        entries.add(caseId, entry);
    }

    /** @throws ConflictException when the step was entered before */
    @Transactional
    void step(UUID attendanceId, @Nullable String act) {
        sight.requireSeen("attendance", attendanceId);
        AttendanceView told = dispatch.getAttendance(attendanceId);
        StepEntry now = new StepEntry(null);
        switch (act == null ? "" : act) {
            case "accept" -> {
                requireNew(told.acceptedAt());
                dispatch.accept(attendanceId, now);
            }
            case "depart" -> {
                requireNew(told.departedAt());
                dispatch.depart(attendanceId, now);
            }
            case "arrive" -> {
                requireNew(told.arrivedAt());
                dispatch.arrive(attendanceId, now);
            }
            default -> throw InvalidException.of("act", "It is not said which step.", "accept, depart or arrive");
        }
    }

    private static void requireNew(@Nullable Instant before) {
        if (before != null) {
            throw new ConflictException("Somebody entered that step before. Look whether it is right.");
        }
    }

    @Transactional
    void end(UUID attendanceId, DispatchService.OutcomeEntry entry) {
        sight.requireSeen("attendance", attendanceId);
        dispatch.end(attendanceId, entry);
    }

    @Transactional
    void take(UUID handOverId) {
        sight.requireSeen("case.hand-over", handOverId);
        custody.accept(handOverId, new CaseEntries.AcceptanceEntry(null));
    }

    @Transactional
    void refuse(UUID handOverId, String reason) {
        sight.requireSeen("case.hand-over", handOverId);
        custody.refuse(handOverId, new CaseEntries.RefusalEntry(null, reason));
    }

    @Transactional
    void offer(UUID caseId, CaseEntries.HandOverEntry entry) {
        sight.requireSeen("case", caseId);
        custody.offer(caseId, entry);
    }

    @Transactional
    void addToIncident(UUID attendanceId, SentPhotograph picture) {
        sight.requireSeen("attendance", attendanceId);
        photographs.addToIncident(dispatch.getAttendance(attendanceId).incidentId(), picture);
    }

    @Transactional
    void addToCase(UUID caseId, SentPhotograph picture) {
        sight.requireSeen("case", caseId);
        photographs.addToCase(caseId, picture);
    }
}
