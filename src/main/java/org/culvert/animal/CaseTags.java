package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class CaseTags {
    @Produces
    @Singleton
    TagSource ofCase(EntityManager entities, CaseService cases) {
        return new RowTag("case", "cases", entities, cases::getCase);
    }

    @Produces
    @Singleton
    TagSource ofHandOver(EntityManager entities, CaseService cases) {
        return new RowTag("hand-over", "hand_overs", entities, cases::getHandOver);
    }
}
