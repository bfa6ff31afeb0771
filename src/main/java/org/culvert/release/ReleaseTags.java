package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class ReleaseTags {
    @Produces
    @Singleton
    TagSource ofRule(EntityManager entities, RuleService rules) {
        return new RowTag("release-rule", "release_rules", entities, rules::getRule);
    }

    @Produces
    @Singleton
    TagSource ofRelease(EntityManager entities, ReleaseService releases) {
        return new RowTag(
                "release",
                "releases",
                entities,
                releases::getRelease,
                Map.of(
                        "released_animals",
                        "release_id",
                        "release_photographs",
                        "release_id",
                        "release_sightings",
                        "release_id"));
    }

    @Produces
    @Singleton
    TagSource ofSite(EntityManager entities, SiteService sites) {
        return new RowTag("release-site", "release_sites", entities, sites::getSite);
    }
}
