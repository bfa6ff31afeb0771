package org.culvert.release.nonrelease;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;

/** Somebody looked at how an animal is kept that may not go back. */
@Entity
@Table(name = "welfare_reviews")
class WelfareReview extends DecisionPart {
    Instant decidedAt;
    String reviewedBy;
    String words;
    LocalDate nextDueOn;

    protected WelfareReview() {}

    WelfareReview(NonReleaseDecision decision, NonReleaseEntries.WelfareReviewEntry entry, Instant at) {
        super(decision.id(), at);
        this.decidedAt = decision.decidedAt();
        this.reviewedBy = entry.reviewedBy();
        this.words = entry.words();
        this.nextDueOn = entry.nextDueOn();
    }
}
