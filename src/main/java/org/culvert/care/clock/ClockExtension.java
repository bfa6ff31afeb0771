package org.culvert.care.clock;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Moves the end of a limit for one case; it happened when it was granted. */
@Entity
@Table(name = "clock_extensions")
class ClockExtension extends Recorded {
    UUID caseId;
    UUID limitId;
    Instant untilAt;

    @Nullable
    String ground;

    @Nullable
    String orderAuthority;

    @Nullable
    String orderNumber;

    @Nullable
    LocalDate orderDate;

    @Nullable
    String orderWords;

    String grantedBy;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected ClockExtension() {}

    ClockExtension(
            UUID caseId,
            UUID limitId,
            Instant until,
            @Nullable String ground,
            ClockEntries.@Nullable ClockOrder order,
            String grantedBy,
            Instant grantedAt) {
        happenedAt(grantedAt);
        this.caseId = caseId;
        this.limitId = limitId;
        this.untilAt = until;
        this.grantedBy = grantedBy;
        because(ground, order);
    }

    private void because(@Nullable String ground, ClockEntries.@Nullable ClockOrder order) {
        this.ground = ground;
        orderAuthority = order == null ? null : order.authority();
        orderNumber = order == null ? null : order.number();
        orderDate = order == null ? null : order.date();
        orderWords = order == null ? null : order.words();
    }

    Instant grantedAt() {
        return Objects.requireNonNull(happenedAt());
    }

    ClockEntries.@Nullable ClockOrder order() {
        return orderNumber == null
                ? null
                : new ClockEntries.ClockOrder(
                        Objects.requireNonNull(orderAuthority),
                        orderNumber,
                        Objects.requireNonNull(orderDate),
                        Objects.requireNonNull(orderWords));
    }

    void correct(
            Instant until,
            @Nullable String ground,
            ClockEntries.@Nullable ClockOrder order,
            String grantedBy,
            Instant grantedAt,
            String reason) {
        requireStanding();
        happenedAt(grantedAt);
        untilAt = until;
        this.grantedBy = grantedBy;
        because(ground, order);
        revisedBecause(reason);
    }

    void withdraw(Instant at, String reason) {
        requireStanding();
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }

    private void requireStanding() {
        if (withdrawnAt != null) {
            throw new ConflictException("That was withdrawn already: " + withdrawnBecause);
        }
    }
}
