package org.culvert.care.health;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.release.holds.HoldService;
import org.culvert.release.rules.Hold;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps which diseases must be notified, and suspicions of them: one is enough to hold the animal. */
@ApplicationScoped
public class SuspicionService {
    @ApplicationScoped
    static class Conditions implements PanacheRepositoryBase<NotifiableCondition, UUID> {}

    @ApplicationScoped
    static class Suspicions implements PanacheRepositoryBase<DiseaseSuspicion, UUID> {}

    private final Conditions conditions;
    private final Suspicions suspicions;
    private final HoldService holds;
    private final CaseService cases;
    private final TaxonService taxa;
    private final RecordViews records;
    private final RegionService region;
    private final Clock clock;

    SuspicionService(
            Conditions conditions,
            Suspicions suspicions,
            HoldService holds,
            CaseService cases,
            TaxonService taxa,
            RecordViews records,
            RegionService region,
            Clock clock) {
        this.conditions = conditions;
        this.suspicions = suspicions;
        this.holds = holds;
        this.cases = cases;
        this.taxa = taxa;
        this.records = records;
        this.region = region;
        this.clock = clock;
    }

    @Transactional
    public NotifiableConditionView enterCondition(SuspicionEntries.ConditionEntry entry) {
        requireGroups(entry.taxonGroups());
        requireReview("reviewBy", entry.readOn(), entry.reviewBy());
        if (entry.hotline() != null) {
            requireReview(
                    "hotline.reviewBy",
                    entry.hotline().readOn(),
                    entry.hotline().reviewBy());
        }
        var row = NotifiableCondition.of(entry);
        conditions.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public List<NotifiableConditionView> listConditions() {
        List<NotifiableCondition> rows = conditions.list("order by name, jurisdiction, id");
        records.lookUp(rows);
        return rows.stream().map(this::view).toList();
    }

    @Transactional
    public NotifiableConditionView getCondition(UUID id) {
        return view(requireCondition(id));
    }

    @Transactional
    public NotifiableConditionView correctCondition(UUID id, SuspicionEntries.ConditionCorrection correction) {
        NotifiableCondition row = requireCondition(id);
        row.correct(correction);
        requireGroups(row.taxonGroups);
        requireReview("reviewBy", row.readOn, row.reviewBy);
        conditions.flush();
        return view(row);
    }

    /** Says whom to ring, where need be anew. */
    @Transactional
    public NotifiableConditionView enterHotline(UUID id, SuspicionEntries.HotlineEntry hotline) {
        NotifiableCondition row = requireCondition(id);
        requireReview("reviewBy", hotline.readOn(), hotline.reviewBy());
        row.ring(hotline, null);
        conditions.flush();
        return view(row);
    }

    /** Keeps a suspicion, and holds the animal in the same transaction. */
    @Transactional
    public DiseaseSuspicionView suspect(UUID caseId, SuspicionEntries.SuspicionEntry entry) {
        cases.getCase(caseId);
        if (conditions.findByIdOptional(entry.conditionId()).isEmpty()) {
            throw noSuchCondition();
        }
        Instant at = Corrections.passed("at", entry.at(), clock);
        HoldService.Standing hold = holds.keepHeld(caseId, Hold.Kind.notifiableDisease, at);
        var row = new DiseaseSuspicion(caseId, hold.id(), entry, at);
        if (entry.told() != null) {
            row.told(entry.told(), Corrections.passed("told.at", entry.told().at(), clock));
        }
        suspicions.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public DiseaseSuspicionView getSuspicion(UUID id) {
        return view(require(id));
    }

    @Transactional
    public List<DiseaseSuspicionView> listSuspicions(UUID caseId) {
        cases.getCase(caseId);
        return suspicions.list("caseId = ?1 order by happenedAt, id", caseId).stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public DiseaseSuspicionView correct(UUID id, SuspicionEntries.SuspicionCorrection correction) {
        DiseaseSuspicion row = require(id);
        UUID condition = correction.conditionId().value();
        if (condition != null && conditions.findByIdOptional(condition).isEmpty()) {
            throw noSuchCondition();
        }
        row.correct(correction);
        suspicions.flush();
        return view(row);
    }

    @Transactional
    public DiseaseSuspicionView tell(UUID id, SuspicionEntries.SuspicionTelling telling) {
        DiseaseSuspicion row = require(id);
        row.tell(telling, Corrections.passed("at", telling.at(), clock));
        suspicions.flush();
        return view(row);
    }

    private static InvalidException noSuchCondition() {
        return InvalidException.of(
                "conditionId", "There is no such condition.", "an identifier from /api/notifiable-conditions");
    }

    private void requireGroups(List<String> keys) {
        keys.forEach(key -> taxa.requireGroup("taxonGroups", key));
    }

    private static void requireReview(String field, LocalDate readOn, LocalDate reviewBy) {
        if (!reviewBy.isAfter(readOn)) {
            throw InvalidException.of(field, "It would be due at once.", "a day after " + readOn);
        }
    }

    private NotifiableCondition requireCondition(UUID id) {
        return conditions.findByIdOptional(id).orElseThrow(() -> new NotFoundException("notifiable condition", id));
    }

    private DiseaseSuspicion require(UUID id) {
        return suspicions.findByIdOptional(id).orElseThrow(() -> new NotFoundException("disease suspicion", id));
    }

    private NotifiableConditionView view(NotifiableCondition row) {
        return new NotifiableConditionView(
                row.id(),
                row.jurisdiction,
                row.name,
                row.taxonGroups,
                row.signs,
                row.source,
                row.readOn,
                row.reviewBy,
                hotline(row),
                records.of(row));
    }

    private NotifiableConditionView.@Nullable Hotline hotline(NotifiableCondition row) {
        if (row.hotlineNumber == null) {
            return null;
        }
        LocalDate reviewBy = Objects.requireNonNull(row.hotlineReviewBy);
        LocalDate today = clock.instant().atZone(region.zone()).toLocalDate();
        return new NotifiableConditionView.Hotline(
                Objects.requireNonNull(row.hotlineName),
                row.hotlineNumber,
                Objects.requireNonNull(row.hotlineSource),
                Objects.requireNonNull(row.hotlineReadOn),
                reviewBy,
                !today.isBefore(reviewBy));
    }

    private DiseaseSuspicionView view(DiseaseSuspicion row) {
        NotifiableCondition condition = requireCondition(row.conditionId);
        HoldService.CaseHoldView.Clearing clearing = holds.getHold(row.holdId).clearing();
        Instant toldAt = row.toldAt;
        return new DiseaseSuspicionView(
                row.id(),
                row.caseId,
                row.conditionId,
                condition.name,
                row.holdId,
                row.signs,
                row.suspectedBy,
                Objects.requireNonNull(row.happenedAt()),
                toldAt == null
                        ? null
                        : new DiseaseSuspicionView.ToldOf(
                                Objects.requireNonNull(row.toldTo),
                                Objects.requireNonNull(row.toldBy),
                                row.toldReference,
                                toldAt),
                clearing == null ? null : clearing.at(),
                clearing == null ? HealthAdvice.afterASuspicion(condition) : List.of(),
                records.of(row));
    }
}
