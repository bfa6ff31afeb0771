package org.culvert.care.plan;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.CustodyService;
import org.culvert.animal.photograph.PhotographService;
import org.culvert.care.plan.PlanEntries.CareKind;
import org.culvert.care.schedule.Measure;
import org.culvert.care.schedule.Step;
import org.culvert.care.schedule.Task;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.SignInException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** Keeps what was done of plans, and what was seen beside them. */
@ApplicationScoped
public class CareEntryService {
    private static final double MOST = 1_000_000;

    private final PlanRepositories.Plans plans;
    private final PlanRepositories.Entries entries;
    private final PlanReader reader;
    private final CaseService cases;
    private final CustodyService custody;
    private final PhotographService photographs;
    private final RegionService region;
    private final Sight sight;
    private final Clock clock;

    CareEntryService(
            PlanRepositories.Plans plans,
            PlanRepositories.Entries entries,
            PlanReader reader,
            CaseService cases,
            CustodyService custody,
            PhotographService photographs,
            RegionService region,
            Sight sight,
            Clock clock) {
        this.plans = plans;
        this.entries = entries;
        this.reader = reader;
        this.cases = cases;
        this.custody = custody;
        this.photographs = photographs;
        this.region = region;
        this.sight = sight;
        this.clock = clock;
    }

    /**
     * Keeps an entry.
     *
     * @throws SignInException when a carer enters it of an animal that somebody else held then
     */
    @Transactional
    public CareEntryView add(UUID caseId, PlanEntries.CareEntryEntry entry) {
        CaseView told = cases.getCase(caseId);
        Instant at = Corrections.passed("at", entry.at(), clock);
        requireInCare(told, at);
        requireHolder(caseId, at);
        if (entry.photographId() != null) {
            photographs.requireOfCase("photographId", entry.photographId(), caseId);
        }
        CareKind kind = entry.kind() == null ? CareKind.task : entry.kind();
        CareEntry row = kind == CareKind.task ? ofTask(told, entry, at) : beside(caseId, entry, kind, at);
        entries.persistAndFlush(row);
        return reader.view(row);
    }

    private static void requireInCare(CaseView told, Instant at) {
        if (at.isBefore(told.foundAt())) {
            throw InvalidException.of(
                    "at", "That was before the animal was found.", "an instant after " + told.foundAt());
        }
        CaseView.FateView fate = told.fate();
        if (fate != null && fate.at() != null && at.isAfter(fate.at())) {
            throw InvalidException.of("at", "That was after the case had ended.", "an instant up to " + fate.at());
        }
    }

    /** A carer enters what happened while the animal was with them, or with their organisation. */
    private void requireHolder(UUID caseId, Instant at) {
        Viewer asker = sight.viewer();
        if (asker.accountId() == null || asker.hasAny(Role.COORDINATOR, Role.CLINIC)) {
            return;
        }
        Holder holder = custody.findHolder(caseId, at).orElse(null);
        boolean theirs = holder != null
                && ((holder.memberId() != null && holder.memberId().equals(asker.memberId()))
                        || (holder.organisationId() != null
                                && holder.organisationId().equals(asker.organisationId())));
        if (!theirs) {
            throw SignInException.notTheirs(
                    "At that time somebody else had the animal: whoever has it enters what is done,"
                            + " or the clinic or a coordinator does.");
        }
    }

    private CareEntry ofTask(CaseView told, PlanEntries.CareEntryEntry entry, Instant at) {
        AftercarePlan plan = plans.find("caseId = ?1 order by id desc", told.id())
                .firstResultOptional()
                .orElseThrow(() -> InvalidException.of(
                        "kind",
                        "Case " + told.number() + " has no plan, and so no tasks.",
                        "weight, food, wound, photograph or note"));
        if (entry.stepKey() == null || entry.day() == null) {
            throw InvalidException.of(
                    entry.stepKey() == null ? "stepKey" : "day",
                    "It is not said which task this is.",
                    "stepKey and day of a task of the plan");
        }
        PlanTold planned = reader.tell(plan);
        Task task = planned.findTask(entry.stepKey(), entry.day())
                .filter(asked -> planned.isAskedFor(asked))
                .orElseThrow(() -> InvalidException.of(
                        "stepKey",
                        "The plan asks for no " + entry.stepKey() + " on day " + entry.day() + ".",
                        "stepKey and day of a task of the plan"));
        requireNotEarly(task, at);
        Measure measure = task.step().measure();
        requireTold(measure, entry.value(), entry.answer(), entry.skippedBecause(), true);
        return new CareEntry(told.id(), entry, CareKind.task, plan.id(), measure, at);
    }

    private void requireNotEarly(Task task, Instant at) {
        if (at.atZone(region.zone()).toLocalDate().isBefore(task.date())) {
            throw InvalidException.of(
                    "at", "That task is not due before " + task.date() + ".", "an instant on that day or later");
        }
    }

