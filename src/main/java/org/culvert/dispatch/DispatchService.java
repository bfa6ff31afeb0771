package org.culvert.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.call.CallEntry.Answer;
import org.culvert.call.IncidentService;
import org.culvert.call.SaidWords;
import org.culvert.platform.Actor;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RefusedException;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Sends people out, through the gate, and keeps what came of it. */
@ApplicationScoped
public class DispatchService {
    private static final int LONGEST_WORDS = 4000;

    /** How a going-out ended. */
    public enum Outcome {
        collected,
        leftWell,
        deadChecked,
        notFound,
        notAttendedUnsafe,
        notAttendedNobody,
        adviceOnly,
        passedOn
    }

    /**
     * Who is to go.
     *
     * @param at when they would go; now when left out
     * @param overrideReason why a policy of the network is set aside, by whoever asks; protections are never set aside
     */
    public record AttendanceEntry(
            @NotNull UUID leadMemberId,
            @Nullable List<@NotNull UUID> helperMemberIds,
            @Nullable Instant at,
            @Nullable @Size(max = 200) String policeReference,
            @Nullable String overrideReason) {}

    /** A step of an attendance; now when {@code at} is left out. */
    public record StepEntry(@Nullable Instant at) {}

    /**
     * How it ended, and what was done for a carcass so that nobody stops for it again.
     *
     * @param words what was seen at the scene
     */
    public record OutcomeEntry(
            @NotNull Outcome outcome,
            @Nullable Instant at,
            @Nullable @Size(max = 200) String passedOnTo,
            @Nullable Answer pouchChecked,
            @Nullable @Min(0) Integer youngFound,
            @Nullable Boolean carcassSigned,
            @Nullable Boolean carcassMoved,
            @Nullable @Size(max = LONGEST_WORDS) String words) {
        /** Of which nothing is said in words. */
        public OutcomeEntry(
                Outcome outcome,
                @Nullable Instant at,
                @Nullable String passedOnTo,
                @Nullable Answer pouchChecked,
                @Nullable Integer youngFound,
                @Nullable Boolean carcassSigned,
                @Nullable Boolean carcassMoved) {
            this(outcome, at, passedOnTo, pouchChecked, youngFound, carcassSigned, carcassMoved, null);
        }
    }

    /** What can be corrected of an attendance; a field that is left out stays as it is. */
    public record AttendanceCorrection(
            Change<Instant> offeredAt,
            Change<Instant> acceptedAt,
            Change<Instant> departedAt,
            Change<Instant> arrivedAt,
            Change<Instant> endedAt,
            Change<Outcome> outcome,
            Change<String> passedOnTo,
            Change<String> policeReference,
            Change<Answer> pouchChecked,
            Change<Integer> youngFound,
            Change<Boolean> carcassSigned,
            Change<Boolean> carcassMoved,
            Change<String> words,
            @NotBlank @Size(max = 2000) String reason) {}

    /** The gate's answer for some people at some time. */
    public record GateView(
            @Nullable UUID id,
            boolean mayGo,
            List<GateTest> tests,
            @Nullable String overrideReason) {}

    /** @param words what was seen at the scene; null for those who may not read it, and where it was erased */
    public record AttendanceView(
            UUID id,
            UUID incidentId,
            GateView gate,
            UUID leadMemberId,
            List<UUID> helperMemberIds,
            @Nullable String policeReference,
            @Nullable Instant offeredAt,
            @Nullable Instant acceptedAt,
            @Nullable Instant departedAt,
            @Nullable Instant arrivedAt,
            @Nullable Instant endedAt,
            @Nullable String outcome,
            @Nullable String passedOnTo,
            @Nullable String pouchChecked,
            @Nullable Integer youngFound,
            @Nullable Boolean carcassSigned,
            @Nullable Boolean carcassMoved,
            @Nullable String words,
            List<String> sayToRescuer,
            RecordView record) {}

