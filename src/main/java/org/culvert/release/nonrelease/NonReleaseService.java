package org.culvert.release.nonrelease;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseEntries.FateKind;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RefusedException;
import org.culvert.platform.RegionService;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.release.nonrelease.NonReleaseEntries.OutcomeKind;
import org.jspecify.annotations.Nullable;

/** Keeps decisions that an animal may not go back, and what comes of them. */
@ApplicationScoped
public class NonReleaseService {
    private static final String NOTE =
            "This records what was decided, and no more. Check your local code and your licensed vet.";

    /** A permit's document as it was handed in. */
    public record Document(String mediaType, byte[] content) {}

    private final NonReleaseRepositories.Decisions decisions;
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

    NonReleaseService(
            NonReleaseRepositories.Decisions decisions,
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
        this.decisions = decisions;
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

    /**
     * Records a decision. It may be entered late, after the case has ended, but not against a release.
     *
     * @throws ConflictException if the animal was released
     */
    @Transactional
    public NonReleaseView decide(UUID caseId, NonReleaseEntries.NonReleaseEntry entry) {
        cases.hold(List.of(caseId));
        CaseView told = cases.getCase(caseId);
        Instant at = past("decidedAt", entry.decidedAt());
        if (at.isBefore(told.foundAt())) {
            throw InvalidException.of(
                    "decidedAt", "That was before the animal was found.", "an instant after " + told.foundAt());
        }
        CaseView.FateView fate = told.fate();
        if (fate != null && fate.fate().equals(FateKind.released.name())) {
            throw new ConflictException("Case " + told.number() + " has ended: the animal was released.");
        }
        if (fate != null && fate.at() != null && at.isAfter(fate.at())) {
            throw InvalidException.of(
                    "decidedAt", "That was after the case had ended.", "an instant up to " + fate.at());
        }
        var row = new NonReleaseDecision(caseId, entry, at);
        requireLater("reviewDueOn", row.reviewDueOn, at);
        decisions.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public NonReleaseView getDecision(UUID id) {
        return view(require(id));
    }

    /** Decisions of a case, newest first, those that were withdrawn among them. */
    @Transactional
    public List<NonReleaseView> listOfCase(UUID caseId) {
        cases.getCase(caseId);
        return decisions.list("caseId = ?1 order by id desc", caseId).stream()
                .map(this::view)
                .toList();
    }

    /**
     * Decisions, newest first.
     *
     * @param dueBefore only those that stand, of animals whose case goes on, whose welfare review is due before this day
     */
    @Transactional
    public Page<NonReleaseView> listDecisions(@Nullable LocalDate dueBefore, int limit, @Nullable UUID before) {
        String due = "d.withdrawnAt is null and d.reviewDueOn < ?2 and not exists (select 1 from Fate f"
                + " where f.caseId = d.caseId and f.withdrawnAt is null) and ";
        String query = "from NonReleaseDecision d where " + (dueBefore == null ? "" : due)
                + "(?1 is null or d.id < ?1) order by d.id desc";
        var found = dueBefore == null ? decisions.find(query, before) : decisions.find(query, before, dueBefore);
        return Page.of(
                found.page(0, limit + 1).list(),
                limit,
                this::view,
                row -> row.id().toString());
    }

    @Transactional
    public NonReleaseView correct(UUID id, NonReleaseEntries.NonReleaseCorrection correction) {
        NonReleaseDecision row = requireStanding(id);
        row.correct(correction);
        requireLater("reviewDueOn", row.reviewDueOn, row.decidedAt());
        decisions.flush();
        return view(row);
    }

    /** Takes a decision back: the animal may go back after all. */
    @Transactional
    public NonReleaseView withdraw(UUID id, String reason) {
        NonReleaseDecision row = require(id);
        cases.hold(List.of(row.caseId));
        row.withdraw(clock.instant(), reason);
        decisions.flush();
        return view(row);
    }

    @Transactional
    public NonReleaseView addOpinion(UUID id, NonReleaseEntries.SecondOpinionEntry entry) {
        NonReleaseDecision row = requireStanding(id);
        opinions.persistAndFlush(new SecondOpinion(id, entry, since(row, entry.at())));
        return view(row);
    }

    /** Records that an authority was told; that may have been before the decision. */
    @Transactional
    public NonReleaseView addNotice(UUID id, NonReleaseEntries.AuthorityNoticeEntry entry) {
        NonReleaseDecision row = requireStanding(id);
        notices.persistAndFlush(new AuthorityNotice(id, entry, past("at", entry.at())));
        return view(row);
    }

    @Transactional
    public NonReleaseView addPermit(UUID id, NonReleaseEntries.PermitToKeepEntry entry) {
        NonReleaseDecision row = requireStanding(id);
        if (entry.validTo() != null && entry.validTo().isBefore(entry.validFrom())) {
            throw InvalidException.of(
                    "validTo", "The permit would end before it began.", "a day from " + entry.validFrom() + " on");
        }
        UUID file = files.keep("document", entry.documentMediaType(), entry.document());
        permits.persistAndFlush(new PermitToKeep(id, entry, file));
        return view(row);
    }

    @Transactional
    public Document getDocument(UUID id, UUID permitId) {
        PermitToKeep permit = permits.find("id = ?1 and decisionId = ?2", permitId, id)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("permit to keep", permitId));
        KeptFiles.Content content = files.getContent(permit.fileId);
        return new Document(content.mediaType(), content.octets());
    }

    /** Records a review that was held; from then on the next one is due. */
    @Transactional
    public NonReleaseView addReview(UUID id, NonReleaseEntries.WelfareReviewEntry entry) {
        NonReleaseDecision row = requireStanding(id);
        Instant at = since(row, entry.at());
        requireLater("nextDueOn", entry.nextDueOn(), at);
        reviews.persistAndFlush(new WelfareReview(row, entry, at));
        row.reviewed(entry.nextDueOn());
        decisions.flush();
        return view(row);
    }

    /** Records what is to become of the animal. Its case goes on until its fate is recorded there. */
    @Transactional
    public NonReleaseView addOutcome(UUID id, NonReleaseEntries.OutcomeEntry entry) {
        NonReleaseDecision row = requireStanding(id);
        boolean placed = entry.outcome() == OutcomeKind.placement;
        if (placed == isBlank(entry.placedWith())) {
            throw InvalidException.of(
                    "placedWith",
                    placed ? "It is not said with whom." : "An animal that is put down is placed with nobody.",
                    "with whom, of a placement alone");
        }
        if (!placed && entry.permitToKeepId() != null) {
            throw InvalidException.of(
                    "permitToKeepId", "Only a placement names a permit to keep.", "leave the permit out");
        }
        if (!placed && isBlank(entry.approvedBy())) {
            throw InvalidException.of("approvedBy", "Euthanasia is approved by somebody.", "who approved it");
        }
        if (entry.permitToKeepId() != null
                && permits.of(id).stream()
                        .noneMatch(permit -> permit.stands() && permit.id().equals(entry.permitToKeepId()))) {
            throw InvalidException.of(
                    "permitToKeepId",
                    "That is no permit to keep of this decision.",
                    "one of permitsToKeep that stands");
        }
        outcomes.persistAndFlush(new NonReleaseOutcome(id, entry, since(row, entry.at())));
        return view(row);
    }

    /** Takes back one thing that came of a decision: an opinion, a notice, a permit, a review or an outcome. */
    @Transactional
    public NonReleaseView withdrawPart(UUID id, UUID partId, String reason) {
        NonReleaseDecision row = requireStanding(id);
        DecisionPart part = null;
        for (NonReleaseRepositories.Parts<? extends DecisionPart> of :
                List.of(opinions, notices, permits, reviews, outcomes)) {
            if (part == null) {
                part = of.find("id = ?1 and decisionId = ?2", partId, id).firstResult();
            }
        }
        if (part == null) {
            throw new NotFoundException("entry of that decision", partId);
        }
        part.withdraw(clock.instant(), reason);
        decisions.flush();
        return view(row);
    }

    /**
     * Holds some cases and looks for decisions that forbid their release, those in dispute among them.
     *
     * @throws RefusedException with each that stands
     */
    @Transactional
    public void requireNoneStands(Collection<UUID> caseIds) {
        cases.hold(caseIds);
        List<String> reasons = decisions.list("caseId in ?1 and withdrawnAt is null order by id", caseIds).stream()
                .map(row -> "Case " + cases.getCase(row.caseId).number() + ": on "
                        + day(row.decidedAt()) + " a vet decided that this animal does not go back ("
                        + String.join(", ", row.grounds) + ")"
                        + (isDisputed(opinions.of(row.id())) ? ", which a second opinion disputes" : "")
                        + ". Only withdrawing that decision, with a reason, lifts it.")
                .toList();
        if (!reasons.isEmpty()) {
            throw new RefusedException("A decision not to release stands in the way of this release.", reasons);
        }
    }

    private static boolean isDisputed(List<SecondOpinion> told) {
        return told.stream().anyMatch(opinion -> opinion.stands() && !opinion.agrees);
    }

    private NonReleaseDecision require(UUID id) {
        return decisions.findByIdOptional(id).orElseThrow(() -> new NotFoundException("non-release decision", id));
    }

    private NonReleaseDecision requireStanding(UUID id) {
        NonReleaseDecision row = require(id);
        row.requireStanding();
        return row;
    }

    private Instant past(String field, @Nullable Instant told) {
        Instant now = clock.instant();
        if (told != null && told.isAfter(now)) {
            throw InvalidException.of(field, "That has not happened yet.", "an instant that has passed");
        }
        return told == null ? now : told;
    }

    private Instant since(NonReleaseDecision row, @Nullable Instant told) {
        Instant at = past("at", told);
        if (at.isBefore(row.decidedAt())) {
            throw InvalidException.of("at", "That was before the decision.", "an instant after " + row.decidedAt());
        }
        return at;
    }

    private void requireLater(String field, @Nullable LocalDate due, Instant than) {
        if (due != null && !due.isAfter(day(than))) {
            throw InvalidException.of(field, "That is no later day.", "a day after " + day(than));
        }
    }

    private LocalDate day(Instant instant) {
        return instant.atZone(region.zone()).toLocalDate();
    }

    private static boolean isBlank(@Nullable String text) {
        return text == null || text.isBlank();
    }

    private NonReleaseView view(NonReleaseDecision row) {
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
        LocalDate today = day(clock.instant());
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
