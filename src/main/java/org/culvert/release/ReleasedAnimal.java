package org.culvert.release;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** One animal of a release, by its case, with the assessment it went on. */
@Entity
@Table(name = "released_animals")
class ReleasedAnimal extends Recorded {
    UUID releaseId;
    UUID caseId;
    UUID assessmentId;

    protected ReleasedAnimal() {}

    ReleasedAnimal(UUID releaseId, UUID caseId, UUID assessmentId, Instant at) {
        happenedAt(at);
        this.releaseId = releaseId;
        this.caseId = caseId;
        this.assessmentId = assessmentId;
    }
}
