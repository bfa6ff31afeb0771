package org.culvert.road;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import org.culvert.geo.Projections;
import org.jboss.logging.Logger;

/** Unpacks the register of reference systems and loads the roads when the server starts, so that no caller waits for it. */
@ApplicationScoped
class RoadsAtStart {
    private static final Logger LOG = Logger.getLogger(RoadsAtStart.class);

    private final RoadService roads;

    RoadsAtStart(RoadService roads) {
        this.roads = roads;
    }

    void prepare(@Observes @Priority(1000) StartupEvent event) {
        Projections.warmUp();
        roads.findCurrent()
                .ifPresent(current -> LOG.infof(
                        "Road network %d: %d links, %.0f km",
                        current.number(),
                        current.network().linkCount(),
                        current.network().graph().totalLength() / 1000));
    }
}
