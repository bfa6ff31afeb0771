package org.culvert.platform.personal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Optional;
import org.culvert.platform.Paging;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class PersonTags {
    @Produces
    @Singleton
    TagSource ofRetentionRule(EntityManager entities, RetentionService retention) {
        return new RowTag("retention-rule", "retention_rules", entities, retention::getRule);
    }

    @Produces
    @Singleton
    TagSource ofPerson(PeopleService people) {
        return new TagSource() {
            @Override
            public String kind() {
                return "person";
            }

            @Override
            public void lock(String id) {
                people.lock(Paging.uuid("id", id));
            }

            @Override
            public Optional<Object> show(String id) {
                return Optional.of(people.getPerson(Paging.uuid("id", id)));
            }
        };
    }
}
