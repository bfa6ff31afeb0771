package org.culvert.road;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponseBuilder;
import org.eclipse.microprofile.health.Readiness;

/** Ready is a server that has the newest roads in memory, or knows that none were imported; it says which. */
@Readiness
@ApplicationScoped
class RoadReadiness implements HealthCheck {
    private final RoadService roads;

    RoadReadiness(RoadService roads) {
        this.roads = roads;
    }

    @Override
    public HealthCheckResponse call() {
        HealthCheckResponseBuilder answer = HealthCheckResponse.named("road network");
        try {
            Optional<CurrentRoads> current = roads.findCurrent();
            if (current.isEmpty()) {
                return answer.up().withData("imported", false).build();
            }
            return answer.up()
                    .withData("imported", true)
                    .withData("number", current.get().number())
                    .withData("links", current.get().network().linkCount())
                    .build();
        } catch (RuntimeException away) {
            // Whoever asks is told by the state; the request that needs the roads logs why.
            return answer.down().build();
        }
    }
}
