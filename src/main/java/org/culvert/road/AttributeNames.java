package org.culvert.road;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Which attribute of a source holds what. Null where the source has none.
 *
 * @param speedUnit {@code km/h} or {@code mph} for speed limits that say no unit themselves
 * @param startMeasureUnit {@code m} or {@code km}
 */
public record AttributeNames(
        @Nullable String roadName,
        @Nullable String ref,
        @Nullable String roadClass,
        @Nullable String speedLimit,
        @Nullable String speedUnit,
        @Nullable String aadt,
        @Nullable String owner,
        @Nullable String carriageway,
        @Nullable String level,
        @Nullable String bridge,
        @Nullable String tunnel,
        @Nullable String startMeasure,
        @Nullable String startMeasureUnit,
        @Nullable String oneWay,
        @Nullable String lanes) {

    /** What an extract of OpenStreetMap calls things (wiki.openstreetmap.org, Key:highway and the keys it names). */
    static final AttributeNames OPEN_STREET_MAP = new AttributeNames(
            "name",
            "ref",
            "highway",
            "maxspeed",
            "km/h",
            null,
            null,
            null,
            "layer",
            "bridge",
            "tunnel",
            null,
            null,
            "oneway",
            "lanes");

    /** The attributes that are named, by what they are read as, in a fixed order. */
    Map<String, String> named() {
        Map<String, String> named = new LinkedHashMap<>();
        put(named, "roadName", roadName);
        put(named, "ref", ref);
        put(named, "roadClass", roadClass);
        put(named, "speedLimit", speedLimit);
        put(named, "aadt", aadt);
        put(named, "owner", owner);
        put(named, "carriageway", carriageway);
        put(named, "level", level);
        put(named, "bridge", bridge);
        put(named, "tunnel", tunnel);
        put(named, "startMeasure", startMeasure);
        put(named, "oneWay", oneWay);
        put(named, "lanes", lanes);
        return named;
    }

    /** These, and what others name where these name nothing. */
    AttributeNames or(AttributeNames others) {
        return new AttributeNames(
                or(roadName, others.roadName),
                or(ref, others.ref),
                or(roadClass, others.roadClass),
                or(speedLimit, others.speedLimit),
                or(speedUnit, others.speedUnit),
                or(aadt, others.aadt),
                or(owner, others.owner),
                or(carriageway, others.carriageway),
                or(level, others.level),
                or(bridge, others.bridge),
                or(tunnel, others.tunnel),
                or(startMeasure, others.startMeasure),
                or(startMeasureUnit, others.startMeasureUnit),
                or(oneWay, others.oneWay),
                or(lanes, others.lanes));
    }

    private static @Nullable String or(@Nullable String own, @Nullable String other) {
        return own == null || own.isBlank() ? other : own;
    }

    private static void put(Map<String, String> named, String as, @Nullable String attribute) {
        if (attribute != null && !attribute.isBlank()) {
            named.put(as, attribute);
        }
    }
}
