package org.culvert.animal.photograph;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class PhotographTags {
    @Produces
    @Singleton
    TagSource ofPhotograph(EntityManager entities, PhotographService photographs) {
        return new RowTag("photograph", "photographs", entities, photographs::getPhotograph);
    }
}
