package org.culvert.road;

import io.micrometer.core.annotation.Timed;
import jakarta.enterprise.context.ApplicationScoped;
import org.culvert.platform.RegionService;

/**
 * Understands a place however it is said: coordinates are read and put on a road, roads are turned into a position. What
 * cannot be is refused with the other reading beside it; what is in doubt says so.
 */
@ApplicationScoped
class PlaceInterpreter implements PlaceReading, ManyPlaces {
    /** A place this near the region is taken as it is said, even if another reading of it would lie inside. */
    static final double NEAR_THE_REGION_DEGREES = 1;

    private final RoadService roads;
    private final RegionService regions;

    PlaceInterpreter(RoadService roads, RegionService regions) {
        this.roads = roads;
        this.regions = regions;
    }

    @Override
    @Timed(
            value = "culvert.place.reading",
            percentiles = {0.5, 0.95, 0.99})
    public PlaceUnderstood understand(PlaceAsGiven given) {
        return new PlacesOnRoads(roads::findCurrent, regions::findRegion).understand(given);
    }

    @Override
    public PlacesOnRoads open() {
        return new PlacesOnRoads(
                roads.findCurrent().orElse(null), regions.findRegion().orElse(null));
    }

    static String sentence(String text) {
        String begun = Character.toUpperCase(text.charAt(0)) + text.substring(1);
        return begun.endsWith(".") ? begun : begun + ".";
    }
}