    private final Outings.GateResults gateResults;
    private final Outings.Attendances attendances;
    private final Outings.AttendancePeople people;
    private final GateKeeper gate;
    private final IncidentService incidents;
    private final RosterService roster;
    private final SaidWords said;
    private final Actor actor;
    private final RecordViews records;
    private final Clock clock;

    DispatchService(
            Outings.GateResults gateResults,
            Outings.Attendances attendances,
            Outings.AttendancePeople people,
            GateKeeper gate,
            IncidentService incidents,
            RosterService roster,
            SaidWords said,
            Actor actor,
            RecordViews records,
            Clock clock) {
        this.gateResults = gateResults;
        this.attendances = attendances;
        this.people = people;
        this.gate = gate;
        this.incidents = incidents;
        this.roster = roster;
        this.said = said;
        this.actor = actor;
        this.records = records;
        this.clock = clock;
    }

    /** Asks the gate about some people and keeps nothing. */
    @Transactional
    public GateView askGate(UUID incidentId, AttendanceEntry entry) {
        List<GateTest> tests = gate.test(incidentId, going(entry), at(entry.at()), entry.policeReference());
        return new GateView(null, tests.stream().noneMatch(GateTest::stops), tests, null);
    }

    /**
     * Sends people out.
     *
     * @throws RefusedException when the gate stops them and is not, or cannot be, overridden
     */
    @Transactional
    public AttendanceView send(UUID incidentId, AttendanceEntry entry) {
        Set<UUID> going = going(entry);
        for (UUID member : going) {
            if (!roster.getMember(member).attends()) {
                throw InvalidException.of(
                        member.equals(entry.leadMemberId()) ? "leadMemberId" : "helperMemberIds",
                        "This member does not go out.",
                        "members of /api/incidents/{id}/who-can-go");
            }
        }
        Instant at = at(entry.at());
        List<GateTest> tests = gate.test(incidentId, going, at, entry.policeReference());
        List<GateTest> stopping = tests.stream().filter(GateTest::stops).toList();
        var result = new GateResult(incidentId, tests, at);
        boolean override =
                entry.overrideReason() != null && !entry.overrideReason().isBlank();
        if (!stopping.isEmpty()) {
            if (!override || !stopping.stream().allMatch(GateTest::canBeOverridden)) {
                throw new RefusedException(
                        "The gate stops this going-out.",
                        stopping.stream()
                                .map(test ->
                                        test.test() + " (" + test.kind() + "): " + test.figures() + ". " + test.words())
                                .toList());
            }
            result.override(actor.accountId(), java.util.Objects.requireNonNull(entry.overrideReason()));
        }
        gateResults.persistAndFlush(result);
        var attendance = new Attendance(incidentId, result.id(), entry.policeReference(), at);
        attendances.persistAndFlush(attendance);
        for (UUID member : going) {
            people.persist(new AttendancePerson(attendance.id(), member, member.equals(entry.leadMemberId())));
        }
        people.flush();
        return view(attendance);
    }

    @Transactional
    public AttendanceView accept(UUID id, StepEntry step) {
        Attendance attendance = require(id);
        attendance.requireOpen();
        people.find("attendanceId = ?1 and leads", id).singleResult().accept(at(step.at()));
        people.flush();
        return view(attendance);
    }

    @Transactional
    public AttendanceView depart(UUID id, StepEntry step) {
        Attendance attendance = require(id);
        attendance.depart(at(step.at()));
        attendances.flush();
        return view(attendance);
    }

    @Transactional
    public AttendanceView arrive(UUID id, StepEntry step) {
        Attendance attendance = require(id);
        attendance.arrive(at(step.at()));
        attendances.flush();
        return view(attendance);
    }

    @Transactional
    public AttendanceView end(UUID id, OutcomeEntry entry) {
        requireBody(entry.outcome().name(), entry.passedOnTo());
        Attendance attendance = require(id);
        Instant at = at(entry.at());
        String words = entry.words() == null || entry.words().isBlank() ? null : entry.words();
        attendance.end(at, entry);
        if (words != null) {
            attendance.sceneNotesId = said.keep(words, at);
        }
        attendances.flush();
        return view(attendance);
    }

