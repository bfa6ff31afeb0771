package org.culvert.release.nonrelease;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.release.nonrelease.NonReleaseEntries.OutcomeKind;

/** Shows decisions with what came of them, and says plainly what is missing. */
@ApplicationScoped
public class NonReleaseReader {
    private static final String NOTE =
            "This records what was decided, and no more. Check your local code and your licensed vet.";

    /** A permit's document as it was handed in. */
    public record Document(String mediaType, byte[] content) {}

    private final NonReleaseRepositories.SecondOpinions opinions;
    private final NonReleaseRepositories.AuthorityNotices notices;
    private final NonReleaseRepositories.PermitsToKeep permits;
    private final NonReleaseRepositories.WelfareReviews reviews;
    private final NonReleaseRepositories.Outcomes outcomes;
    private final KeptFiles files;
    private final CaseService cases;
    private final RegionService region;
    private final RecordViews records;
    private final Clock clock;

    NonReleaseReader(
            NonReleaseRepositories.SecondOpinions opinions,
            NonReleaseRepositories.AuthorityNotices notices,
            NonReleaseRepositories.PermitsToKeep permits,
            NonReleaseRepositories.WelfareReviews reviews,
            NonReleaseRepositories.Outcomes outcomes,
            KeptFiles files,
            CaseService cases,
            RegionService region,
            RecordViews records,
            Clock clock) {
        this.opinions = opinions;
        this.notices = notices;
        this.permits = permits;
        this.reviews = reviews;
        this.outcomes = outcomes;
        this.files = files;
        this.cases = cases;
        this.region = region;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public Document getDocument(UUID id, UUID permitId) {
        PermitToKeep permit = permits.find("id = ?1 and decisionId = ?2", permitId, id)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("permit to keep", permitId));
        KeptFiles.Content content = files.getContent(permit.fileId);
        return new Document(content.mediaType(), content.octets());
    }

    /** Whether a second opinion that stands does not agree. */
    boolean isDisputed(NonReleaseDecision row) {
        return isDisputed(opinions.of(row.id()));
    }

    private static boolean isDisputed(List<SecondOpinion> told) {
        return told.stream().anyMatch(opinion -> opinion.stands() && !opinion.agrees);
    }

    NonReleaseView view(NonReleaseDecision row) {
        List<SecondOpinion> second = opinions.of(row.id());
        List<AuthorityNotice> told = notices.of(row.id());
        List<PermitToKeep> kept = permits.of(row.id());
        List<NonReleaseOutcome> ends = outcomes.of(row.id());
        return new NonReleaseView(
                row.id(),
                row.caseId,
                cases.getCase(row.caseId).number(),
                row.grounds,
                row.words,
                row.vetName,
                row.vetRegistration,
                row.decidedAt(),
                row.withdrawnAt != null ? "withdrawn" : isDisputed(second) ? "inDispute" : "stands",
                second.stream().map(this::view).toList(),
                told.stream().map(this::view).toList(),
                kept.stream().map(this::view).toList(),
                row.reviewDueOn,
                reviews.of(row.id()).stream().map(this::view).toList(),
                ends.stream().map(this::view).toList(),
                row.withdrawnAt,
                row.withdrawnBecause,
                row.withdrawnAt != null ? List.of(NOTE) : plainly(row, second, told, kept, ends),
                records.of(row));
    }

    private List<String> plainly(
            NonReleaseDecision row,
            List<SecondOpinion> second,
            List<AuthorityNotice> told,
            List<PermitToKeep> kept,
            List<NonReleaseOutcome> ends) {
        LocalDate today = clock.instant().atZone(region.zone()).toLocalDate();
        List<String> said = new ArrayList<>();
        if (isDisputed(second)) {
            said.add("A second opinion does not agree: the decision is in dispute, and both are shown."
                    + " The animal is not released while it stands.");
        } else if (second.stream().noneMatch(DecisionPart::stands)) {
            said.add("No second opinion is recorded.");
        }
        if (told.stream().noneMatch(DecisionPart::stands)) {
            said.add("No authority is recorded as told.");
        }
        NonReleaseOutcome end =
                ends.stream().filter(DecisionPart::stands).findFirst().orElse(null);
        if (end != null && end.is(OutcomeKind.euthanasia)) {
            said.add(
                    "This is what was decided. What became of the animal is the fate of its case, and is recorded there.");
        } else {
            if (kept.stream().noneMatch(permit -> permit.holdsOn(today))) {
                said.add("No permit to keep it is recorded for today.");
            }
            if (row.reviewDueOn == null) {
                said.add("No day is set for a welfare review.");
            } else if (row.reviewDueOn.isBefore(today)) {
                said.add("The welfare review was due by " + row.reviewDueOn + ".");
            }
        }
        if (end != null && end.is(OutcomeKind.placement)) {
            said.add("A placement does not end the case: its custody says who holds the animal."
                    + (end.permitToKeepId == null ? " No permit is named for this placement." : ""));
        }
        said.add(NOTE);
        return said;
    }

    private NonReleaseView.SecondOpinionView view(SecondOpinion part) {
        return new NonReleaseView.SecondOpinionView(
                part.id(),
                part.vetName,
                part.vetRegistration,
                part.agrees,
                part.words,
                part.happenedAt(),
                part.withdrawnAt,
                part.withdrawnBecause,
                records.of(part));
    }

    private NonReleaseView.AuthorityNoticeView view(AuthorityNotice part) {
        return new NonReleaseView.AuthorityNoticeView(
                part.id(),
                part.authority,
                part.reference,
                part.happenedAt(),
                part.withdrawnAt,
                part.withdrawnBecause,
                records.of(part));
    }

    private NonReleaseView.PermitToKeepView view(PermitToKeep part) {
        return new NonReleaseView.PermitToKeepView(
                part.id(),
                part.number,
                part.issuedBy,
                part.documentName,
                part.validFrom,
                part.validTo,
                part.withdrawnAt,
                part.withdrawnBecause,
                records.of(part));
    }

    private NonReleaseView.WelfareReviewView view(WelfareReview part) {
        return new NonReleaseView.WelfareReviewView(
                part.id(),
                part.reviewedBy,
                part.words,
                part.happenedAt(),
                part.nextDueOn,
                part.withdrawnAt,
                part.withdrawnBecause,
                records.of(part));
    }

    private NonReleaseView.OutcomeView view(NonReleaseOutcome part) {
        return new NonReleaseView.OutcomeView(
                part.id(),
                part.outcome,
                part.placedWith,
                part.permitToKeepId,
                part.approvedBy,
                part.words,
                part.happenedAt(),
                part.withdrawnAt,
                part.withdrawnBecause,
                records.of(part));
    }
}
