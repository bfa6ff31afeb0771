package org.culvert.exchange.event;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** Somebody who is told. */
@Entity
@Table(name = "event_subscriptions")
class EventSubscription extends Recorded {
    String address;
    String purpose;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> types;

    @Nullable
    Instant endedAt;

    @Nullable
    String endedBecause;

    protected EventSubscription() {}

    EventSubscription(String address, String purpose, List<String> types) {
        this.address = address;
        this.purpose = purpose;
        this.types = types;
    }

    void end(Instant at, String reason) {
        if (endedAt != null) {
            throw new ConflictException("That subscription has ended already.");
        }
        endedAt = at;
        endedBecause = reason;
        revisedBecause(reason);
    }
}
