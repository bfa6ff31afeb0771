package org.culvert.release;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** One animal of a release, by its case, with the assessment it went on. */
@Entity
@Table(name = "released_animals")
class ReleasedAnimal extends Recorded {
    UUID releaseId;
    UUID caseId;
    UUID assessmentId;

    /** When it was taken back that it was let go; null while it stands. */
    @Nullable
    Instant withdrawnAt;

    protected ReleasedAnimal() {}

    ReleasedAnimal(UUID releaseId, UUID caseId, UUID assessmentId, Instant at) {
        happenedAt(at);
        this.releaseId = releaseId;
        this.caseId = caseId;
        this.assessmentId = assessmentId;
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That was taken back already.");
        }
        withdrawnAt = at;
        revisedBecause(reason);
    }
}
