package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class WorksTags {
    @Produces
    @Singleton
    TagSource ofWorks(EntityManager entities, WorksService works) {
        return new RowTag("works", "works", entities, works::getWorks);
    }
}
