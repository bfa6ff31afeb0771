package org.culvert.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class DispatchTags {
    @Produces
    @Singleton
    TagSource ofAttendance(EntityManager entities, DispatchService service) {
        return new RowTag(
                "attendance",
                "attendances",
                entities,
                service::getAttendance,
                Map.of("attendance_people", "attendance_id"));
    }

    @Produces
    @Singleton
    TagSource ofClosing(EntityManager entities, ClosingService closings) {
        return new RowTag("closing", "closings", entities, closings::get);
    }
}
