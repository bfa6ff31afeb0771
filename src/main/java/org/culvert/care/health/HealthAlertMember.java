package org.culvert.care.health;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** That a report is in an alert, and since when. */
@Entity
@Table(name = "health_alert_members")
class HealthAlertMember extends Recorded {
    UUID alertId;
    UUID reportId;

    protected HealthAlertMember() {}

    HealthAlertMember(UUID alertId, UUID reportId, Instant at) {
        happenedAt(at);
        this.alertId = alertId;
        this.reportId = reportId;
    }

    void moveTo(UUID other, Instant at) {
        happenedAt(at);
        alertId = other;
        revisedBecause("a report joins both alerts");
    }
}
