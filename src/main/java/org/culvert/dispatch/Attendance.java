package org.culvert.dispatch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
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

    void requireOpen() {
        if (endedAt != null) {
            throw new ConflictException("This attendance has ended already: " + outcome + ".");
        }
    }

    void correct(DispatchService.AttendanceCorrection correction, Clock clock) {
        happenedAt(Corrections.known(
                "offeredAt",
                correction.offeredAt(),
                Objects.requireNonNull(happenedAt(), "an attendance has a time"),
                clock));
        departedAt = Corrections.past("departedAt", correction.departedAt(), departedAt, clock);
        arrivedAt = Corrections.past("arrivedAt", correction.arrivedAt(), arrivedAt, clock);
        endedAt = Corrections.past("endedAt", correction.endedAt(), endedAt, clock);
        outcome = Corrections.nameOrNone(correction.outcome(), outcome);
        passedOnTo = Corrections.text("passedOnTo", correction.passedOnTo(), passedOnTo, 200);
        policeReference = Corrections.text("policeReference", correction.policeReference(), policeReference, 200);
        pouchChecked = Corrections.nameOrNone(correction.pouchChecked(), pouchChecked);
        youngFound = correction.youngFound().over(youngFound);
        carcassSigned = correction.carcassSigned().over(carcassSigned);
        carcassMoved = correction.carcassMoved().over(carcassMoved);
        revisedBecause(correction.reason());
        requireForwards();
    }

    private void requireForwards() {
        if ((outcome == null) != (endedAt == null)) {
            throw InvalidException.of("endedAt", "An outcome and its time go together.", "both, or neither");
        }
        if (departedAt != null && arrivedAt != null && arrivedAt.isBefore(departedAt)) {
            throw InvalidException.of("arrivedAt", "Nobody arrives before leaving.", "an instant after " + departedAt);
        }
        if (endedAt != null && endedAt.isBefore(happenedAt())) {
            throw InvalidException.of("endedAt", "It ended before it was offered.", "an instant after " + happenedAt());
        }
        if (youngFound != null && youngFound < 0) {
            throw InvalidException.of("youngFound", "That is no number of young.", "0 or more");
        }
    }
}
