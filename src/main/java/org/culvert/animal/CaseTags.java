package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class CaseTags {
    @Produces
    @Singleton
    TagSource ofCase(EntityManager entities, CaseService cases) {
        return new RowTag(
                "case",
                "cases",
                entities,
                cases::getCase,
                Map.of("custody_links", "case_id", "fates", "case_id", "bodies", "case_id"));
    }

    @Produces
    @Singleton
    TagSource ofAnimal(EntityManager entities, CaseService cases) {
        return new RowTag("animal", "animals", entities, cases::getAnimal);
    }

    @Produces
    @Singleton
    TagSource ofWhereabouts(EntityManager entities, CaseService cases) {
        return new RowTag("whereabouts", "whereabouts", entities, cases::getWhereabouts);
    }

    @Produces
    @Singleton
    TagSource ofHandOver(EntityManager entities, CaseService cases) {
        return new RowTag("hand-over", "hand_overs", entities, cases::getHandOver);
    }
}
