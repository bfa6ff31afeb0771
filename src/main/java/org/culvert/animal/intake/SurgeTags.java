package org.culvert.animal.intake;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class SurgeTags {
    @Produces
    @Singleton
    TagSource ofSurge(EntityManager entities, SurgeRegister surges) {
        return new RowTag("surge", "surges", entities, surges::getSurge, Map.of("surge_sectors", "surge_id"));
    }
}
