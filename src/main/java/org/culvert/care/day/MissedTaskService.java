package org.culvert.care.day;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseView;
import org.culvert.care.plan.CarePlans;
import org.culvert.care.plan.CarePlans.Missed;
import org.culvert.platform.ConstraintSentences;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Tells coordinators of tasks that were missed, by rules that are data. */
@ApplicationScoped
public class MissedTaskService {
    private static final int MOST_HOURS = 10_000;
    private static final int MOST_MISSES = 1_000;

    /**
     * A rule; either figure is enough to tell.
     *
     * @param taxonGroup key of the group; null: all groups that have no rule of their own
     * @param hoursOverdue from how many hours overdue on
     * @param missesInARow from how many misses in a row on
     * @param validFrom today where it is left out
     */
    public record MissedTaskRuleEntry(
            @Nullable @Size(max = 100) String taxonGroup,
            @Nullable @Min(0) @Max(MOST_HOURS) Integer hoursOverdue,
            @Nullable @Min(1) @Max(MOST_MISSES) Integer missesInARow,
            @Nullable @Size(max = 2000) String words,
            @Nullable LocalDate validFrom) {}

    /** @param validTo the first day on which the rule no longer holds */
    public record MissedTaskRuleEnding(
            @NotNull LocalDate validTo,
            @NotBlank @Size(max = 2000) String reason) {}

    public record MissedTaskRuleView(
            UUID id,
            @Nullable String taxonGroup,
            @Nullable Integer hoursOverdue,
            @Nullable Integer missesInARow,
            @Nullable String words,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            RecordView record) {}

    /**
     * A step that was missed and of which nothing was done or skipped since.
     *
     * @param date the last day on which it could have been done in time
     * @param hoursOverdue whole hours since then
     * @param holder who has the animal now; null in a gap of custody
     * @param callSign of the holder, where a member holds it
     * @param holderWhenDue who had it when the task became overdue
     * @param ruleId the rule by which it is told
     */
    public record MissedTaskView(
            UUID caseId,
            long caseNumber,
            String vernacularName,
            UUID planId,
            String stepKey,
            String stepWords,
            int day,
            LocalDate date,
            Instant dueUntil,
            long hoursOverdue,
            int missesInARow,
            @Nullable Holder holder,
            @Nullable String callSign,
            @Nullable Holder holderWhenDue,
            UUID ruleId) {}

    @ApplicationScoped
    static class Rules implements PanacheRepositoryBase<MissedTaskRule, UUID> {}

    @ApplicationScoped
    static class Sentences implements ConstraintSentences {
        @Override
        public Map<String, String> sentences() {
            return Map.of(
                    "a_missed_task_rule_has_a_figure", "A rule says after how many hours, or after how many misses.",
                    "a_missed_task_rule_holds_for_some_time", "A rule ends after it begins.",
                    "one_missed_task_rule_holds_for_a_group",
                            "A rule holds for that group on some of these days already: end it first.");
        }
    }

    private final Rules rules;
    private final CarePlans plans;
    private final RosterService roster;
    private final TaxonService taxa;
    private final RegionService region;
    private final RecordViews records;
    private final Clock clock;

