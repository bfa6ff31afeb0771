package org.culvert.release.rules.area;

import java.util.List;
import java.util.Optional;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/**
 * What the rules and maps entered here do not rule out. It is called neither lawful nor safe: what nobody entered is not taken
 * out of it.
 *
 * @param shape polygons on WGS 84, longitude as x; empty where nothing is left
 * @param squareMetres its size
 * @param steps what was taken out, in order, and what was left after each
 * @param takenOut the parts that maps took out, in the order of the steps; roads and distances are told in words alone
 * @param nearest the point of it that is nearest to the origin; null where nothing is left
 * @param askFirst parks and properties in it, and jurisdictions across a border, whose approval is wanted before
 */
public record ReleaseArea(
        Geometry shape,
        double squareMetres,
        List<Step> steps,
        List<TakenOut> takenOut,
        @Nullable Nearest nearest,
        List<AskFirst> askFirst) {
    public ReleaseArea {
        steps = List.copyOf(steps);
        takenOut = List.copyOf(takenOut);
        askFirst = List.copyOf(askFirst);
    }

    public boolean isEmpty() {
        return nearest == null;
    }

    /** What left nothing. */
    public Optional<Step> findEmptying() {
        return isEmpty() ? Optional.of(steps.get(steps.size() - 1)) : Optional.empty();
    }

    /** What a step is about. */
    public enum Cut {
        distance,
        catchment,
        excluded,
        burnt,
        flooded,
        roads
    }

    /**
     * One thing taken into account.
     *
     * @param key of the rule, or the name of the land
     * @param words what it is
     * @param squareMetresLeft after it
     * @param opens what would open what it closes
     */
    public record Step(Cut cut, String key, String words, double squareMetresLeft, String opens) {}

    /**
     * A part that is ruled out.
     *
     * @param words as its step says it
     * @param shape as {@link ReleaseArea#shape}
     */
    public record TakenOut(Cut cut, String words, Geometry shape) {}

    /** @param metres from the origin's centre, geodesic; 0 where the origin itself is in the area */
    public record Nearest(Position position, double metres) {}

    /**
     * Land whose keeper, owner or government is asked before.
     *
     * @param squareMetres how much of the area is in it
     * @param shape that part of the area, as {@link ReleaseArea#shape}
     */
    public record AskFirst(String kind, String name, String source, double squareMetres, Geometry shape) {}
}
