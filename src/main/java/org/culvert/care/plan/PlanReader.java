package org.culvert.care.plan;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.care.plan.AftercarePlanView.PhaseView;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.care.plan.PlanTold.TaskTold;
import org.culvert.care.schedule.Measure;
import org.culvert.care.schedule.Step;
import org.culvert.care.template.TemplateService;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Shows plans and entries, some of them in as many questions as one. */
@ApplicationScoped
class PlanReader {
    private static final String NOTE = "These are the vet's words for this animal and no other. If it is worse than"
            + " yesterday, ring the clinic. Check your local code and your licensed vet.";

    private final PlanRepositories.Plans plans;
    private final PlanRepositories.Phases phases;
    private final PlanRepositories.Entries entries;
    private final CaseService cases;
    private final TemplateService templates;
    private final RegionService region;
    private final RecordViews records;
    private final Clock clock;

    PlanReader(
            PlanRepositories.Plans plans,
            PlanRepositories.Phases phases,
            PlanRepositories.Entries entries,
            CaseService cases,
            TemplateService templates,
            RegionService region,
            RecordViews records,
            Clock clock) {
        this.plans = plans;
        this.phases = phases;
        this.entries = entries;
        this.cases = cases;
        this.templates = templates;
        this.region = region;
        this.records = records;
        this.clock = clock;
    }

    PlanTold tell(AftercarePlan plan) {
        return tell(List.of(plan)).get(0);
    }

    /** Plans with all that their tasks are derived from, in the order in which they are given. */
    List<PlanTold> tell(List<AftercarePlan> rows) {
        if (rows.isEmpty()) {
            return List.of();
        }
        List<UUID> caseIds = rows.stream().map(row -> row.caseId).distinct().toList();
        Map<UUID, CaseView> seen = cases.casesById(caseIds);
        Map<UUID, UUID> caseOf = plans.list("caseId in ?1", caseIds).stream()
                .collect(Collectors.toMap(AftercarePlan::id, row -> row.caseId));
        Map<UUID, List<PlanPhase>> phasesOf = phases.list("planId in ?1 order by place", caseOf.keySet()).stream()
                .collect(Collectors.groupingBy(phase -> Objects.requireNonNull(caseOf.get(phase.planId))));
        Map<UUID, List<CareEntry>> entriesOf = standing(caseIds);
        ZoneId zone = region.zone();
        Instant now = clock.instant();
        return rows.stream()
                .map(row -> new PlanTold(
                        row,
                        phases(phasesOf.getOrDefault(row.caseId, List.of()), row, true),
                        phases(phasesOf.getOrDefault(row.caseId, List.of()), row, false),
                        entriesOf.getOrDefault(row.caseId, List.of()),
                        Objects.requireNonNull(seen.get(row.caseId), "a plan has its case"),
                        zone,
                        now))
                .toList();
    }

    private static List<PlanPhase> phases(List<PlanPhase> ofCase, AftercarePlan plan, boolean own) {
        return ofCase.stream()
                .filter(phase -> own == phase.planId.equals(plan.id()))
                .toList();
    }

    /** Plans of some cases that no vet has ended; the fate of a case may have. */
    List<PlanTold> inForce(Collection<UUID> caseIds) {
        return caseIds.isEmpty()
                ? List.of()
                : tell(plans.list("caseId in ?1 and endedAt is null order by id", caseIds)).stream()
                        .filter(PlanTold::isInForce)
                        .toList();
    }

    List<PlanTold> allInForce() {
        return tell(plans.list("endedAt is null order by id")).stream()
                .filter(PlanTold::isInForce)
                .toList();
    }

    /** All plans of some cases, those that have ended among them. */
    List<PlanTold> ofCases(Collection<UUID> caseIds) {
        return caseIds.isEmpty() ? List.of() : tell(plans.list("caseId in ?1 order by id", caseIds));
    }

    private Map<UUID, List<CareEntry>> standing(Collection<UUID> caseIds) {
        return entries.list("caseId in ?1 and withdrawnAt is null order by happenedAt, id", caseIds).stream()
                .collect(Collectors.groupingBy(entry -> entry.caseId));
    }

