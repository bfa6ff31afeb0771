package org.culvert.road.network;

import org.jspecify.annotations.Nullable;

/**
 * What is known of a piece of road besides its course. Null is unknown, and unknown is never read as harmless.
 *
 * @param roadName name as signed
 * @param ref number of the road, e.g. {@code A1}
 * @param roadClass class in the words of the source
 * @param speedLimitKmh speed limit in km/h
 * @param aadt annual average daily traffic, vehicles a day in both directions
 * @param owner who is responsible for the road
 * @param carriageway which carriageway of a divided road, in the words of the source
 * @param level level above (or below) ground, 0 on it
 * @param structure bridge, tunnel or none
 * @param oneWay whether it is travelled along its course only
 * @param lanes number of lanes, of all directions together
 */
public record RoadAttributes(
        @Nullable String roadName,
        @Nullable String ref,
        @Nullable String roadClass,
        @Nullable Integer speedLimitKmh,
        @Nullable Integer aadt,
        @Nullable String owner,
        @Nullable String carriageway,
        int level,
        Structure structure,
        @Nullable Boolean oneWay,
        @Nullable Integer lanes) {

    public static final RoadAttributes UNKNOWN =
            new RoadAttributes(null, null, null, null, null, null, null, 0, Structure.NONE);

    public RoadAttributes {
        roadName = blankAsNull(roadName);
        ref = blankAsNull(ref);
        roadClass = blankAsNull(roadClass);
        owner = blankAsNull(owner);
        carriageway = blankAsNull(carriageway);
    }

    /** Of a road of which neither direction nor lanes are known. */
    public RoadAttributes(
            @Nullable String roadName,
            @Nullable String ref,
            @Nullable String roadClass,
            @Nullable Integer speedLimitKmh,
            @Nullable Integer aadt,
            @Nullable String owner,
            @Nullable String carriageway,
            int level,
            Structure structure) {
        this(roadName, ref, roadClass, speedLimitKmh, aadt, owner, carriageway, level, structure, null, null);
    }

    public static RoadAttributes named(String roadName) {
        return UNKNOWN.withRoadName(roadName);
    }

    public RoadAttributes withRoadName(@Nullable String name) {
        return new RoadAttributes(
                name, ref, roadClass, speedLimitKmh, aadt, owner, carriageway, level, structure, oneWay, lanes);
    }

    public RoadAttributes withRef(@Nullable String newRef) {
        return new RoadAttributes(
                roadName, newRef, roadClass, speedLimitKmh, aadt, owner, carriageway, level, structure, oneWay, lanes);
    }

    public RoadAttributes withRoadClass(@Nullable String newClass) {
        return new RoadAttributes(
                roadName, ref, newClass, speedLimitKmh, aadt, owner, carriageway, level, structure, oneWay, lanes);
    }

    public RoadAttributes withCarriageway(@Nullable String newCarriageway) {
        return new RoadAttributes(
                roadName, ref, roadClass, speedLimitKmh, aadt, owner, newCarriageway, level, structure, oneWay, lanes);
    }

    public RoadAttributes withSpeedLimitKmh(@Nullable Integer limit) {
        return new RoadAttributes(
                roadName, ref, roadClass, limit, aadt, owner, carriageway, level, structure, oneWay, lanes);
    }

    public RoadAttributes atLevel(int newLevel, Structure newStructure) {
        return new RoadAttributes(
                roadName,
                ref,
                roadClass,
                speedLimitKmh,
                aadt,
                owner,
                carriageway,
                newLevel,
                newStructure,
                oneWay,
                lanes);
    }

    /** The level at which its interior vertices join: as given, or above (below) ground for a bridge (tunnel) without one. */
    int effectiveLevel() {
        if (level != 0) {
            return level;
        }
        return switch (structure) {
            case BRIDGE -> 1;
            case TUNNEL -> -1;
            case NONE -> 0;
        };
    }

    private static @Nullable String blankAsNull(@Nullable String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }
}
