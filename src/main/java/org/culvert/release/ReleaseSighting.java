package org.culvert.release;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A released animal was seen, or found dead. */
@Entity
@Table(name = "release_sightings")
class ReleaseSighting extends Recorded {
    UUID releaseId;
    Instant releasedAt;

    @Nullable
    UUID caseId;

    @Nullable
    UUID animalId;

    String knownBy;
    String alive;

    @Nullable
    Double decimalLatitude;

    @Nullable
    Double decimalLongitude;

    @Nullable
    @Column(name = "coordinate_uncertainty_in_meters")
    Double coordinateUncertaintyInMeters;

    @Nullable
    String words;

    @Nullable
    UUID newCaseId;

    @Nullable
    UUID incidentId;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected ReleaseSighting() {}

    ReleaseSighting(Release release, @Nullable UUID animalId, SightingService.SightingEntry entry, Instant at) {
        happenedAt(at);
        this.releaseId = release.id();
        this.releasedAt = release.at();
        this.caseId = entry.caseId();
        this.animalId = animalId;
        this.knownBy = entry.knownBy().name();
        this.alive = entry.alive().name();
        this.decimalLatitude = entry.decimalLatitude();
        this.decimalLongitude = entry.decimalLongitude();
        this.coordinateUncertaintyInMeters = entry.coordinateUncertaintyInMeters();
        this.words = entry.words();
        this.newCaseId = entry.newCaseId();
        this.incidentId = entry.incidentId();
    }

    boolean isAlive() {
        return alive.equals("yes");
    }

    boolean isDead() {
        return alive.equals("no");
    }

    boolean isGuessed() {
        return knownBy.equals(SightingService.KnownBy.guessed.name());
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That was taken back already.");
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
