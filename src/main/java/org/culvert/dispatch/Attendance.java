package org.culvert.dispatch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** One going-out to an incident. */
@Entity
@Table(name = "attendances")
class Attendance extends Recorded {
    UUID incidentId;
    UUID gateResultId;

    @Nullable
    String policeReference;

    @Nullable
    Instant departedAt;

    @Nullable
    Instant arrivedAt;

    @Nullable
    Instant endedAt;

    @Nullable
    String outcome;

    @Nullable
    String passedOnTo;

    @Nullable
    String pouchChecked;

    @Nullable
    Integer youngFound;

    @Nullable
    Boolean carcassSigned;

    @Nullable
    Boolean carcassMoved;

    @Nullable
    UUID sceneNotesId;

    protected Attendance() {}

    Attendance(UUID incidentId, UUID gateResultId, @Nullable String policeReference, Instant offeredAt) {
        happenedAt(offeredAt);
        this.incidentId = incidentId;
        this.gateResultId = gateResultId;
        this.policeReference = policeReference;
    }

    void depart(Instant at) {
        requireOpen();
        departedAt = at;
    }

    void arrive(Instant at) {
        requireOpen();
        if (departedAt != null && at.isBefore(departedAt)) {
            throw InvalidException.of("at", "Nobody arrives before leaving.", "an instant after " + departedAt);
        }
        arrivedAt = at;
    }

    void end(Instant at, DispatchService.OutcomeEntry entry) {
        requireOpen();
        if (happenedAt() != null && at.isBefore(happenedAt())) {
            throw InvalidException.of("at", "It ended before it was offered.", "an instant after " + happenedAt());
        }
        endedAt = at;
        outcome = entry.outcome().name();
        passedOnTo = entry.passedOnTo();
        pouchChecked =
                entry.pouchChecked() == null ? null : entry.pouchChecked().name();
        youngFound = entry.youngFound();
        carcassSigned = entry.carcassSigned();
        carcassMoved = entry.carcassMoved();
    }

    private void requireOpen() {
        if (endedAt != null) {
            throw new ConflictException("This attendance has ended already: " + outcome + ".");
        }
    }
}
