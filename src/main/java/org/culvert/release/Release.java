package org.culvert.release;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
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

    /** Keys of the warnings that were read before it. */
    @JdbcTypeCode(SqlTypes.JSON)
    List<String> warningsRead;

    @Nullable
    String weather;

    @Nullable
    String light;

    @Nullable
    String manner;

    /** The last day on which the animals are meant to be fed at the place. */
    @Nullable
    LocalDate supportFeedingUntil;

    @Nullable
    Instant supportFeedingEndedAt;

    @Nullable
    String supportFeedingEndedBy;

    @Nullable
    String othersPresent;

    /** Whether they were raised together; null: nobody knows. */
    @Nullable
    Boolean raisedTogether;

    protected Release() {}

    Release(Target target, ReleaseEntries.ReleaseEntry entry, Instant at) {
        happenedAt(at);
        this.siteId = target.siteId();
        this.decimalLatitude = target.decimalLatitude();
        this.decimalLongitude = target.decimalLongitude();
        this.coordinateUncertaintyInMeters = target.coordinateUncertaintyInMeters();
        this.approvedBy = entry.approvedBy();
        this.releasedByMemberId = entry.releasedByMemberId();
        this.warningsRead = entry.warningsRead();
        this.weather = entry.weather();
        this.light = entry.light() == null ? null : entry.light().name();
        this.manner = entry.manner() == null ? null : entry.manner().name();
        this.supportFeedingUntil = entry.supportFeedingUntil();
        this.othersPresent = entry.othersPresent();
        this.raisedTogether = entry.raisedTogether();
    }

    Instant at() {
        return Objects.requireNonNull(happenedAt());
    }

    boolean isSoft() {
        return ReleaseEntries.Manner.soft.name().equals(manner);
    }

    void endSupportFeeding(Instant at, String by) {
        if (!isSoft()) {
            throw new ConflictException("This was no soft release, so nobody feeds animals there.");
        }
        if (supportFeedingEndedAt != null) {
            throw new ConflictException("The support feeding has ended already.");
        }
        supportFeedingEndedAt = at;
        supportFeedingEndedBy = by;
    }

    void correct(ReleaseEntries.ReleaseCorrection correction, Clock clock) {
        approvedBy = Corrections.words("approvedBy", correction.approvedBy(), approvedBy, 200);
        releasedByMemberId = correction.releasedByMemberId().over(releasedByMemberId);
        weather = Corrections.text("weather", correction.weather(), weather, 500);
        light = Corrections.nameOrNone(correction.light(), light);
        manner = Corrections.nameOrNone(correction.manner(), manner);
        supportFeedingUntil = correction.supportFeedingUntil().over(supportFeedingUntil);
        supportFeedingEndedAt = Corrections.past(
                "supportFeedingEndedAt", correction.supportFeedingEndedAt(), supportFeedingEndedAt, clock);
        supportFeedingEndedBy = Corrections.text(
                "supportFeedingEndedBy", correction.supportFeedingEndedBy(), supportFeedingEndedBy, 200);
        othersPresent = Corrections.text("othersPresent", correction.othersPresent(), othersPresent, 2000);
        raisedTogether = correction.raisedTogether().over(raisedTogether);
        revisedBecause(correction.reason());
    }
}
