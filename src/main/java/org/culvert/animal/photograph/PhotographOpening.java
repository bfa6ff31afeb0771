package org.culvert.animal.photograph;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Arrays;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.Immutable;

/** That somebody opened an original, why, and what its content was then. */
@Entity
@Immutable
@Table(name = "photograph_openings")
class PhotographOpening extends Recorded {
    UUID photographId;
    String reason;
    byte[] sealedSha256;
    byte[] foundSha256;

    protected PhotographOpening() {}

    PhotographOpening(UUID photographId, String reason, byte[] sealedSha256, byte[] foundSha256, Instant at) {
        happenedAt(at);
        this.photographId = photographId;
        this.reason = reason;
        this.sealedSha256 = sealedSha256.clone();
        this.foundSha256 = foundSha256.clone();
    }

    boolean sealHolds() {
        return Arrays.equals(sealedSha256, foundSha256);
    }
}
