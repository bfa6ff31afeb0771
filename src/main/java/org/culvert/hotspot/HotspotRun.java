package org.culvert.hotspot;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** A run as it was asked for; it never changes. */
@Entity
@Table(name = "hotspot_runs")
class HotspotRun extends Recorded {
    @JdbcTypeCode(SqlTypes.JSON)
    RunSettings settings;

    boolean declared;

    protected HotspotRun() {}

    HotspotRun(RunSettings settings) {
        this.settings = settings;
        this.declared = settings.declaration() != null;
    }
}
