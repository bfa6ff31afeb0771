package org.culvert.care.day;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class DayTags {
    @Produces
    @Singleton
    TagSource ofRule(EntityManager entities, MissedTaskService service) {
        return new RowTag("missed-task-rule", "missed_task_rules", entities, service::getRule);
    }
}
