package org.culvert.release.approvals;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.culvert.release.rules.Approval;
import org.jspecify.annotations.Nullable;

/** One answer; it happened when it was given. */
@Entity
@Table(name = "release_approvals")
class ReleaseApproval extends Recorded {
    @Nullable
    UUID siteId;

    @Nullable
    UUID caseId;

    String ofWhom;
    boolean given;

    @Nullable
    LocalDate untilDay;

    @Nullable
    String reference;

    @Nullable
    String askedOf;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected ReleaseApproval() {}

    ReleaseApproval(@Nullable UUID siteId, @Nullable UUID caseId, ApprovalService.ApprovalEntry entry, Instant at) {
        happenedAt(at);
        this.siteId = siteId;
        this.caseId = caseId;
        this.ofWhom = entry.of().name();
        this.given = entry.given();
        this.untilDay = entry.until();
        this.reference = entry.reference();
        this.askedOf = entry.askedOf();
    }

    Instant at() {
        return Objects.requireNonNull(happenedAt());
    }

    Approval approval() {
        return new Approval(Approval.Of.valueOf(ofWhom), given, untilDay, reference);
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
