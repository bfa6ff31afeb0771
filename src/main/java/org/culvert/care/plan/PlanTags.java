package org.culvert.care.plan;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class PlanTags {
    @Produces
    @Singleton
    TagSource ofPlan(EntityManager entities, PlanService service) {
        return new RowTag(
                "aftercare-plan",
                "aftercare_plans",
                entities,
                service::getPlan,
                Map.of("aftercare_plan_phases", "plan_id"));
    }

    @Produces
    @Singleton
    TagSource ofEntry(EntityManager entities, CareEntryService service) {
        return new RowTag("care-entry", "care_entries", entities, service::getEntry);
    }
}