    @Transactional
    public AttendanceView correct(UUID id, AttendanceCorrection correction) {
        Attendance attendance = require(id);
        attendance.correct(correction, clock);
        if (attendance.outcome != null) {
            requireBody(attendance.outcome, attendance.passedOnTo);
        }
        if (correction.words().isMade()) {
            correctWords(attendance, correction);
        }
        if (correction.acceptedAt().isMade()) {
            people.find("attendanceId = ?1 and leads", id)
                    .singleResult()
                    .correct(Corrections.past("acceptedAt", correction.acceptedAt(), null, clock), correction.reason());
        }
        attendances.flush();
        return view(attendance);
    }

    private void correctWords(Attendance attendance, AttendanceCorrection correction) {
        String given = Corrections.text("words", correction.words(), null, LONGEST_WORDS);
        String words = given == null || given.isBlank() ? null : given;
        if (attendance.sceneNotesId != null) {
            said.correct(attendance.sceneNotesId, words, correction.reason());
        } else if (words != null) {
            Instant seen = attendance.endedAt == null ? clock.instant() : attendance.endedAt;
            attendance.sceneNotesId = said.keep(words, seen);
        }
    }

    @Transactional
    public AttendanceView getAttendance(UUID id) {
        return view(require(id));
    }

    @Transactional
    public List<AttendanceView> listAttendances(UUID incidentId) {
        return attendances.list("incidentId = ?1 order by happenedAt, id", incidentId).stream()
                .map(this::view)
                .toList();
    }

    /** Going-outs that a member leads or helps at and that have not ended, the oldest offer first. */
    @Transactional
    public List<AttendanceView> listOpenOf(UUID memberId) {
        return attendances
                .list(
                        "endedAt is null and id in (select p.attendanceId from AttendancePerson p where p.memberId = ?1)"
                                + " order by happenedAt, id",
                        memberId)
                .stream()
                .map(this::view)
                .toList();
    }

    private Attendance require(UUID id) {
        return attendances.findByIdOptional(id).orElseThrow(() -> new NotFoundException("attendance", id));
    }

    private Instant at(@Nullable Instant given) {
        return given == null ? clock.instant() : given;
    }

    /** What is passed on is passed to somebody, and nothing else is. */
    static void requireBody(String outcome, @Nullable String passedOnTo) {
        if (outcome.equals("passedOn") != (passedOnTo != null)) {
            throw InvalidException.of(
                    "passedOnTo",
                    outcome.equals("passedOn")
                            ? "It was passed on, but not said to whom."
                            : "It names a body although nothing was passed on.",
                    "the body it was passed to, with outcome passedOn only");
        }
    }

    private static Set<UUID> going(AttendanceEntry entry) {
        Set<UUID> going = new LinkedHashSet<>();
        going.add(entry.leadMemberId());
        if (entry.helperMemberIds() != null) {
            going.addAll(entry.helperMemberIds());
        }
        return going;
    }

    private AttendanceView view(Attendance row) {
        List<AttendancePerson> who = people.list("attendanceId = ?1 order by id", row.id());
        AttendancePerson lead = who.stream()
                .filter(person -> person.leads)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("an attendance without a lead"));
        GateResult result = gateResults.findById(row.gateResultId);
        return new AttendanceView(
                row.id(),
                row.incidentId,
                new GateView(result.id(), result.mayGo, result.tests, result.overrideReason),
                lead.memberId,
                who.stream()
                        .filter(person -> !person.leads)
                        .map(person -> person.memberId)
                        .toList(),
                row.policeReference,
                row.happenedAt(),
                lead.acceptedAt,
                row.departedAt,
                row.arrivedAt,
                row.endedAt,
                row.outcome,
                row.passedOnTo,
                row.pouchChecked,
                row.youngFound,
                row.carcassSigned,
                row.carcassMoved,
                row.sceneNotesId == null ? null : said.find(row.sceneNotesId),
                gate.sayToRescuer(row.incidentId),
                records.of(row));
    }
}
