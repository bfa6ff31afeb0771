package org.culvert.web.desk;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.call.CallReceipt;
import org.culvert.call.CallView;
import org.culvert.call.IncidentView;
import org.culvert.dispatch.ClosingService;
import org.culvert.dispatch.ClosingService.ClosingView;
import org.culvert.dispatch.DispatchService;
import org.culvert.dispatch.DispatchService.AttendanceView;
import org.culvert.dispatch.DispatchService.GateView;
import org.culvert.dispatch.OpenIncidentService.OpenIncidentView;
import org.culvert.web.kept.KeptWays;
import org.jspecify.annotations.Nullable;

/**
 * An incident as the desk sees it.
 *
 * @param call the one that the page is about: whatever the caller tells further goes there
 * @param typed it as it would be typed
 * @param others the other calls about the incident
 * @param say sentences for the caller, with whether they were said
 * @param who members who attend: those who can go first, then the nearest
 * @param furtherAway the rest of them
 * @param around what else is open near it, nearest first
 * @param ways to the forms that put what is recorded right
 * @param gate the gate's answer about those who were asked about; null where nobody was
 */
public record DeskIncidentPage(
        IncidentView incident,
        CallView call,
        DeskTold typed,
        List<CallView> others,
        @Nullable DeskWhere where,
        CallReceipt receipt,
        List<Sentence> say,
        List<Goer> who,
        List<Goer> furtherAway,
        int canGo,
        @Nullable GateView gate,
        String policeReference,
        String overrideReason,
        List<Outing> outings,
        List<Around> around,
        List<ClosingView> closings,
        KeptWays ways,
        Instant now) {
    /** How a going-out may have ended. */
    public List<String> outcomes() {
        return Stream.of(DispatchService.Outcome.values()).map(Enum::name).toList();
    }

    /** How an incident may end to which nobody goes. */
    public List<String> closingOutcomes() {
        return Stream.of(ClosingService.ClosingOutcome.values()).map(Enum::name).toList();
    }

    /** A sentence to say; {@code toldAt} is null until it was. */
    public record Sentence(String words, @Nullable Instant toldAt) {}

    /** Somebody who may go, or why not. */
    public record Goer(
            UUID memberId,
            String callSign,
            @Nullable String kilometres,
            List<String> notBecause,
            boolean leads,
            boolean helps) {}

    /** An open incident, and how far away it is. */
    public record Around(OpenIncidentView open, String kilometres) {}

    /** When a step was taken: {@code asked}, {@code accepted}, {@code departed}, {@code arrived} or {@code ended}. */
    public record Step(String name, Instant at) {}

    /** A going-out with names. */
    public record Outing(AttendanceView attendance, String lead, List<String> helpers, String next) {
        /** Those that were taken, in order. */
        public List<Step> steps() {
            List<Step> steps = new ArrayList<>();
            add(steps, "asked", attendance.offeredAt());
            add(steps, "accepted", attendance.acceptedAt());
            add(steps, "departed", attendance.departedAt());
            add(steps, "arrived", attendance.arrivedAt());
            add(steps, "ended", attendance.endedAt());
            return steps;
        }

        /** When the last of them was; null where none was. */
        public @Nullable Instant lastAt() {
            List<Step> all = steps();
            return all.isEmpty() ? null : all.get(all.size() - 1).at();
        }

        private static void add(List<Step> steps, String name, @Nullable Instant at) {
            if (at != null) {
                steps.add(new Step(name, at));
            }
        }
    }
}
