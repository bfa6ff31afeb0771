package org.culvert.animal;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** How a case ended. */
@Entity
@Table(name = "fates")
class Fate extends Recorded {
    UUID caseId;
    String fate;

    @Nullable
    String method;

    @Nullable
    String approvedBy;

    boolean barbiturate;

    @Nullable
    UUID releaseId;

    /** When it was taken back that the case had ended; null while it stands. */
    @Nullable
    Instant withdrawnAt;

    protected Fate() {}

    Fate(UUID caseId, CaseEntries.FateEntry entry, @Nullable UUID releaseId, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.fate = entry.fate().name();
        this.method = entry.method();
        this.approvedBy = entry.approvedBy();
        this.barbiturate = entry.barbiturate();
        this.releaseId = releaseId;
    }

    void correct(CaseEntries.FateEntry entry, Instant at, String reason) {
        happenedAt(at);
        fate = entry.fate().name();
        method = entry.method();
        approvedBy = entry.approvedBy();
        barbiturate = entry.barbiturate();
        revisedBecause(reason);
    }

    void withdraw(Instant at, String reason) {
        withdrawnAt = at;
        revisedBecause(reason);
    }
}
