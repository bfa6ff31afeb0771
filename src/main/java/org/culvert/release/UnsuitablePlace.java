package org.culvert.release;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** Someone found the place where an animal was found unsuitable, on a ground that a rule allows. */
@Entity
@Table(name = "unsuitabilities")
class UnsuitablePlace extends Recorded {
    UUID caseId;
    UUID placeId;
    UUID taxonId;
    String ground;
    String words;

    protected UnsuitablePlace() {}

    UnsuitablePlace(UUID caseId, UUID placeId, UUID taxonId, String ground, String words, Instant seenAt) {
        happenedAt(seenAt);
        this.caseId = caseId;
        this.placeId = placeId;
        this.taxonId = taxonId;
        this.ground = ground;
        this.words = words;
    }
}
