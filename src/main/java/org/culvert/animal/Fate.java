package org.culvert.animal;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Objects;
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
    String authority;

    @Nullable
    String approvedBy;

    @Nullable
    String deathConfirmedBy;

    @Nullable
    Instant deathConfirmedAt;

    boolean barbiturate;

    @Nullable
    UUID releaseId;

    /** When it was taken back that the case had ended; null while it stands. */
    @Nullable
    Instant withdrawnAt;

    protected Fate() {}

    Fate(UUID caseId, CaseEntries.FateEntry entry, @Nullable UUID releaseId, Instant at) {
        this.caseId = caseId;
        this.releaseId = releaseId;
        tell(entry, at);
    }

    void correct(CaseEntries.FateEntry entry, Instant at, String reason) {
        tell(entry, at);
        revisedBecause(reason);
    }

    private void tell(CaseEntries.FateEntry entry, Instant at) {
        happenedAt(at);
        fate = entry.fate().name();
        method = entry.method();
        authority = entry.authority();
        approvedBy = entry.approvedBy();
        barbiturate = entry.barbiturate();
        deathConfirmedBy = entry.deathConfirmedBy();
        deathConfirmedAt =
                entry.deathConfirmedBy() == null ? null : Objects.requireNonNullElse(entry.deathConfirmedAt(), at);
    }

    void withdraw(Instant at, String reason) {
        withdrawnAt = at;
        revisedBecause(reason);
    }
}
