package org.culvert.clinic;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** What a named vet ordered, word for word. */
@Entity
@Table(name = "drug_orders")
class DrugOrder extends Recorded {
    UUID visitId;
    String drug;
    String dose;
    String route;
    String times;
    LocalDate fromDay;

    @Nullable
    LocalDate untilDay;

    boolean controlled;
    String vetName;
    String vetRegistration;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected DrugOrder() {}

    DrugOrder(UUID visitId, ClinicService.DrugOrderEntry entry, Instant at, LocalDate from) {
        happenedAt(at);
        this.visitId = visitId;
        this.drug = entry.drug();
        this.dose = entry.dose();
        this.route = entry.route();
        this.times = entry.times();
        this.fromDay = from;
        this.untilDay = entry.until();
        this.controlled = entry.controlled();
        this.vetName = entry.vetName();
        this.vetRegistration = entry.vetRegistration();
    }

    void requireStanding() {
        if (withdrawnAt != null) {
            throw new ConflictException("This order was withdrawn: " + withdrawnBecause);
        }
    }

    void withdraw(Instant at, String reason) {
        requireStanding();
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
