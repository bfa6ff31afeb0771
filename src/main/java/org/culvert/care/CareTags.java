package org.culvert.care;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class CareTags {
    @Produces
    @Singleton
    TagSource ofClutch(EntityManager entities, ClutchService clutches) {
        return new RowTag(
                "clutch",
                "clutches",
                entities,
                clutches::getClutch,
                Map.of("egg_recoveries", "clutch_id", "hatchings", "clutch_id", "clutch_custody_links", "clutch_id"));
    }
}
