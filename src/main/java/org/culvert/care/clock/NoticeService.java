package org.culvert.care.clock;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.care.clock.CaseHistories.Chosen;
import org.culvert.care.clock.ClockService.Ticking;
import org.culvert.care.clock.limit.Limit.Ends;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Corrections;

/** Keeps that authorities were told what limits ask to be told. */
@ApplicationScoped
public class NoticeService {
    private final ExtensionViews.Notices notices;
    private final ExtensionViews views;
    private final LimitService limits;
    private final ClockService clocks;
    private final CaseHistories histories;
    private final CaseService cases;
    private final Clock clock;

    NoticeService(
            ExtensionViews.Notices notices,
            ExtensionViews views,
            LimitService limits,
            ClockService clocks,
            CaseHistories histories,
            CaseService cases,
            Clock clock) {
        this.notices = notices;
        this.views = views;
        this.limits = limits;
        this.clocks = clocks;
        this.histories = histories;
        this.cases = cases;
        this.clock = clock;
    }

    @Transactional
    public ClockViews.ClockNoticeView record(UUID caseId, ClockEntries.ClockNoticeEntry entry) {
        cases.getCase(caseId);
        TimeLimit limit;
        try {
            limit = limits.require(entry.limitId());
        } catch (NotFoundException e) {
            throw InvalidException.of(
                    "limitId", "There is no limit " + entry.limitId() + ".", "an id of GET /api/time-limits");
        }
        if (!limit.ends().contains(Ends.toldAuthority)) {
            throw InvalidException.of(
                    "limitId", "That limit does not end by telling anybody.", "a limit whose ends name toldAuthority");
        }
        Instant at = Corrections.passed("at", entry.at(), clock);
        List<Ticking> bound = clocks.ofLimit(limit, histories.read(Chosen.of(List.of(caseId))));
        if (bound.isEmpty()) {
            throw InvalidException.of(
                    "limitId",
                    "That limit does not bind this case.",
                    "a limitId of GET /api/cases/" + caseId + "/clocks");
        }
        boolean early = bound.stream()
                .allMatch(ticking -> ticking.clock().startedAt() != null
                        && at.isBefore(ticking.clock().startedAt()));
        if (early) {
            throw InvalidException.of(
                    "at",
                    "The limit had not started.",
                    "from " + bound.get(0).clock().startedAt() + " on");
        }
        var row = new ClockNotice(caseId, entry, at);
        notices.persistAndFlush(row);
        return views.view(row);
    }

    @Transactional
    public ClockViews.ClockNoticeView getNotice(UUID id) {
        return views.view(require(id));
    }

    /** Takes back that somebody was told: it is kept and shown, and ends nothing. */
    @Transactional
    public ClockViews.ClockNoticeView withdraw(UUID id, String reason) {
        ClockNotice row = require(id);
        row.withdraw(clock.instant(), reason);
        notices.flush();
        return views.view(row);
    }

    private ClockNotice require(UUID id) {
        return notices.findByIdOptional(id).orElseThrow(() -> new NotFoundException("notice", id));
    }
}
