package org.culvert.care.clock;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/** What this room shows of cases. */
public final class ClockViews {
    private ClockViews() {}

    /**
     * One limit as it runs, or ran, in one case.
     *
     * @param length such as {@code 24 hours}
     * @param custodyLinkId the link of custody that started it, where one did
     * @param startedAt null where it is not known
     * @param dueAt the last instant, extension included; where it can't be told: by which it would be due at the earliest
     * @param warnedFrom from when it warns
     * @param state {@code running}, {@code warned}, {@code overdue}, {@code endedInTime}, {@code endedLate} or
     *     {@code cantTell}
     * @param extendedUntil until when it was extended, where that is later than its own end
     * @param endedBy what ended it
     * @param said how it stands, in words
     * @param mayBeExtendedOn grounds; empty: only by an order
     * @param reviewDue whether the limit's source should have been read again by now
     */
    public record CaseClockView(
            UUID caseId,
            long caseNumber,
            UUID limitId,
            String jurisdiction,
            String kind,
            String binds,
            String starts,
            List<String> ends,
            String length,
            String words,
            String source,
            boolean reviewDue,
            @Nullable UUID custodyLinkId,
            @Nullable Instant startedAt,
            @Nullable Instant dueAt,
            @Nullable Instant warnedFrom,
            String state,
            @Nullable Instant extendedUntil,
            @Nullable Instant endedAt,
            @Nullable String endedBy,
            String said,
            List<String> mayBeExtendedOn,
            String note) {}

    /**
     * The clocks of a case.
     *
     * @param jurisdiction whose limits were looked at beside the network's own; null where that was not told
     * @param said what was not looked at, in words; empty where nothing is missing
     */
    public record CaseClocksView(
            UUID caseId,
            @Nullable String jurisdiction,
            List<String> said,
            List<CaseClockView> clocks,
            List<ClockExtensionView> extensions,
            List<ClockNoticeView> notices,
            String note) {}

    /** An extension as shown. */
    public record ClockExtensionView(
            UUID id,
            UUID caseId,
            UUID limitId,
            Instant until,
            @Nullable String ground,
            @Nullable ClockOrderView order,
            String grantedBy,
            Instant grantedAt,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    public record ClockOrderView(String authority, String number, LocalDate date, String words) {}

    /** What an order did: to which cases, and to which not and why. */
    public record OrderDoneView(
            UUID limitId,
            Instant until,
            List<ExtendedCaseView> extended,
            List<UnextendedCaseView> notExtended,
            String note) {}

    public record ExtendedCaseView(UUID caseId, long caseNumber, UUID extensionId) {}

    public record UnextendedCaseView(UUID caseId, long caseNumber, String because) {}

    /** A notice as shown. */
    public record ClockNoticeView(
            UUID id,
            UUID caseId,
            UUID limitId,
            String told,
            String how,
            @Nullable String reference,
            Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}
}