    List<AftercarePlanView> views(List<AftercarePlan> rows) {
        List<PlanTold> told = tell(rows);
        records.lookUp(rows);
        told.forEach(plan -> records.lookUp(plan.phases));
        Map<UUID, TemplateService.Origin> origins = templates.originsByAdoption(rows.stream()
                .map(row -> row.adoptionId)
                .filter(Objects::nonNull)
                .distinct()
                .toList());
        return told.stream()
                .map(plan -> view(plan, plan.plan.adoptionId == null ? null : origins.get(plan.plan.adoptionId)))
                .toList();
    }

    AftercarePlanView view(AftercarePlan row) {
        return views(List.of(row)).get(0);
    }

    private AftercarePlanView view(PlanTold told, TemplateService.@Nullable Origin origin) {
        AftercarePlan row = told.plan;
        return new AftercarePlanView(
                row.id(),
                row.caseId,
                told.seen.number(),
                row.visitId,
                origin == null ? null : origin.templateId(),
                origin == null ? null : origin.templateRevision(),
                row.vetName,
                row.vetRegistration,
                row.dayZero,
                row.words,
                told.isInForce(),
                told.endedAt(),
                row.ending(),
                told.phases.stream()
                        .map(phase -> new PhaseView(
                                phase.id(),
                                phase.fromDay,
                                told.dateOf(phase.fromDay),
                                phase.steps,
                                phase.vetName,
                                phase.vetRegistration,
                                phase.reason,
                                records.of(phase)))
                        .toList(),
                told.tasks().stream().map(task -> view(told, task)).toList(),
                told.weightTrend(),
                NOTE,
                records.of(row));
    }

    TaskView view(PlanTold told, TaskTold task) {
        Step step = task.task().step();
        CareEntry entry = task.entry();
        return new TaskView(
                step.key(),
                task.task().day(),
                step.words(),
                step.measure(),
                step.measure().unit(),
                step.low(),
                step.high(),
                task.task().date(),
                task.task().lastDate(),
                task.task().dueFrom(),
                task.task().dueUntil(),
                task.state(),
                task.missesInARow(),
                entry == null ? null : entry.id(),
                entry == null ? List.of() : told.flags(entry));
    }

    /** Entries, in the order in which they are given. */
    List<CareEntryView> entryViews(List<CareEntry> rows) {
        records.lookUp(rows);
        List<PlanTold> told =
                ofCases(rows.stream().map(row -> row.caseId).distinct().toList());
        Map<UUID, PlanTold> byId = told.stream().collect(Collectors.toMap(plan -> plan.plan.id(), Function.identity()));
        Map<UUID, List<PlanTold>> ofCase = told.stream().collect(Collectors.groupingBy(plan -> plan.plan.caseId));
        return rows.stream()
                .map(row -> view(row, byId.get(row.planId), planOn(row, ofCase.getOrDefault(row.caseId, List.of()))))
                .toList();
    }

    CareEntryView view(CareEntry row) {
        return entryViews(List.of(row)).get(0);
    }

    /** The plan that looks at an entry: its own, or the one that held when it was made. */
    private static Optional<PlanTold> planOn(CareEntry row, Collection<PlanTold> plans) {
        return plans.stream()
                .filter(told -> row.planId == null
                        ? !row.at().isBefore(told.plan.madeAt())
                                && (told.endedAt() == null || row.at().isBefore(told.endedAt()))
                        : told.plan.id().equals(row.planId))
                .findFirst();
    }

    private CareEntryView view(CareEntry row, @Nullable PlanTold own, Optional<PlanTold> looking) {
        Optional<Step> step = own == null ? Optional.empty() : own.stepOf(row);
        return new CareEntryView(
                row.id(),
                row.caseId,
                row.kind(),
                row.planId,
                row.stepKey,
                row.day,
                step.map(Step::words).orElse(null),
                own == null || row.day == null ? null : own.dateOf(row.day),
                row.figure,
                row.measure == null ? null : Measure.valueOf(row.measure).unit(),
                row.answer,
                row.words,
                row.skippedBecause,
                row.photographId,
                row.at(),
                own != null && own.isDoneLate(row),
                looking.map(plan -> plan.flags(row)).orElse(List.of()),
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }
}
