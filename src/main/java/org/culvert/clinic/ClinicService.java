package org.culvert.clinic;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.call.CallEntry.Answer;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Visits and what comes of them. */
@ApplicationScoped
public class ClinicService {
    public enum Side {
        left,
        right,
        both,
        middle,
        notApplicable
    }

    public enum Confidence {
        low,
        medium,
        high
    }

    public enum FindingKind {
        fracture,
        luxation,
        wound,
        burn,
        abrasion,
        bruise,
        swelling,
        missing,
        deformity,
        bleeding,
        discharge,
        infection,
        parasites,
        foreignBody,
        other
    }

    /**
     * What was found where on the body; a shell is told by the regions of its scutes.
     *
     * @param bodyPart where, in words; the part's name when left out
     * @param side of a part of which there are two; of no other part
     * @param part key of a part of the body
     */
    public record FindingEntry(
            @Nullable @Size(max = 200) String bodyPart,
            Side side,
            @NotBlank @Size(max = 4000) String finding,
            @Nullable @Size(max = 100) String part,
            @Nullable FindingKind kind) {
        /** In words alone. */
        public FindingEntry(String bodyPart, Side side, String finding) {
            this(bodyPart, side, finding, null, null);
        }

        public FindingEntry {
            side = side == null ? Side.notApplicable : side;
        }
    }

    /**
     * What somebody read off a film.
     *
     * @param what such as {@code eggs} or {@code fracture of the pelvis}
     * @param counted how many, where something was counted; compared later, never enforced
     */
    public record ReadingEntry(
            @NotBlank @Size(max = 200) String what,
            @Nullable @Min(0) Integer counted,
            @NotBlank @Size(max = 200) String reader,
            @NotNull Confidence confidence,
            @Nullable Instant at) {}

    public record ProcedureEntry(
            @NotBlank @Size(max = 4000) String procedure,
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @Nullable Instant at) {}

    /**
     * A visit as entered; of a body when its case has ended in death.
     *
     * @param weightGrams in grams
     * @param bodyCondition by eye and hand, from 1 (emaciated) to 5 (fat): common practice, no source
     * @param gravid whether she carries eggs or young
     * @param stabilisedAt when the vet had it stable; some limits of time run from then
     */
    public record VisitEntry(
            @NotNull UUID caseId,
            @NotNull UUID clinicId,
            @Nullable Instant arrivedAt,
            @Nullable @Positive Double weightGrams,
            @Nullable @Min(1) @Max(5) Integer bodyCondition,
            Answer gravid,
            @Nullable @Size(max = 4000) String diagnosis,
            @Nullable @Size(max = 4000) String causeOfDeath,
            @Nullable Instant stabilisedAt,
            List<@Valid FindingEntry> findings,
            List<@Valid ReadingEntry> readings,
            List<@Valid ProcedureEntry> procedures) {
        public VisitEntry {
            gravid = gravid == null ? Answer.unknown : gravid;
            findings = findings == null ? List.of() : List.copyOf(findings);
            readings = readings == null ? List.of() : List.copyOf(readings);
            procedures = procedures == null ? List.of() : List.copyOf(procedures);
        }
    }

    /**
     * The vet's words on leaving.
     *
     * @param limits what must not be, such as no water until a day
     * @param mayHold who may hold it from now on, such as by authorisation or skill
     */
    public record DischargeEntry(
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @NotBlank @Size(max = 20000) String plan,
            @Nullable @Size(max = 4000) String limits,
            @Nullable @Size(max = 2000) String mayHold,
            @Nullable LocalDate reviewOn,
            @Nullable Instant at) {}

    /**
     * What a vet orders, in the vet's own words: none of them is proposed here, and none is checked.
     *
     * @param times when of the day or how often
     * @param from the first day; the day of the order when left out
     * @param until the last day; null: until further word
     * @param controlled whether each use is accounted for, with batch and expiry
     */
    public record DrugOrderEntry(
            @NotBlank @Size(max = 200) String drug,
            @NotBlank @Size(max = 500) String dose,
            @NotBlank @Size(max = 200) String route,
            @NotBlank @Size(max = 500) String times,
            @Nullable LocalDate from,
            @Nullable LocalDate until,
            boolean controlled,
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @Nullable Instant at) {}

    /**
     * A drug was given.
     *
     * @param batch and {@code expiresOn}: needed of a controlled drug
     */
    public record DrugUseEntry(
            @NotBlank @Size(max = 200) String amount,
            @NotBlank @Size(max = 200) String givenBy,
            @Nullable @Size(max = 200) String batch,
            @Nullable LocalDate expiresOn,
            @Nullable Instant at) {}

