package org.culvert.care.day;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** From when on a coordinator hears of tasks that were missed. */
@Entity
@Table(name = "missed_task_rules")
class MissedTaskRule extends Recorded {
    @Nullable
    UUID taxonGroupId;

    @Nullable
    Integer hoursOverdue;

    @Nullable
    @Column(name = "misses_in_a_row")
    Integer missesInARow;

    @Nullable
    String words;

    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected MissedTaskRule() {}

    MissedTaskRule(MissedTaskService.MissedTaskRuleEntry entry, @Nullable UUID taxonGroupId, LocalDate validFrom) {
        this.taxonGroupId = taxonGroupId;
        this.hoursOverdue = entry.hoursOverdue();
        this.missesInARow = entry.missesInARow();
        this.words = entry.words();
        this.validFrom = validFrom;
    }

    boolean holdsOn(LocalDate day) {
        return !day.isBefore(validFrom) && (validTo == null || day.isBefore(validTo));
    }

    boolean tells(long hours, int inARow) {
        return (hoursOverdue != null && hours >= hoursOverdue) || (missesInARow != null && inARow >= missesInARow);
    }

    void end(LocalDate on, String reason) {
        if (validTo != null && !on.isBefore(validTo)) {
            throw new ConflictException("That rule holds until " + validTo + " only.");
        }
        validTo = on;
        revisedBecause(reason);
    }
}
