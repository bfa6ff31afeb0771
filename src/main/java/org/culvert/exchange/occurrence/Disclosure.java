package org.culvert.exchange.occurrence;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** Exact records that went to a recipient. */
@Entity
@Table(name = "disclosures")
class Disclosure extends Recorded {
    UUID agreementId;
    UUID accountId;
    int records;
    String filter;

    protected Disclosure() {}

    Disclosure(UUID agreementId, UUID accountId, int records, String filter, Instant at) {
        happenedAt(at);
        this.agreementId = agreementId;
        this.accountId = accountId;
        this.records = records;
        this.filter = filter;
    }
}
