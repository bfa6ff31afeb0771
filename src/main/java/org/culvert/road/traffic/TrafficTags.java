package org.culvert.road.traffic;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** What can be changed in this room by who has read it. */
@ApplicationScoped
class TrafficTags {
    @Produces
    @Singleton
    TagSource ofTrafficCount(EntityManager entities, TrafficCountService counts) {
        return new RowTag("traffic-count", "traffic_counts", entities, counts::getCount);
    }
}
