package org.culvert.care.placement;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Who takes which of many animals, for somebody to approve. */
@Entity
@Table(name = "placement_proposals")
class Proposal extends Recorded {
    @Nullable
    UUID fromMemberId;

    String words;
    boolean isBest;

    @Nullable
    Instant approvedAt;

    @Nullable
    UUID approvedBy;

    protected Proposal() {}

    Proposal(@Nullable UUID fromMemberId, String words, boolean isBest, Instant at) {
        happenedAt(at);
        this.fromMemberId = fromMemberId;
        this.words = words;
        this.isBest = isBest;
    }

    void approve(Instant at, UUID by) {
        if (approvedAt != null) {
            throw new ConflictException("That proposal was approved already.");
        }
        approvedAt = at;
        approvedBy = by;
    }
}
