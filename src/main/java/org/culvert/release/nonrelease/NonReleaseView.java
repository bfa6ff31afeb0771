package org.culvert.release.nonrelease;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A decision that an animal may not go back, with all that came of it; what was taken back is shown with its reason.
 *
 * @param standing {@code stands}, {@code inDispute} while a second opinion does not agree, or {@code withdrawn}
 * @param reviewDueOn the day by which somebody looks again; null: nobody has said
 * @param saidPlainly what a reader must know beside the figures
 */
public record NonReleaseView(
        UUID id,
        UUID caseId,
        long caseNumber,
        List<String> grounds,
        String words,
        String vetName,
        String vetRegistration,
        Instant decidedAt,
        String standing,
        List<SecondOpinionView> secondOpinions,
        List<AuthorityNoticeView> authorityNotices,
        List<PermitToKeepView> permitsToKeep,
        @Nullable LocalDate reviewDueOn,
        List<WelfareReviewView> welfareReviews,
        List<OutcomeView> outcomes,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnBecause,
        List<String> saidPlainly,
        RecordView record) {

    public record SecondOpinionView(
            UUID id,
            String vetName,
            String vetRegistration,
            boolean agrees,
            String words,
            @Nullable Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    public record AuthorityNoticeView(
            UUID id,
            String authority,
            @Nullable String reference,
            @Nullable Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    public record PermitToKeepView(
            UUID id,
            String number,
            String issuedBy,
            String documentName,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    public record WelfareReviewView(
            UUID id,
            String reviewedBy,
            String words,
            @Nullable Instant at,
            LocalDate nextDueOn,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    public record OutcomeView(
            UUID id,
            String outcome,
            @Nullable String placedWith,
            @Nullable UUID permitToKeepId,
            @Nullable String approvedBy,
            @Nullable String words,
            @Nullable Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}
}
