package org.culvert.release.holds;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.culvert.release.rules.Hold;
import org.jspecify.annotations.Nullable;

/** A hold on the animal of a case, or on its body; it happened when it began. */
@Entity
@Table(name = "holds")
class CaseHold extends Recorded {
    UUID caseId;
    String kind;

    @Nullable
    String askedBy;

    @Nullable
    String reference;

    @Nullable
    Instant clearedAt;

    @Nullable
    String clearedBy;

    @Nullable
    String clearedByName;

    @Nullable
    String clearedReference;

    protected CaseHold() {}

    CaseHold(UUID caseId, HoldService.HoldEntry entry, Instant since) {
        happenedAt(since);
        this.caseId = caseId;
        this.kind = entry.kind().name();
        this.askedBy = entry.askedBy();
        this.reference = entry.reference();
    }

    Instant since() {
        return Objects.requireNonNull(happenedAt());
    }

    Hold.Kind kind() {
        return Hold.Kind.valueOf(kind);
    }

    void correct(HoldService.HoldCorrection correction) {
        requireUncleared();
        askedBy = Corrections.text("askedBy", correction.askedBy(), askedBy, HoldService.LONGEST_NAME);
        reference = Corrections.text("reference", correction.reference(), reference, HoldService.LONGEST_NAME);
        HoldService.requireAsker(kind(), askedBy);
        revisedBecause(correction.reason());
    }

    void clear(HoldService.HoldClearing clearing, Instant at) {
        requireUncleared();
        if (!at.isAfter(since())) {
            throw InvalidException.of("at", "It would be cleared before it began.", "an instant after " + since());
        }
        clearedAt = at;
        clearedBy = clearing.by().name();
        clearedByName = clearing.name();
        clearedReference = clearing.reference();
        revisedBecause(null);
    }

    private void requireUncleared() {
        if (clearedAt != null) {
            throw new ConflictException("That hold was cleared at " + clearedAt + " by " + clearedByName
                    + ". A new concern is a new hold.");
        }
    }
}
