package org.culvert.dispatch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** One passing of the gate, kept with every test. */
@Entity
@Table(name = "gate_results")
class GateResult extends Recorded {
    UUID incidentId;

    @JdbcTypeCode(SqlTypes.JSON)
    List<GateTest> tests;

    boolean mayGo;

    @Nullable
    UUID overriddenBy;

    @Nullable
    String overrideReason;

    protected GateResult() {}

    GateResult(UUID incidentId, List<GateTest> tests, Instant at) {
        happenedAt(at);
        this.incidentId = incidentId;
        this.tests = tests;
        this.mayGo = tests.stream().noneMatch(GateTest::stops);
    }

    void override(UUID by, String reason) {
        overriddenBy = by;
        overrideReason = reason;
        mayGo = true;
    }
}
