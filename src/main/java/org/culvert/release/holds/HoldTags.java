package org.culvert.release.holds;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class HoldTags {
    @Produces
    @Singleton
    TagSource ofHold(EntityManager entities, HoldService holds) {
        return new RowTag("hold", "holds", entities, holds::getHold);
    }
}
