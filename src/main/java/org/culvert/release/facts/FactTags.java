package org.culvert.release.facts;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class FactTags {
    @Produces
    @Singleton
    TagSource ofSpeciesFact(EntityManager entities, SpeciesFactService facts) {
        return new RowTag("species-fact", "species_facts", entities, facts::getFact);
    }
}
