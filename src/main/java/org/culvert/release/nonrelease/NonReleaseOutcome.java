package org.culvert.release.nonrelease;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What is to become of an animal that may not go back. */
@Entity
@Table(name = "non_release_outcomes")
class NonReleaseOutcome extends DecisionPart {
    String outcome;

    @Nullable
    String placedWith;

    @Nullable
    UUID permitToKeepId;

    @Nullable
    String approvedBy;

    @Nullable
    String words;

    protected NonReleaseOutcome() {}

    NonReleaseOutcome(UUID decisionId, NonReleaseEntries.OutcomeEntry entry, Instant at) {
        super(decisionId, at);
        this.outcome = entry.outcome().name();
        this.placedWith = entry.outcome() == NonReleaseEntries.OutcomeKind.placement ? entry.placedWith() : null;
        this.permitToKeepId = entry.permitToKeepId();
        this.approvedBy = entry.approvedBy();
        this.words = entry.words();
    }

    boolean is(NonReleaseEntries.OutcomeKind kind) {
        return outcome.equals(kind.name());
    }
}