    @ApplicationScoped
    static class Visits implements PanacheRepositoryBase<Visit, UUID> {}

    @ApplicationScoped
    static class Findings implements PanacheRepositoryBase<Finding, UUID> {}

    @ApplicationScoped
    static class FilmReadings implements PanacheRepositoryBase<FilmReading, UUID> {}

    @ApplicationScoped
    static class Procedures implements PanacheRepositoryBase<Procedure, UUID> {}

    @ApplicationScoped
    static class Discharges implements PanacheRepositoryBase<Discharge, UUID> {}

    private final Visits visits;
    private final Findings findings;
    private final BodyParts parts;
    private final FilmReadings readings;
    private final Procedures procedures;
    private final Discharges discharges;
    private final DrugOrders drugs;
    private final CaseService cases;
    private final RosterService roster;
    private final VisitReader reader;
    private final Clock clock;

    ClinicService(
            Visits visits,
            Findings findings,
            BodyParts parts,
            FilmReadings readings,
            Procedures procedures,
            Discharges discharges,
            DrugOrders drugs,
            CaseService cases,
            RosterService roster,
            VisitReader reader,
            Clock clock) {
        this.visits = visits;
        this.findings = findings;
        this.parts = parts;
        this.readings = readings;
        this.procedures = procedures;
        this.discharges = discharges;
        this.drugs = drugs;
        this.cases = cases;
        this.roster = roster;
        this.reader = reader;
        this.clock = clock;
    }

    /** Keeps a visit; the animal, or the body, is at the clinic from then on. Custody does not change by it. */
    @Transactional
    public VisitView admit(VisitEntry entry) {
        if (!roster.getOrganisation(entry.clinicId()).kind().equals("clinic")) {
            throw InvalidException.of("clinicId", "This is no clinic.", "an organisation of kind clinic");
        }
        CaseView seen = cases.getCase(entry.caseId());
        Instant at = entry.arrivedAt() == null ? clock.instant() : entry.arrivedAt();
        CaseView.FateView fate = seen.fate();
        if (fate != null && seen.body() == null) {
            throw InvalidException.of(
                    "caseId", "That case has ended: " + fate.fate() + ".", "a case in care, or one with a body");
        }
        if (entry.stabilisedAt() != null) {
            Corrections.passed("stabilisedAt", entry.stabilisedAt(), clock);
        }
        Visit visit = Visit.of(entry, seen.body() != null, at);
        visits.persistAndFlush(visit);
        for (int i = 0; i < entry.findings().size(); i++) {
            findings.persist(
                    finding("findings[" + i + "].", visit, entry.findings().get(i)));
        }
        for (ReadingEntry reading : entry.readings()) {
            readings.persist(new FilmReading(visit.id(), reading));
        }
        for (ProcedureEntry procedure : entry.procedures()) {
            procedures.persist(new Procedure(visit.id(), procedure));
        }
        cases.move(entry.caseId(), new CaseEntries.WhereaboutsEntry(entry.clinicId(), null, null, at));
        return view(visit);
    }

    @Transactional
    public VisitView addFinding(UUID visitId, FindingEntry entry) {
        Visit visit = require(visitId);
        findings.persistAndFlush(finding("", visit, entry));
        return view(visit);
    }

    private Finding finding(String at, Visit visit, FindingEntry entry) {
        return new Finding(
                visit.id(), entry, parts.read(at, visit.caseId, entry.bodyPart(), entry.part(), entry.side()));
    }

    @Transactional
    public VisitView addDrugOrder(UUID visitId, DrugOrderEntry entry) {
        Visit visit = require(visitId);
        drugs.order(visitId, entry);
        return view(visit);
    }

    @Transactional
    public VisitView addDrugUse(UUID visitId, UUID orderId, DrugUseEntry entry) {
        Visit visit = require(visitId);
        drugs.give(visitId, orderId, entry);
        return view(visit);
    }

    /** Takes back an order, or one use of it; what was written stays. */
    @Transactional
    public VisitView withdrawDrug(UUID visitId, UUID orderId, @Nullable UUID useId, String reason) {
        Visit visit = require(visitId);
        drugs.withdraw(visitId, orderId, useId, reason);
        return view(visit);
    }

    @Transactional
    public VisitView addReading(UUID visitId, ReadingEntry entry) {
        Visit visit = require(visitId);
        readings.persistAndFlush(new FilmReading(visitId, entry));
        return view(visit);
    }

