package org.culvert.clinic;

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

/** One attendance at a clinic. */
@Entity
@Table(name = "visits")
class Visit extends Recorded {
    UUID caseId;
    UUID organisationId;
    boolean ofBody;

    @Nullable
    Double weightGrams;

    @Nullable
    Integer bodyCondition;

    String gravid;

    @Nullable
    String diagnosis;

    @Nullable
    String causeOfDeath;

    @Nullable
    Instant leftAt;

    @Nullable
    Instant stabilisedAt;

    protected Visit() {}

    static Visit of(ClinicService.VisitEntry entry, boolean ofBody, Instant arrivedAt) {
        var visit = new Visit();
        visit.happenedAt(arrivedAt);
        visit.caseId = entry.caseId();
        visit.organisationId = entry.clinicId();
        visit.ofBody = ofBody;
        visit.weightGrams = entry.weightGrams();
        visit.bodyCondition = entry.bodyCondition();
        visit.gravid = entry.gravid().name();
        visit.diagnosis = entry.diagnosis();
        visit.causeOfDeath = entry.causeOfDeath();
        visit.stabilisedAt = entry.stabilisedAt();
        visit.requireStableAfterArrival(arrivedAt);
        return visit;
    }

    void end(Instant at) {
        if (leftAt != null) {
            throw new ConflictException("That visit has ended already.");
        }
        if (happenedAt() != null && at.isBefore(happenedAt())) {
            throw InvalidException.of("at", "It left before it came.", "an instant after " + happenedAt());
        }
        leftAt = at;
    }

    private void requireStableAfterArrival(Instant arrived) {
        if (stabilisedAt != null && stabilisedAt.isBefore(arrived)) {
            throw InvalidException.of("stabilisedAt", "It was stable before it came.", "an instant after " + arrived);
        }
    }

    void correct(ClinicCorrections.VisitCorrection correction, Clock clock) {
        Instant arrived = Corrections.known(
                "arrivedAt", correction.arrivedAt(), Objects.requireNonNull(happenedAt(), "a visit has a time"), clock);
        happenedAt(arrived);
        leftAt = Corrections.past("leftAt", correction.leftAt(), leftAt, clock);
        weightGrams = correction.weightGrams().over(weightGrams);
        bodyCondition = correction.bodyCondition().over(bodyCondition);
        gravid = Corrections.name("gravid", correction.gravid(), gravid);
        diagnosis = Corrections.text("diagnosis", correction.diagnosis(), diagnosis, 4000);
        causeOfDeath = Corrections.text("causeOfDeath", correction.causeOfDeath(), causeOfDeath, 4000);
        stabilisedAt = Corrections.past("stabilisedAt", correction.stabilisedAt(), stabilisedAt, clock);
        revisedBecause(correction.reason());
        requireStableAfterArrival(arrived);
        if (leftAt != null && leftAt.isBefore(arrived)) {
            throw InvalidException.of("leftAt", "It left before it came.", "an instant after " + arrived);
        }
        if (bodyCondition != null && (bodyCondition < 1 || bodyCondition > 5)) {
            throw InvalidException.of("bodyCondition", "That is no body condition.", "1 (emaciated) to 5 (fat)");
        }
        if (weightGrams != null && !(weightGrams > 0)) {
            throw InvalidException.of("weightGrams", "That is no weight.", "more than 0, in grams");
        }
    }
}
