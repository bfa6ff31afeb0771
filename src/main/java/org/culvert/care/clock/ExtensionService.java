package org.culvert.care.clock;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.care.clock.CaseHistories.CaseHistory;
import org.culvert.care.clock.CaseHistories.Chosen;
import org.culvert.care.clock.ClockService.Ticking;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps extensions: of one case on a named ground or by an order, or of many by one order. */
@ApplicationScoped
public class ExtensionService {
    private final ExtensionViews.Extensions extensions;
    private final ExtensionViews views;
    private final LimitService limits;
    private final ClockService clocks;
    private final CaseHistories histories;
    private final CaseService cases;
    private final TaxonService taxa;
    private final Clock clock;

    ExtensionService(
            ExtensionViews.Extensions extensions,
            ExtensionViews views,
            LimitService limits,
            ClockService clocks,
            CaseHistories histories,
            CaseService cases,
            TaxonService taxa,
            Clock clock) {
        this.extensions = extensions;
        this.views = views;
        this.limits = limits;
        this.clocks = clocks;
        this.histories = histories;
        this.cases = cases;
        this.taxa = taxa;
        this.clock = clock;
    }

    @Transactional
    public ClockViews.ClockExtensionView extend(UUID caseId, ClockEntries.ClockExtensionEntry entry) {
        cases.getCase(caseId);
        TimeLimit limit = requireLimit(entry.limitId());
        Instant grantedAt = Corrections.passed("grantedAt", entry.grantedAt(), clock);
        requireGroundOrOrder(limit, entry.ground(), entry.order());
        requireAfter(entry.until(), grantedAt);
        List<Ticking> bound = clocks.ofLimit(limit, histories.read(Chosen.of(List.of(caseId))));
        if (bound.isEmpty()) {
            throw InvalidException.of(
                    "limitId",
                    "That limit does not bind this case.",
                    "a limitId of GET /api/cases/" + caseId + "/clocks");
        }
        dueAnyway(bound, entry.until()).ifPresent(due -> {
            throw InvalidException.of("until", "It is due only at " + due + " as it is.", "an instant after that");
        });
        var row = new ClockExtension(
                caseId, limit.id(), entry.until(), entry.ground(), entry.order(), entry.grantedBy(), grantedAt);
        extensions.persistAndFlush(row);
        return views.view(row);
    }

