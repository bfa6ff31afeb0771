package org.culvert.care.clock;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class ClockTags {
    @Produces
    @Singleton
    TagSource ofTimeLimit(EntityManager entities, LimitService limits) {
        return new RowTag("time-limit", "time_limits", entities, limits::getLimit);
    }

    @Produces
    @Singleton
    TagSource ofClockExtension(EntityManager entities, ExtensionService extensions) {
        return new RowTag("clock-extension", "clock_extensions", entities, extensions::getExtension);
    }

    @Produces
    @Singleton
    TagSource ofClockNotice(EntityManager entities, NoticeService notices) {
        return new RowTag("clock-notice", "clock_notices", entities, notices::getNotice);
    }
}
