package org.culvert.care.plan;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.care.schedule.Phase;
import org.culvert.care.template.PlanStepEntry;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** Steps that hold from a day of a plan on; it happened when a vet decided it. */
@Entity
@Table(name = "aftercare_plan_phases")
class PlanPhase extends Recorded {
    UUID planId;

    /** In which order they were decided, from 0. */
    int place;

    int fromDay;

    @JdbcTypeCode(SqlTypes.JSON)
    List<PlanStepEntry> steps;

    String vetName;
    String vetRegistration;

    @Nullable
    String reason;

    protected PlanPhase() {}

    /** The steps that a plan begins with. */
    PlanPhase(AftercarePlan plan, List<PlanStepEntry> steps) {
        happenedAt(plan.madeAt());
        this.planId = plan.id();
        this.steps = steps;
        this.vetName = plan.vetName;
        this.vetRegistration = plan.vetRegistration;
    }

    PlanPhase(UUID planId, int place, int fromDay, PlanEntries.ChangeEntry entry, Instant at) {
        happenedAt(at);
        this.planId = planId;
        this.place = place;
        this.fromDay = fromDay;
        this.steps = entry.steps();
        this.vetName = entry.vetName();
        this.vetRegistration = entry.vetRegistration();
        this.reason = entry.reason();
    }

    Phase phase() {
        return new Phase(fromDay, steps.stream().map(PlanStepEntry::step).toList());
    }
}
