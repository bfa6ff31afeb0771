package org.culvert.hotspot;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** A run as it was asked for; it never changes. */
@Entity
@Table(name = "hotspot_runs")
class HotspotRun extends Recorded {
    @JdbcTypeCode(SqlTypes.JSON)
    RunSettings settings;

    boolean declared;

    /** With which others it was decided on, or null. */
    @Nullable
    UUID annualRunId;

    protected HotspotRun() {}

    HotspotRun(RunSettings settings, @Nullable UUID annualRunId) {
        this.annualRunId = annualRunId;
        this.settings = settings;
        this.declared = settings.declaration() != null;
    }
}
