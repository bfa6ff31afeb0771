package org.culvert.exchange.auditfile;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.Immutable;

/** That an officer read the audit file of a case, and why. */
@Entity
@Immutable
@Table(name = "inspections")
class Inspection extends Recorded {
    UUID caseId;
    String reason;

    protected Inspection() {}

    Inspection(UUID caseId, String reason, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.reason = reason;
    }
}
