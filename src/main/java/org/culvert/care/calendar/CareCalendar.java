package org.culvert.care.calendar;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** An address at which a member's tasks are read; it happened when it was made. */
@Entity
@Table(name = "care_calendars")
class CareCalendar extends Recorded {
    UUID memberId;

    /** SHA-256 of the secret in the address. */
    byte[] secret;

    @Nullable
    Instant revokedAt;

    protected CareCalendar() {}

    CareCalendar(UUID memberId, byte[] secret, Instant at) {
        happenedAt(at);
        this.memberId = memberId;
        this.secret = secret;
    }

    void revoke(Instant at) {
        if (revokedAt != null) {
            throw new ConflictException("That address was revoked already.");
        }
        revokedAt = at;
        revisedBecause("The address was revoked.");
    }
}
