package org.culvert.care.clock;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** An authority was told what a limit asks to be told; it happened when it was told. */
@Entity
@Table(name = "clock_notices")
class ClockNotice extends Recorded {
    UUID caseId;
    UUID limitId;
    String told;
    String how;

    @Nullable
    String reference;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected ClockNotice() {}

    ClockNotice(UUID caseId, ClockEntries.ClockNoticeEntry entry, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.limitId = entry.limitId();
        this.told = entry.told();
        this.how = entry.how().name();
        this.reference = entry.reference();
    }

    Instant at() {
        return Objects.requireNonNull(happenedAt());
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That was withdrawn already: " + withdrawnBecause);
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