    private static CareEntry beside(UUID caseId, PlanEntries.CareEntryEntry entry, CareKind kind, Instant at) {
        if (entry.stepKey() != null || entry.day() != null) {
            throw InvalidException.of("kind", "Only an entry of a task names its step and day.", "task");
        }
        if (entry.skippedBecause() != null) {
            throw InvalidException.of("skippedBecause", "Only a task is skipped.", "nothing");
        }
        Measure measure = kind == CareKind.weight ? Measure.grams : Measure.none;
        requireTold(measure, entry.value(), entry.answer(), null, kind == CareKind.weight);
        requireWords(kind, entry.words());
        return new CareEntry(caseId, entry, kind, null, measure, at);
    }

    private static void requireWords(CareKind kind, @Nullable String words) {
        if (kind != CareKind.task && kind != CareKind.weight && (words == null || words.isBlank())) {
            throw InvalidException.of("words", "It does not say what was seen.", "some words");
        }
    }

    /** What was done is told by the measure of its step, and what was skipped by the reason alone. */
    private static void requireTold(
            Measure measure,
            @Nullable Double value,
            @Nullable Boolean answer,
            @Nullable String skippedBecause,
            boolean valueNeeded) {
        if (skippedBecause != null) {
            if (skippedBecause.isBlank()) {
                throw InvalidException.of("skippedBecause", "It does not say why.", "some words");
            }
            if (value != null || answer != null) {
                throw InvalidException.of(
                        value == null ? "answer" : "value", "What was skipped has no value.", "nothing");
            }
            return;
        }
        if (measure.isNumber() != (value != null) && (valueNeeded || value != null)) {
            throw InvalidException.of(
                    "value",
                    measure.isNumber() ? "The step asks for a number." : "The step asks for no number.",
                    measure.isNumber() ? "a number in " + measure.name() : "nothing");
        }
        if (value != null && !(Math.abs(value) <= MOST)) {
            throw InvalidException.of("value", "Nobody measures that.", "a number up to 1,000,000");
        }
        if (value != null && (measure == Measure.grams ? value <= 0 : value < 0 && !measure.goesBelowZero())) {
            throw InvalidException.of(
                    "value",
                    "That can be no value in " + measure.name() + ".",
                    measure == Measure.grams ? "more than 0" : "0 or more");
        }
        if ((measure == Measure.yesNo) != (answer != null)) {
            throw InvalidException.of(
                    "answer",
                    measure == Measure.yesNo ? "The step asks for yes or no." : "The step asks for no answer.",
                    measure == Measure.yesNo ? "true or false" : "nothing");
        }
    }

    @Transactional
    public CareEntryView getEntry(UUID id) {
        return reader.view(require(id));
    }

    /** Entries of a case, newest first, those that were taken back among them. */
    @Transactional
    public Page<CareEntryView> listEntries(UUID caseId, int limit, @Nullable UUID before) {
        cases.getCase(caseId);
        List<CareEntry> rows = entries.find("caseId = ?1 and (?2 is null or id < ?2) order by id desc", caseId, before)
                .page(0, limit + 1)
                .list();
        List<CareEntryView> views = reader.entryViews(rows);
        return Page.of(views, limit, view -> view, view -> view.id().toString());
    }

    @Transactional
    public CareEntryView correct(UUID id, PlanEntries.CareEntryCorrection correction) {
        CareEntry row = require(id);
        requireHolder(row.caseId, row.at());
        UUID photograph = correction.photographId().value();
        if (photograph != null) {
            photographs.requireOfCase("photographId", photograph, row.caseId);
        }
        row.correct(correction, clock);
        Measure measure = measureOf(row);
        row.measuredIn(measure);
        CaseView told = cases.getCase(row.caseId);
        requireInCare(told, row.at());
        requireHolder(row.caseId, row.at());
        if (row.skippedBecause != null && row.kind() != CareKind.task) {
            throw InvalidException.of("skippedBecause", "Only a task is skipped.", "nothing");
        }
        requireTold(measure, row.figure, row.answer, row.skippedBecause, true);
        requireWords(row.kind(), row.words);
        entries.flush();
        return reader.view(row);
    }

    /** What a correction is held against: the measure of the step, and the day of the task while the plan asks for it. */
    private Measure measureOf(CareEntry row) {
        if (row.kind() != CareKind.task) {
            return row.kind() == CareKind.weight ? Measure.grams : Measure.none;
        }
        PlanTold told = reader.tell(plans.findById(row.planId));
        told.taskOf(row).ifPresent(task -> requireNotEarly(task, row.at()));
        return told.stepOf(row)
                .map(Step::measure)
                .orElseThrow(() -> new ConflictException("The step of that entry is in no phase of its plan."));
    }

    @Transactional
    public CareEntryView withdraw(UUID id, String reason) {
        CareEntry row = require(id);
        requireHolder(row.caseId, row.at());
        row.withdraw(clock.instant(), reason);
        entries.flush();
        return reader.view(row);
    }

    private CareEntry require(UUID id) {
        return entries.findByIdOptional(id).orElseThrow(() -> new NotFoundException("care entry", id));
    }
}