    /** Extends one limit for many cases by an order: all that it binds, or, where anything is wrong, none. */
    @Transactional
    public ClockViews.OrderDoneView extendMany(ClockEntries.OrderForManyEntry entry) {
        TimeLimit limit = requireLimit(entry.limitId());
        Instant grantedAt = Corrections.passed("grantedAt", entry.grantedAt(), clock);
        requireAfter(entry.until(), grantedAt);
        List<CaseHistory> chosen = chosen(entry);
        Map<UUID, List<Ticking>> bound = clocks.ofLimit(limit, chosen).stream()
                .collect(Collectors.groupingBy(ticking -> ticking.of().id()));
        List<ClockExtension> rows = new ArrayList<>();
        List<CaseHistory> extended = new ArrayList<>();
        List<ClockViews.UnextendedCaseView> notExtended = new ArrayList<>();
        for (CaseHistory one : chosen) {
            List<Ticking> ticking = bound.getOrDefault(one.id(), List.of());
            Optional<Instant> due = dueAnyway(ticking, entry.until());
            if (ticking.isEmpty()) {
                notExtended.add(unextended(one, "That limit does not bind this case."));
            } else if (due.isPresent()) {
                notExtended.add(unextended(one, "It is due only at " + due.get() + " as it is."));
            } else {
                extended.add(one);
                rows.add(new ClockExtension(
                        one.id(), limit.id(), entry.until(), null, entry.order(), entry.grantedBy(), grantedAt));
            }
        }
        extensions.persist(rows);
        extensions.flush();
        List<ClockViews.ExtendedCaseView> done = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            done.add(new ClockViews.ExtendedCaseView(
                    extended.get(i).id(), extended.get(i).number(), rows.get(i).id()));
        }
        return new ClockViews.OrderDoneView(limit.id(), entry.until(), done, notExtended, LimitService.NOTE);
    }

    private List<CaseHistory> chosen(ClockEntries.OrderForManyEntry entry) {
        List<UUID> ids = entry.caseIds();
        ClockEntries.CaseSpan found = entry.found();
        if ((ids == null) == (found == null)) {
            throw InvalidException.of(
                    "caseIds",
                    "An order is for the cases of a list, or for those of a span.",
                    "either caseIds or found");
        }
        if (found != null) {
            if (!found.foundBefore().isAfter(found.foundFrom())) {
                throw InvalidException.of("found.foundBefore", "It ends before it begins.", "after found.foundFrom");
            }
            UUID group = found.taxonGroup() == null
                    ? null
                    : taxa.requireGroup("found.taxonGroup", found.taxonGroup()).id();
            return histories.read(Chosen.openAndFound(group, found.foundFrom(), found.foundBefore()));
        }
        Set<UUID> asked = new HashSet<>(Objects.requireNonNull(ids));
        List<CaseHistory> known = histories.read(Chosen.of(asked));
        known.forEach(one -> asked.remove(one.id()));
        if (!asked.isEmpty()) {
            throw InvalidException.of(
                    "caseIds",
                    "There is no case " + asked.iterator().next() + ", so that nothing was extended.",
                    "known cases");
        }
        return known;
    }

    private static ClockViews.UnextendedCaseView unextended(CaseHistory one, String because) {
        return new ClockViews.UnextendedCaseView(one.id(), one.number(), because);
    }

    @Transactional
    public ClockViews.ClockExtensionView getExtension(UUID id) {
        return views.view(require(id));
    }

    @Transactional
    public ClockViews.ClockExtensionView correct(UUID id, ClockEntries.ClockExtensionCorrection correction) {
        ClockExtension row = require(id);
        Instant grantedAt = Corrections.known("grantedAt", correction.grantedAt(), row.grantedAt(), clock);
        Instant until = correction.until().over("until", row.untilAt);
        String ground = Corrections.text("ground", correction.ground(), row.ground, 200);
        ClockEntries.ClockOrder order = correction.order().over(row.order());
        requireWhole(order);
        requireGroundOrOrder(limits.require(row.limitId), ground, order);
        requireAfter(until, grantedAt);
        row.correct(
                until,
                ground,
                order,
                Corrections.words("grantedBy", correction.grantedBy(), row.grantedBy, 200),
                grantedAt,
                correction.reason());
        extensions.flush();
        return views.view(row);
    }

    /** Takes an extension back: it is kept and shown, and the limit ends as if it had not been. */
    @Transactional
    public ClockViews.ClockExtensionView withdraw(UUID id, String reason) {
        ClockExtension row = require(id);
        row.withdraw(clock.instant(), reason);
        extensions.flush();
        return views.view(row);
    }

    /** When the latest of some clocks is due, where that is as late as an extension or later. */
    private static Optional<Instant> dueAnyway(List<Ticking> bound, Instant until) {
        return bound.stream()
                .map(ticking -> ticking.clock().dueAt())
                .filter(Objects::nonNull)
                .max(Comparator.naturalOrder())
                .filter(due -> !until.isAfter(due));
    }

    private static void requireGroundOrOrder(
            TimeLimit limit, @Nullable String ground, ClockEntries.@Nullable ClockOrder order) {
        if ((ground == null) == (order == null)) {
            throw InvalidException.of(
                    "ground", "A limit is extended on one ground or by one order.", "either ground or order");
        }
        if (ground != null && !limit.extensionGrounds.contains(ground)) {
            throw InvalidException.of(
                    "ground",
                    "That is no ground on which this limit may be extended.",
                    limit.extensionGrounds.isEmpty()
                            ? "an order: the limit names no ground"
                            : String.join(", ", limit.extensionGrounds) + ", or an order");
        }
    }

    /** What comes in a correction is not looked at before. */
    private static void requireWhole(ClockEntries.@Nullable ClockOrder order) {
        if (order != null) {
            requireText("order.authority", order.authority(), 200);
            requireText("order.number", order.number(), 200);
            requireText("order.words", order.words(), 4000);
            if (order.date() == null) {
                throw InvalidException.of("order.date", "An order has a date.", "a day such as 2026-11-25");
            }
        }
    }

    private static void requireText(String field, @Nullable String text, int longest) {
        if (text == null || text.isBlank() || text.length() > longest) {
            throw InvalidException.of(field, "This is empty or too long.", "at most " + longest + " characters");
        }
    }

    private static void requireAfter(Instant until, Instant grantedAt) {
        if (!until.isAfter(grantedAt)) {
            throw InvalidException.of("until", "It would end before it was granted.", "an instant after " + grantedAt);
        }
    }

    private TimeLimit requireLimit(UUID id) {
        try {
            return limits.require(id);
        } catch (NotFoundException e) {
            throw InvalidException.of("limitId", "There is no limit " + id + ".", "an id of GET /api/time-limits");
        }
    }

    private ClockExtension require(UUID id) {
        return extensions.findByIdOptional(id).orElseThrow(() -> new NotFoundException("clock extension", id));
    }
}
