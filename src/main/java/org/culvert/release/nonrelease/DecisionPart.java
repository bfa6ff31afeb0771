package org.culvert.release.nonrelease;

import jakarta.persistence.MappedSuperclass;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** What came of a decision: it can be taken back, and stays to be read. */
@MappedSuperclass
abstract class DecisionPart extends Recorded {
    UUID decisionId;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected DecisionPart() {}

    DecisionPart(UUID decisionId, @Nullable Instant at) {
        happenedAt(at);
        this.decisionId = decisionId;
    }

    boolean stands() {
        return withdrawnAt == null;
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That was taken back already.");
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
