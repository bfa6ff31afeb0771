package org.culvert.platform.personal;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** How long people are kept, by whose word. */
@ApplicationScoped
public class RetentionService {
    /** Whom a rule is about: callers, finders and holders outside the roster, or members of it. */
    public enum Kind {
        people,
        members
    }

    /**
     * A duty to keep, as entered.
     *
     * @param jurisdiction an ISO 3166 code, or {@code network} for the network's own policy
     * @param years counted from the end of the last case, or from a member's leaving; 0 where somebody looked and found no
     *     duty
     * @param source where it stands
     * @param readOn when it was read there
     * @param validTo last day; left out while it holds
     */
    public record RetentionRuleEntry(
            @NotBlank
            @Pattern(
                    regexp = "[A-Z]{2}(-[A-Z0-9]{1,3})?|network",
                    message = "must be an ISO 3166 code such as AU-VIC, or network")
            String jurisdiction,

            @NotNull Kind kind,
            @NotNull @Min(0) @Max(200) Integer years,
            @NotBlank @Size(max = 2000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {}

    /** A duty to keep, as it stands. */
    public record RetentionRuleView(
            UUID id,
            String jurisdiction,
            String kind,
            int years,
            String source,
            LocalDate readOn,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            RecordView record) {}

    @ApplicationScoped
    static class Rules implements PanacheRepositoryBase<RetentionRule, UUID> {}

    private final Rules rules;
    private final RecordViews records;

    RetentionService(Rules rules, RecordViews records) {
        this.rules = rules;
        this.records = records;
    }

    @Transactional
    public RetentionRuleView make(RetentionRuleEntry entry) {
        requireForward(entry.validFrom(), entry.validTo());
        var row = new RetentionRule(entry);
        rules.persistAndFlush(row);
        return view(row);
    }

    /** A rule that was changed by its maker holds until a last day; the new one is entered beside it. */
    @Transactional
    public RetentionRuleView end(UUID id, LocalDate lastDay, String reason) {
        RetentionRule row = require(id);
        requireForward(row.validFrom, lastDay);
        row.end(lastDay, reason);
        rules.flush();
        return view(row);
    }

    @Transactional
    public List<RetentionRuleView> listRules() {
        return rules.list("order by kind, jurisdiction, validFrom, id").stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public RetentionRuleView getRule(UUID id) {
        return view(require(id));
    }

    private RetentionRule require(UUID id) {
        return rules.findByIdOptional(id).orElseThrow(() -> new NotFoundException("retention rule", id));
    }

    private static void requireForward(LocalDate from, @Nullable LocalDate to) {
        if (to != null && to.isBefore(from)) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day on or after validFrom");
        }
    }

    private RetentionRuleView view(RetentionRule row) {
        return new RetentionRuleView(
                row.id(),
                row.jurisdiction,
                row.kind,
                row.years,
                row.source,
                row.readOn,
                row.validFrom,
                row.validTo,
                records.of(row));
    }
}
