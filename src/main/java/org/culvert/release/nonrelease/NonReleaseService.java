package org.culvert.release.nonrelease;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
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
import org.culvert.release.nonrelease.NonReleaseEntries.OutcomeKind;
import org.jspecify.annotations.Nullable;

/** Keeps decisions that an animal may not go back, and what comes of them. */
@ApplicationScoped
public class NonReleaseService {
    private final NonReleaseRepositories.Decisions decisions;
    private final NonReleaseRepositories.SecondOpinions opinions;
    private final NonReleaseRepositories.AuthorityNotices notices;
    private final NonReleaseRepositories.PermitsToKeep permits;
    private final NonReleaseRepositories.WelfareReviews reviews;
    private final NonReleaseRepositories.Outcomes outcomes;
    private final NonReleaseReader reader;
    private final KeptFiles files;
    private final CaseService cases;
    private final RegionService region;
    private final Clock clock;

    NonReleaseService(
            NonReleaseRepositories.Decisions decisions,
            NonReleaseRepositories.SecondOpinions opinions,
            NonReleaseRepositories.AuthorityNotices notices,
            NonReleaseRepositories.PermitsToKeep permits,
            NonReleaseRepositories.WelfareReviews reviews,
            NonReleaseRepositories.Outcomes outcomes,
            NonReleaseReader reader,
            KeptFiles files,
            CaseService cases,
            RegionService region,
            Clock clock) {
        this.decisions = decisions;
        this.opinions = opinions;
        this.notices = notices;
        this.permits = permits;
        this.reviews = reviews;
        this.outcomes = outcomes;
        this.reader = reader;
        this.files = files;
        this.cases = cases;
        this.region = region;
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
        return reader.view(row);
    }

    @Transactional
    public NonReleaseView getDecision(UUID id) {
        return reader.view(require(id));
    }

    /** Decisions of a case, newest first, those that were withdrawn among them. */
    @Transactional
    public List<NonReleaseView> listOfCase(UUID caseId) {
        cases.getCase(caseId);
        return decisions.list("caseId = ?1 order by id desc", caseId).stream()
                .map(reader::view)
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
                reader::view,
                row -> row.id().toString());
    }

    @Transactional
    public NonReleaseView correct(UUID id, NonReleaseEntries.NonReleaseCorrection correction) {
        NonReleaseDecision row = requireStanding(id);
        row.correct(correction);
        requireLater("reviewDueOn", row.reviewDueOn, row.decidedAt());
        decisions.flush();
        return reader.view(row);
    }

    /** Takes a decision back: the animal may go back after all. */
    @Transactional
    public NonReleaseView withdraw(UUID id, String reason) {
        NonReleaseDecision row = require(id);
        cases.hold(List.of(row.caseId));
        row.withdraw(clock.instant(), reason);
        decisions.flush();
        return reader.view(row);
    }

    @Transactional
    public NonReleaseView addOpinion(UUID id, NonReleaseEntries.SecondOpinionEntry entry) {
        NonReleaseDecision row = requireStanding(id);
        opinions.persistAndFlush(new SecondOpinion(id, entry, since(row, entry.at())));
        return reader.view(row);
    }

    /** Records that an authority was told; that may have been before the decision. */
    @Transactional
    public NonReleaseView addNotice(UUID id, NonReleaseEntries.AuthorityNoticeEntry entry) {
        NonReleaseDecision row = requireStanding(id);
        notices.persistAndFlush(new AuthorityNotice(id, entry, past("at", entry.at())));
        return reader.view(row);
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
        return reader.view(row);
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
        return reader.view(row);
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
        return reader.view(row);
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
        return reader.view(row);
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
                        + (reader.isDisputed(row) ? ", which a second opinion disputes" : "")
                        + ". Only withdrawing that decision, with a reason, lifts it.")
                .toList();
        if (!reasons.isEmpty()) {
            throw new RefusedException("A decision not to release stands in the way of this release.", reasons);
        }
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
}
