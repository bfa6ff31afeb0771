package org.culvert.release.nonrelease;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** What another vet says of a decision. */
@Entity
@Table(name = "second_opinions")
class SecondOpinion extends DecisionPart {
    String vetName;
    String vetRegistration;
    boolean agrees;
    String words;

    protected SecondOpinion() {}

    SecondOpinion(UUID decisionId, NonReleaseEntries.SecondOpinionEntry entry, Instant at) {
        super(decisionId, at);
        this.vetName = entry.vetName();
        this.vetRegistration = entry.vetRegistration();
        this.agrees = entry.agrees();
        this.words = entry.words();
    }
}
