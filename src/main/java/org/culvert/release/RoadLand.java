package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;
import org.culvert.release.rules.area.LandBetweenRoads;
import org.culvert.road.CurrentRoads;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** The land between the current roads; computed once for each version of the network, which takes about a second. */
@ApplicationScoped
class RoadLand {
    private final double halfWidthMetres;
    private @Nullable UUID networkId;
    private @Nullable LandBetweenRoads land;

    /** @param halfWidthMetres from the middle of a road to the end of what counts as its surface */
    RoadLand(
            @ConfigProperty(name = "culvert.release.road-half-width-metres", defaultValue = "10")
                    double halfWidthMetres) {
        this.halfWidthMetres = halfWidthMetres;
    }

    synchronized LandBetweenRoads of(CurrentRoads roads) {
        LandBetweenRoads known = land;
        if (known == null || !roads.networkId().equals(networkId)) {
            known = LandBetweenRoads.of(roads.network(), halfWidthMetres);
            land = known;
            networkId = roads.networkId();
        }
        return known;
    }
}