    MissedTaskService(
            Rules rules,
            CarePlans plans,
            RosterService roster,
            TaxonService taxa,
            RegionService region,
            RecordViews records,
            Clock clock) {
        this.rules = rules;
        this.plans = plans;
        this.roster = roster;
        this.taxa = taxa;
        this.region = region;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public MissedTaskRuleView enter(MissedTaskRuleEntry entry) {
        UUID group = entry.taxonGroup() == null
                ? null
                : taxa.requireGroup("taxonGroup", entry.taxonGroup()).id();
        if (entry.hoursOverdue() == null && entry.missesInARow() == null) {
            throw InvalidException.of("hoursOverdue", "The rule never tells.", "hoursOverdue, missesInARow or both");
        }
        var row = new MissedTaskRule(entry, group, entry.validFrom() == null ? today() : entry.validFrom());
        rules.persistAndFlush(row);
        return view(row, keys());
    }

    @Transactional
    public List<MissedTaskRuleView> listRules() {
        List<MissedTaskRule> rows = rules.list("order by validFrom, id");
        records.lookUp(rows);
        Map<UUID, String> keys = keys();
        return rows.stream().map(row -> view(row, keys)).toList();
    }

    @Transactional
    public MissedTaskRuleView getRule(UUID id) {
        return view(require(id), keys());
    }

    @Transactional
    public MissedTaskRuleView end(UUID id, MissedTaskRuleEnding ending) {
        MissedTaskRule row = require(id);
        if (!ending.validTo().isAfter(row.validFrom)) {
            throw InvalidException.of("validTo", "The rule begins only later.", "a day after " + row.validFrom);
        }
        row.end(ending.validTo(), ending.reason());
        rules.flush();
        return view(row, keys());
    }

    /**
     * What a coordinator should hear of, the longest overdue first.
     *
     * @param after the cursor of the page before; what has become overdue since stands behind it
     */
    @Transactional
    public Page<MissedTaskView> listMissed(int limit, @Nullable String after) {
        MissedPlace from = after == null ? null : MissedPlace.of(after);
        Instant now = clock.instant();
        LocalDate today = today();
        List<MissedTaskRule> holding =
                rules.listAll().stream().filter(rule -> rule.holdsOn(today)).toList();
        Map<UUID, String> callSigns = new HashMap<>();
        List<MissedTaskView> told = new ArrayList<>();
        for (Missed missed : plans.listMissed()) {
            if (told.size() > limit) {
                break;
            }
            if (from != null && MissedPlace.of(missed).compareTo(from) <= 0) {
                continue;
            }
            long hours = Duration.between(missed.task().dueUntil(), now).toHours();
            ruleOf(missed.seen().animal().taxonGroupId(), holding)
                    .filter(rule -> rule.tells(hours, missed.task().missesInARow()))
                    .ifPresent(rule -> told.add(view(missed, hours, rule, now, callSigns)));
        }
        return Page.of(told, limit, view -> view, view -> MissedPlace.of(view).text());
    }

    private static Optional<MissedTaskRule> ruleOf(UUID group, List<MissedTaskRule> holding) {
        return holding.stream()
                .filter(rule -> group.equals(rule.taxonGroupId))
                .findFirst()
                .or(() -> holding.stream()
                        .filter(rule -> rule.taxonGroupId == null)
                        .findFirst());
    }

    private MissedTaskView view(
            Missed missed, long hours, MissedTaskRule rule, Instant now, Map<UUID, String> callSigns) {
        Holder holder = holder(missed.seen(), now);
        UUID member = holder == null ? null : holder.memberId();
        return new MissedTaskView(
                missed.seen().id(),
                missed.seen().number(),
                missed.seen().animal().vernacularName(),
                missed.planId(),
                missed.task().stepKey(),
                missed.task().words(),
                missed.task().day(),
                missed.task().lastDate(),
                missed.task().dueUntil(),
                hours,
                missed.task().missesInARow(),
                holder,
                member == null
                        ? null
                        : callSigns.computeIfAbsent(
                                member, id -> roster.getMember(id).callSign()),
                // Of a day that ends with midnight: who had it just before
                holder(missed.seen(), missed.task().dueUntil().minusMillis(1)),
                rule.id());
    }

    private static @Nullable Holder holder(CaseView seen, Instant at) {
        return seen.custody().stream()
                .filter(link -> !at.isBefore(link.from()) && (link.to() == null || at.isBefore(link.to())))
                .map(CaseView.CustodyView::holder)
                .findFirst()
                .orElse(null);
    }

    private LocalDate today() {
        return clock.instant().atZone(region.zone()).toLocalDate();
    }

    private Map<UUID, String> keys() {
        return taxa.listGroups().stream()
                .collect(Collectors.toMap(TaxonService.GroupView::id, TaxonService.GroupView::key));
    }

    private MissedTaskRule require(UUID id) {
        return rules.findByIdOptional(id).orElseThrow(() -> new NotFoundException("missed-task rule", id));
    }

    private MissedTaskRuleView view(MissedTaskRule row, Map<UUID, String> keys) {
        return new MissedTaskRuleView(
                row.id(),
                row.taxonGroupId == null ? null : keys.get(row.taxonGroupId),
                row.hoursOverdue,
                row.missesInARow,
                row.words,
                row.validFrom,
                row.validTo,
                records.of(row));
    }
}
