package org.culvert.exchange.demo;

import java.util.List;

/**
 * A stretch of which the truth is known: planted, so that a good method should find it, or not hot, though a poor method
 * would take it for hot.
 *
 * @param roads the road, or the carriageways of a dual one
 * @param expectedShare share of all background collisions that fall on it
 */
record Plant(
        String id,
        boolean hot,
        Settings.PlantSpec spec,
        List<Road> roads,
        double fromMetres,
        double toMetres,
        double expectedShare) {

    boolean covers(Road road, double measure) {
        return roads.contains(road) && measure >= fromMetres && measure <= toMetres;
    }

    Spot middle() {
        return roads.get(0).spotAt((fromMetres + toMetres) / 2);
    }
}
