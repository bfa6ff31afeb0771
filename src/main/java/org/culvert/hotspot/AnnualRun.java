package org.culvert.hotspot;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.culvert.platform.Recorded;

/** Runs that were decided on together; what was decided never changes. */
@Entity
@Table(name = "annual_runs")
class AnnualRun extends Recorded {
    String plan;
    int cells;

    protected AnnualRun() {}

    AnnualRun(String plan, int cells) {
        this.plan = plan;
        this.cells = cells;
    }
}
