package org.culvert.care.growth;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A named vet takes a table as it stands; it happened when it was adopted. */
@Entity
@Table(name = "growth_table_adoptions")
class GrowthTableAdoption extends Recorded {
    UUID tableId;
    int tableRevision;
    String vetName;
    String vetRegistration;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected GrowthTableAdoption() {}

    GrowthTableAdoption(GrowthTable table, GrowthEntries.TableAdoptionEntry entry, Instant at) {
        happenedAt(at);
        this.tableId = table.id();
        this.tableRevision = table.revision();
        this.vetName = entry.vetName();
        this.vetRegistration = entry.vetRegistration();
    }

    boolean standsFor(GrowthTable table) {
        return withdrawnAt == null && tableId.equals(table.id()) && tableRevision == table.revision();
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That adoption was taken back already: " + withdrawnBecause);
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
