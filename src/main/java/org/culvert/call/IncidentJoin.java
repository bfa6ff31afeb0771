package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Someone's decision that two incidents are one; it stands until undone. */
@Entity
@Table(name = "incident_joins")
class IncidentJoin extends Recorded {
    UUID keptIncidentId;
    UUID joinedIncidentId;
    String reason;

    @Nullable
    Instant undoneAt;

    @Nullable
    UUID undoneBy;

    @Nullable
    String undoneReason;

    protected IncidentJoin() {}

    IncidentJoin(UUID keptIncidentId, UUID joinedIncidentId, String reason, Instant at) {
        happenedAt(at);
        this.keptIncidentId = keptIncidentId;
        this.joinedIncidentId = joinedIncidentId;
        this.reason = reason;
    }

    void undo(Instant at, UUID by, String why) {
        this.undoneAt = at;
        this.undoneBy = by;
        this.undoneReason = why;
        revisedBecause(why);
    }
}
