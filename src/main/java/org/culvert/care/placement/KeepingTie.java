package org.culvert.care.placement;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Somebody says that an animal is kept together with another, or goes alone. */
@Entity
@Table(name = "keeping_ties")
class KeepingTie extends Recorded {
    UUID caseId;
    String keep;

    @Nullable
    UUID otherCaseId;

    String words;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected KeepingTie() {}

    KeepingTie(UUID caseId, KinService.KeepingTieEntry entry, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.keep = entry.keep().name();
        this.otherCaseId = entry.otherCaseId();
        this.words = entry.words();
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That was taken back already: " + withdrawnBecause);
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
