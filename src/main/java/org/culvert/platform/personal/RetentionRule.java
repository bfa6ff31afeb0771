package org.culvert.platform.personal;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** For how many years, by whose word, people are kept. */
@Entity
@Table(name = "retention_rules")
class RetentionRule extends Recorded {
    String jurisdiction;
    String kind;
    int years;
    String source;
    LocalDate readOn;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected RetentionRule() {}

    RetentionRule(RetentionService.RetentionRuleEntry entry) {
        jurisdiction = entry.jurisdiction();
        kind = entry.kind().name();
        years = entry.years();
        source = entry.source();
        readOn = entry.readOn();
        validFrom = entry.validFrom();
        validTo = entry.validTo();
    }

    void end(LocalDate lastDay, String reason) {
        validTo = lastDay;
        revisedBecause(reason);
    }
}
