package org.culvert.release;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.release.rules.Assessor;
import org.culvert.release.rules.Circumstances;
import org.culvert.release.rules.Finding;
import org.culvert.release.rules.Subject;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** One run of the rules for one case and one place, with what it was run on; never changed. */
@Entity
@Immutable
@Table(name = "assessments")
class Assessment extends Recorded {
    UUID caseId;

    @Nullable
    UUID siteId;

    String jurisdiction;
    double decimalLatitude;
    double decimalLongitude;

    @Column(name = "coordinate_uncertainty_in_meters")
    double coordinateUncertaintyInMeters;

    LocalDate assessedOn;

    @JdbcTypeCode(SqlTypes.JSON)
    Subject subject;

    /** What was known beside; null in assessments that were made before it was kept. */
    @Nullable
    @JdbcTypeCode(SqlTypes.JSON)
    Circumstances circumstances;

    @JdbcTypeCode(SqlTypes.JSON)
    List<Finding> findings;

    String overall;

    protected Assessment() {}

    Assessment(
            UUID caseId,
            Target target,
            Subject subject,
            Circumstances circumstances,
            List<Finding> findings,
            Instant at,
            LocalDate assessedOn) {
        happenedAt(at);
        this.caseId = caseId;
        this.siteId = target.siteId();
        this.jurisdiction = target.jurisdiction();
        this.decimalLatitude = target.decimalLatitude();
        this.decimalLongitude = target.decimalLongitude();
        this.coordinateUncertaintyInMeters = target.coordinateUncertaintyInMeters();
        this.assessedOn = assessedOn;
        this.subject = subject;
        this.circumstances = circumstances;
        this.findings = findings;
        this.overall = Assessor.overall(findings).name();
    }

    Target target() {
        return new Target(siteId, jurisdiction, decimalLatitude, decimalLongitude, coordinateUncertaintyInMeters);
    }
}
