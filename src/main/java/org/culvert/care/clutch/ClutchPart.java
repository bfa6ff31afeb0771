package org.culvert.care.clutch;

import jakarta.persistence.MappedSuperclass;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** What was entered of a clutch, and may be taken back with a reason. */
@MappedSuperclass
abstract class ClutchPart extends Recorded {
    UUID clutchId;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected ClutchPart() {}

    ClutchPart(UUID clutchId, Instant at) {
        happenedAt(at);
        this.clutchId = clutchId;
    }

    Instant at() {
        return Objects.requireNonNull(happenedAt(), "what is entered of a clutch has a time");
    }

    boolean stands() {
        return withdrawnAt == null;
    }

    void requireStanding() {
        if (withdrawnAt != null) {
            throw new ConflictException("This was taken back: " + withdrawnBecause);
        }
    }

    void withdraw(Instant at, String reason) {
        requireStanding();
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