    @Transactional
    public VisitView addProcedure(UUID visitId, ProcedureEntry entry) {
        Visit visit = require(visitId);
        procedures.persistAndFlush(new Procedure(visitId, entry));
        return view(visit);
    }

    @Transactional
    public VisitView discharge(UUID visitId, DischargeEntry entry) {
        Visit visit = require(visitId);
        Instant at = entry.at() == null ? clock.instant() : entry.at();
        visit.end(at);
        discharges.persistAndFlush(new Discharge(visitId, entry, at));
        return view(visit);
    }

    @Transactional
    public VisitView getVisit(UUID id) {
        return view(require(id));
    }

    @Transactional
    public List<VisitView> listVisits(UUID caseId) {
        return reader.views(visits.list("caseId = ?1 order by happenedAt, id", caseId));
    }

    /** Visits of some cases, the first of each before its later ones. */
    @Transactional
    public List<VisitView> listVisits(Collection<UUID> caseIds) {
        return caseIds.isEmpty()
                ? List.of()
                : reader.views(visits.list("caseId in ?1 order by happenedAt, id", caseIds));
    }

    /** Visits to a clinic that have not ended, the longest first. */
    @Transactional
    public List<VisitView> listOpenVisits(UUID clinicId) {
        return reader.views(visits.list("organisationId = ?1 and leftAt is null order by happenedAt, id", clinicId));
    }

    /** Last visits of animals that a clinic wanted to see again within some days, and that came to no clinic since. */
    @Transactional
    public List<VisitView> listToSeeAgain(UUID clinicId, LocalDate from, LocalDate until) {
        return reader.views(visits.list(
                "from Visit v where v.organisationId = ?1 and v.id in"
                        + " (select d.visitId from Discharge d where d.reviewOn between ?2 and ?3)"
                        + " and not exists (select 1 from Visit w where w.caseId = v.caseId"
                        + " and w.happenedAt > v.happenedAt) order by v.happenedAt, v.id",
                clinicId,
                from,
                until));
    }

    /** Of some cases those that a clinic wanted to see again before a day, and that came to no clinic since their last visit. */
    @Transactional
    public Set<UUID> notSeenAgain(Collection<UUID> caseIds, LocalDate before) {
        return caseIds.isEmpty()
                ? Set.of()
                : visits
                        .list(
                                "from Visit v where v.caseId in ?1 and v.id in"
                                        + " (select d.visitId from Discharge d where d.reviewOn < ?2)"
                                        + " and not exists (select 1 from Visit w where w.caseId = v.caseId"
                                        + " and w.happenedAt > v.happenedAt)",
                                caseIds,
                                before)
                        .stream()
                        .map(visit -> visit.caseId)
                        .collect(Collectors.toSet());
    }

    /** What an animal was last sent on with, and by which clinic. */
    public record SentOn(
            UUID clinicId,
            String plan,
            @Nullable String limits,
            @Nullable LocalDate reviewOn) {}

    /** Of some cases, the discharge of the visit that began last among those that have one. */
    @Transactional
    public Map<UUID, SentOn> lastSentOn(Collection<UUID> caseIds) {
        Map<UUID, Visit> last = new HashMap<>();
        if (!caseIds.isEmpty()) {
            visits.list(
                            "caseId in ?1 and id in (select d.visitId from Discharge d) order by happenedAt desc, id desc",
                            caseIds)
                    .forEach(visit -> last.putIfAbsent(visit.caseId, visit));
        }
        Map<UUID, Discharge> discharges = last.isEmpty()
                ? Map.of()
                : reader.dischargesOf(last.values().stream().map(Visit::id).toList());
        Map<UUID, SentOn> sentOn = new HashMap<>();
        last.forEach((caseId, visit) -> {
            Discharge one = Objects.requireNonNull(discharges.get(visit.id()));
            sentOn.put(caseId, new SentOn(visit.organisationId, one.words, one.limits, one.reviewOn));
        });
        return sentOn;
    }

    private Visit require(UUID id) {
        return visits.findByIdOptional(id).orElseThrow(() -> new NotFoundException("visit", id));
    }

    private VisitView view(Visit visit) {
        return reader.view(visit);
    }

    /**
     * For the rooms above: that a visit is one of a case.
     *
     * @throws InvalidException naming {@code field} where it is not so
     */
    @Transactional
    public void requireOfCase(String field, UUID id, UUID caseId) {
        if (visits.count("id = ?1 and caseId = ?2", id, caseId) == 0) {
            throw InvalidException.of(
                    field, "That is no visit of this animal.", "the identifier of a visit of its case, or nothing");
        }
    }
}
