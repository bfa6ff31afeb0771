package org.culvert.release.land;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class LandTags {
    @Produces
    @Singleton
    TagSource ofLandArea(EntityManager entities, LandService land) {
        return new RowTag("land-area", "land_areas", entities, land::getArea);
    }
}
