package org.culvert.release.nonrelease;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class NonReleaseTags {
    @Produces
    @Singleton
    TagSource ofDecision(EntityManager entities, NonReleaseService service) {
        Map<String, String> parts = Stream.of(
                        "second_opinions",
                        "authority_notices",
                        "permits_to_keep",
                        "welfare_reviews",
                        "non_release_outcomes")
                .collect(Collectors.toMap(table -> table, table -> "decision_id"));
        return new RowTag("non-release-decision", "non_release_decisions", entities, service::getDecision, parts);
    }
}
