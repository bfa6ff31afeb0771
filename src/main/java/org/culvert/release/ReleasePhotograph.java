package org.culvert.release;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A photograph of a release; it happened when it was taken. */
@Entity
@Table(name = "release_photographs")
class ReleasePhotograph extends Recorded {
    UUID releaseId;
    UUID fileId;

    @Nullable
    String caption;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected ReleasePhotograph() {}

    ReleasePhotograph(UUID releaseId, UUID fileId, @Nullable String caption, @Nullable Instant takenAt) {
        happenedAt(takenAt);
        this.releaseId = releaseId;
        this.fileId = fileId;
        this.caption = caption;
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That photograph was taken back already.");
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
