package org.culvert.animal;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** Where the animal of a case is from an instant on. */
@Entity
@Table(name = "whereabouts")
class Whereabouts extends Recorded {
    UUID caseId;

    @Nullable
    UUID organisationId;

    @Nullable
    UUID memberId;

    @Nullable
    String words;

    protected Whereabouts() {}

    Whereabouts(UUID caseId, CaseEntries.WhereaboutsEntry entry, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.organisationId = entry.organisationId();
        this.memberId = entry.memberId();
        this.words = entry.words();
    }

    void correct(CaseCorrections.WhereaboutsCorrection correction, Clock clock) {
        organisationId = correction.organisationId().over(organisationId);
        memberId = correction.memberId().over(memberId);
        words = Corrections.text("words", correction.words(), words, 500);
        happenedAt(Corrections.past("since", correction.since(), happenedAt(), clock));
        revisedBecause(correction.reason());
    }
}
