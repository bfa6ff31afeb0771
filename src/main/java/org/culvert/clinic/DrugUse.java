package org.culvert.clinic;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A drug that was given, by an order. */
@Entity
@Table(name = "drug_uses")
class DrugUse extends Recorded {
    UUID orderId;
    boolean controlled;
    String amount;
    String givenBy;

    @Nullable
    String batch;

    @Nullable
    LocalDate expiresOn;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected DrugUse() {}

    DrugUse(DrugOrder order, ClinicService.DrugUseEntry entry, Instant at) {
        happenedAt(at);
        this.orderId = order.id();
        this.controlled = order.controlled;
        this.amount = entry.amount();
        this.givenBy = entry.givenBy();
        this.batch = entry.batch();
        this.expiresOn = entry.expiresOn();
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That this was given was taken back: " + withdrawnBecause);
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
