package org.culvert.care.plan;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.care.template.PlanStepEntry;
import org.culvert.care.template.TemplateService;
import org.culvert.clinic.ClinicService;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Corrections;

/** Makes, changes and ends the aftercare plans of cases. */
@ApplicationScoped
public class PlanService {
    private static final int DAYS_AHEAD = 366;

    private final PlanRepositories.Plans plans;
    private final PlanRepositories.Phases phases;
    private final PlanReader reader;
    private final TemplateService templates;
    private final CaseService cases;
    private final ClinicService clinic;
    private final RegionService region;
    private final Clock clock;

    PlanService(
            PlanRepositories.Plans plans,
            PlanRepositories.Phases phases,
            PlanReader reader,
            TemplateService templates,
            CaseService cases,
            ClinicService clinic,
            RegionService region,
            Clock clock) {
        this.plans = plans;
        this.phases = phases;
        this.reader = reader;
        this.templates = templates;
        this.cases = cases;
        this.clinic = clinic;
        this.region = region;
        this.clock = clock;
    }

    /**
     * Makes the plan of a case, of a template that a vet has adopted or of a vet's own steps.
     *
     * @throws ConflictException when the case has ended
     * @throws org.culvert.platform.RefusedException when the template is inert
     */
    @Transactional
    public AftercarePlanView make(UUID caseId, PlanEntries.PlanEntry entry) {
        cases.hold(List.of(caseId));
        CaseView told = cases.getCase(caseId);
        if (told.fate() != null) {
            throw new ConflictException("Case " + told.number() + " has ended; nothing is planned for it any more.");
        }
        Instant at = Corrections.passed("at", entry.at(), clock);
        if (at.isBefore(told.foundAt())) {
            throw InvalidException.of(
                    "at", "That was before the animal was found.", "an instant after " + told.foundAt());
        }
        requireDischargeOf(caseId, entry);
        UUID adoptionId = null;
        UUID templateId = entry.templateId();
        List<PlanStepEntry> steps = entry.steps();
        if ((templateId == null) == (steps == null)) {
            throw InvalidException.of(
                    "steps", "The steps are a template's or the vet's own.", "either templateId or steps");
        }
        if (templateId != null) {
            TemplateService.Adopted adopted = templates.requireAdopted(templateId);
            if (adopted.taxonGroup() != null
                    && !adopted.taxonGroup().equals(told.animal().taxonGroup())) {
                throw InvalidException.of(
                        "templateId",
                        "That template is for another group: " + adopted.taxonGroup() + ".",
                        "a template for " + told.animal().taxonGroup() + ", or for all");
            }
            adoptionId = adopted.adoptionId();
            steps = adopted.steps();
        }
        PlanStepEntry.read("steps", Objects.requireNonNull(steps));
        LocalDate dayZero = entry.dayZero() == null ? day(at) : entry.dayZero();
        LocalDate first = day(told.foundAt());
        LocalDate last = day(clock.instant()).plusDays(DAYS_AHEAD);
        if (dayZero.isBefore(first) || dayZero.isAfter(last)) {
            throw InvalidException.of(
                    "dayZero", "Nothing can be planned from that day on.", "a day from " + first + " to " + last);
        }
        var plan = new AftercarePlan(caseId, entry, adoptionId, dayZero, at);
        plans.persistAndFlush(plan);
        phases.persistAndFlush(new PlanPhase(plan, steps));
        return reader.view(plan);
    }

    private void requireDischargeOf(UUID caseId, PlanEntries.PlanEntry entry) {
        UUID visitId = entry.visitId();
        if (visitId != null
                && clinic.listVisits(caseId).stream()
                        .noneMatch(visit -> visit.id().equals(visitId) && visit.discharge() != null)) {
            throw InvalidException.of(
                    "visitId",
                    "That is no visit of this animal that ended with a discharge.",
                    "a visit of it with its discharge, or nothing");
        }
    }

    /** New steps from a day on, which is never before the change was decided: what was done stays done. */
    @Transactional
    public AftercarePlanView change(UUID id, PlanEntries.ChangeEntry entry) {
        AftercarePlan plan = require(id);
        cases.hold(List.of(plan.caseId));
        plan.requireInForce();
        PlanTold told = reader.tell(plan);
        if (!told.isInForce()) {
            throw new ConflictException("Case " + told.seen.number() + " has ended, and its plan with it.");
        }
        Instant at = Corrections.passed("at", entry.at(), clock);
        if (at.isBefore(plan.madeAt())) {
            throw InvalidException.of("at", "The plan was made only later.", "an instant after " + plan.madeAt());
        }
        LocalDate decided = day(at);
        LocalDate from =
                entry.from() == null ? (decided.isBefore(plan.dayZero) ? plan.dayZero : decided) : entry.from();
        long fromDay = ChronoUnit.DAYS.between(plan.dayZero, from);
        if (from.isBefore(decided) || fromDay < 0 || fromDay > PlanStepEntry.LAST_DAY) {
            LocalDate earliest = decided.isBefore(plan.dayZero) ? plan.dayZero : decided;
            throw InvalidException.of(
                    "from",
                    "A change holds from the day on which it was decided, or later in the plan.",
                    "a day from " + earliest + " to " + plan.dayZero.plusDays(PlanStepEntry.LAST_DAY));
        }
        PlanStepEntry.read("steps", entry.steps());
        phases.persistAndFlush(new PlanPhase(id, told.phases.size(), (int) fromDay, entry, at));
        return reader.view(plan);
    }

    @Transactional
    public AftercarePlanView end(UUID id, PlanEntries.PlanEndingEntry entry) {
        AftercarePlan plan = require(id);
        Instant at = Corrections.passed("at", entry.at(), clock);
        if (at.isBefore(plan.madeAt())) {
            throw InvalidException.of("at", "The plan was made only later.", "an instant after " + plan.madeAt());
        }
        plan.end(entry, at);
        plans.flush();
        return reader.view(plan);
    }

    @Transactional
    public AftercarePlanView getPlan(UUID id) {
        return reader.view(require(id));
    }

    /** Plans of a case, newest first. */
    @Transactional
    public List<AftercarePlanView> listPlans(UUID caseId) {
        cases.getCase(caseId);
        return reader.views(plans.list("caseId = ?1 order by id desc", caseId));
    }

    private LocalDate day(Instant instant) {
        return instant.atZone(region.zone()).toLocalDate();
    }

    private AftercarePlan require(UUID id) {
        return plans.findByIdOptional(id).orElseThrow(() -> new NotFoundException("aftercare plan", id));
    }
}
