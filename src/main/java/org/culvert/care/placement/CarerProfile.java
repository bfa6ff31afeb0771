package org.culvert.care.placement;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.culvert.roster.HolderStandings;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** What one carer says of what they can take. */
@Entity
@Table(name = "carer_profiles")
class CarerProfile extends Recorded {
    UUID memberId;

    @Nullable
    String premises;

    @Nullable
    UUID supervisorId;

    /** The first and the last day of supervision; null: not told. */
    @Nullable
    LocalDate supervisedFrom;

    @Nullable
    LocalDate supervisedUntil;

    @Nullable
    Integer places;

    @JdbcTypeCode(SqlTypes.JSON)
    Map<String, Integer> placesByGroup;

    protected CarerProfile() {}

    CarerProfile(CarerService.CarerProfileEntry entry) {
        memberId = entry.memberId();
        premises = entry.premises();
        supervisorId = entry.supervisorId();
        supervisedFrom = entry.supervisedFrom();
        supervisedUntil = entry.supervisedUntil();
        places = entry.places();
        placesByGroup = entry.placesByGroup();
    }

    HolderStandings.Standing standingOn(LocalDate day) {
        boolean supervised = (supervisedFrom == null || !day.isBefore(supervisedFrom))
                && (supervisedUntil == null || !day.isAfter(supervisedUntil));
        return new HolderStandings.Standing(premises, supervised ? supervisorId : null);
    }

    void correct(CarerService.CarerProfileCorrection correction) {
        premises = Corrections.text("premises", correction.premises(), premises, 200);
        supervisorId = correction.supervisorId().over(supervisorId);
        supervisedFrom = correction.supervisedFrom().over(supervisedFrom);
        supervisedUntil = correction.supervisedUntil().over(supervisedUntil);
        places = correction.places().over(places);
        placesByGroup = Objects.requireNonNullElse(correction.placesByGroup().over(placesByGroup), Map.of());
        revisedBecause(correction.reason());
    }
}
