package org.culvert.animal;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.Generated;
import org.hibernate.generator.EventType;
import org.jspecify.annotations.Nullable;

/** One animal's one time with the network, from being found to how it ended. */
@Entity
@Table(name = "cases")
class Case extends Recorded {
    @Generated(event = EventType.INSERT)
    @Column(insertable = false, updatable = false)
    long number;

    UUID animalId;
    UUID incidentId;

    @Nullable
    UUID attendanceId;

    @Nullable
    UUID foundPlaceId;

    String origin;
    boolean dependentYoung;
    String cause;

    protected Case() {}

    Case(UUID animalId, UUID incidentId, @Nullable UUID attendanceId, String cause, Instant foundAt) {
        happenedAt(foundAt);
        this.animalId = animalId;
        this.incidentId = incidentId;
        this.attendanceId = attendanceId;
        this.cause = cause;
        this.origin = "unknown";
    }

    /** Says where it was found; young and hatchlings have their mother's found place. */
    void foundAt(@Nullable UUID placeId, boolean ofMother) {
        foundPlaceId = placeId;
        origin = placeId == null ? "unknown" : ofMother ? "ofMother" : "found";
    }

    /** Corrects all but the found place, which is read apart. */
    void correct(CaseCorrections.CaseCorrection correction, Clock clock) {
        happenedAt(Corrections.known(
                "foundAt", correction.foundAt(), Objects.requireNonNull(happenedAt(), "a case has a time"), clock));
        cause = correction.cause().over("cause", cause);
        dependentYoung = correction.dependentYoung().over("dependentYoung", dependentYoung);
        attendanceId = correction.attendanceId().over(attendanceId);
        revisedBecause(correction.reason());
    }
}
