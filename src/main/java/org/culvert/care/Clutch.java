package org.culvert.care;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Eggs of one mother. */
@Entity
@Table(name = "clutches")
class Clutch extends Recorded {
    UUID motherCaseId;

    @Nullable
    UUID visitId;

    protected Clutch() {}

    Clutch(UUID motherCaseId, @Nullable UUID visitId, Instant at) {
        happenedAt(at);
        this.motherCaseId = motherCaseId;
        this.visitId = visitId;
    }
}
