package org.culvert.care.placement;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Days on which a carer takes nothing in; why is nobody's business. */
@Entity
@Table(name = "carer_absences")
class Absence extends Recorded {
    UUID memberId;
    LocalDate fromDay;
    LocalDate untilDay;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected Absence() {}

    Absence(UUID memberId, LocalDate fromDay, LocalDate untilDay) {
        this.memberId = memberId;
        this.fromDay = fromDay;
        this.untilDay = untilDay;
    }

    void withdraw(Instant at, String because) {
        if (withdrawnAt != null) {
            throw new ConflictException("That absence was withdrawn already.");
        }
        withdrawnAt = at;
        withdrawnBecause = because;
        revisedBecause(because);
    }
}
