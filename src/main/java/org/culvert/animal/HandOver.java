package org.culvert.animal;

import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** An animal offered to another holder; pending until the taker accepts or refuses. */
@Entity
@Table(name = "hand_overs")
class HandOver extends Recorded {
    UUID caseId;

    @Embedded
    @AttributeOverride(name = "memberId", column = @Column(name = "taker_member_id"))
    @AttributeOverride(name = "organisationId", column = @Column(name = "taker_organisation_id"))
    @AttributeOverride(name = "personId", column = @Column(name = "taker_person_id"))
    Holder taker;

    @Embedded
    @Nullable
    Licence licence;

    @Nullable
    Instant acceptedAt;

    @Nullable
    Instant refusedAt;

    @Nullable
    String refusedReason;

    protected HandOver() {}

    HandOver(UUID caseId, Holder taker, @Nullable Licence licence, Instant offeredAt) {
        happenedAt(offeredAt);
        this.caseId = caseId;
        this.taker = taker;
        this.licence = licence;
    }

    void accept(Instant at) {
        requirePending();
        acceptedAt = at;
    }

    void refuse(Instant at, String reason) {
        requirePending();
        refusedAt = at;
        refusedReason = reason;
    }

    private void requirePending() {
        if (acceptedAt != null || refusedAt != null) {
            throw new ConflictException("That hand-over is settled already.");
        }
    }
}
