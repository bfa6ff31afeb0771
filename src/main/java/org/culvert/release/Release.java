package org.culvert.release;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** One letting go, of one animal or of a batch, at one place and time. */
@Entity
@Table(name = "releases")
class Release extends Recorded {
    @Nullable
    UUID siteId;

    double decimalLatitude;
    double decimalLongitude;

    @Column(name = "coordinate_uncertainty_in_meters")
    double coordinateUncertaintyInMeters;

    String approvedBy;

    @Nullable
    UUID releasedByMemberId;

    protected Release() {}

    Release(Target target, String approvedBy, @Nullable UUID releasedByMemberId, Instant at) {
        happenedAt(at);
        this.siteId = target.siteId();
        this.decimalLatitude = target.decimalLatitude();
        this.decimalLongitude = target.decimalLongitude();
        this.coordinateUncertaintyInMeters = target.coordinateUncertaintyInMeters();
        this.approvedBy = approvedBy;
        this.releasedByMemberId = releasedByMemberId;
    }

    void correct(ReleaseService.ReleaseCorrection correction) {
        approvedBy = Corrections.words("approvedBy", correction.approvedBy(), approvedBy, 200);
        releasedByMemberId = correction.releasedByMemberId().over(releasedByMemberId);
        revisedBecause(correction.reason());
    }
}
