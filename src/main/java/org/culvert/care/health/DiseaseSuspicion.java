package org.culvert.care.health;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** A suspicion of a disease that must be notified, of one animal; it happened when the signs were seen. */
@Entity
@Table(name = "disease_suspicions")
class DiseaseSuspicion extends Recorded {
    UUID caseId;
    UUID conditionId;
    UUID holdId;
    String signs;
    String suspectedBy;

    @Nullable
    Instant toldAt;

    @Nullable
    String toldTo;

    @Nullable
    String toldBy;

    @Nullable
    String toldReference;

    protected DiseaseSuspicion() {}

    DiseaseSuspicion(UUID caseId, UUID holdId, SuspicionEntries.SuspicionEntry entry, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.holdId = holdId;
        this.conditionId = entry.conditionId();
        this.signs = entry.signs();
        this.suspectedBy = entry.suspectedBy();
    }

    void correct(SuspicionEntries.SuspicionCorrection correction) {
        conditionId = correction.conditionId().over("conditionId", conditionId);
        signs = Corrections.words("signs", correction.signs(), signs, SuspicionEntries.LONGEST_WORDS);
        suspectedBy =
                Corrections.words("suspectedBy", correction.suspectedBy(), suspectedBy, SuspicionEntries.LONGEST_NAME);
        toldReference = Corrections.text(
                "toldReference", correction.toldReference(), toldReference, SuspicionEntries.LONGEST_NAME);
        if (toldReference != null && toldAt == null) {
            throw InvalidException.of("toldReference", "Nobody was told yet.", "POST …/telling, with when and whom");
        }
        revisedBecause(correction.reason());
    }

    void tell(SuspicionEntries.SuspicionTelling telling, Instant at) {
        if (toldAt != null) {
            throw new ConflictException("That was told already: " + toldTo + " at " + toldAt + ".");
        }
        told(telling, at);
        revisedBecause(null);
    }

    void told(SuspicionEntries.SuspicionTelling telling, Instant at) {
        if (at.isBefore(Objects.requireNonNull(happenedAt()))) {
            throw InvalidException.of("at", "That was before it was seen.", "an instant from " + happenedAt() + " on");
        }
        toldAt = at;
        toldTo = telling.to();
        toldBy = telling.by();
        toldReference = telling.reference();
    }
}
