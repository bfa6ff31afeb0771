package org.culvert.release.fitness;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** One check as it was signed; it happened when the animal was looked at. */
@Entity
@Immutable
@Table(name = "fitness_checks")
class SignedCheck extends Recorded {
    UUID caseId;

    @Nullable
    UUID signedByMemberId;

    @Nullable
    String vetName;

    String vetRegistration;

    /** Answers by aspect. */
    @JdbcTypeCode(SqlTypes.JSON)
    Map<String, String> items;

    String housedWithPets;

    @Nullable
    String words;

    protected SignedCheck() {}

    SignedCheck(
            UUID caseId,
            FitnessService.CheckEntry entry,
            String vetRegistration,
            Map<String, String> items,
            Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.signedByMemberId = entry.signedByMemberId();
        this.vetName = entry.vetName();
        this.vetRegistration = vetRegistration;
        this.items = items;
        this.housedWithPets = entry.housedWithPets().name();
        this.words = entry.words();
    }

    Instant at() {
        return Objects.requireNonNull(happenedAt());
    }
}
