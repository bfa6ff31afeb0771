package org.culvert.care.placement;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** What is kept apart from what, or in company. */
@Entity
@Table(name = "keeping_rules")
class KeepingRule extends Recorded {
    @Enumerated(EnumType.STRING)
    CarerService.Keep keep;

    UUID taxonGroupId;

    @Nullable
    UUID otherGroupId;

    @Enumerated(EnumType.STRING)
    CarerService.KeepingStrength strength;

    String words;
    String source;
    LocalDate readOn;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected KeepingRule() {}

    KeepingRule(CarerService.KeepingRuleEntry entry, UUID taxonGroupId, @Nullable UUID otherGroupId) {
        keep = entry.keep();
        this.taxonGroupId = taxonGroupId;
        this.otherGroupId = otherGroupId;
        strength = entry.strength();
        words = entry.words();
        source = entry.source();
        readOn = entry.readOn();
    }

    void withdraw(Instant at, String because) {
        if (withdrawnAt != null) {
            throw new ConflictException("That rule was withdrawn already.");
        }
        withdrawnAt = at;
        withdrawnBecause = because;
        revisedBecause(because);
    }
}
