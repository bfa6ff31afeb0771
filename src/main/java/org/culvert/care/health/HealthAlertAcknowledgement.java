package org.culvert.care.health;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** That somebody has read an alert, and what they say to it. */
@Entity
@Table(name = "health_alert_acknowledgements")
class HealthAlertAcknowledgement extends Recorded {
    UUID alertId;
    String name;
    String words;

    protected HealthAlertAcknowledgement() {}

    HealthAlertAcknowledgement(UUID alertId, SyndromeEntries.AcknowledgementEntry entry, Instant at) {
        happenedAt(at);
        this.alertId = alertId;
        this.name = entry.name();
        this.words = entry.words();
    }
}
