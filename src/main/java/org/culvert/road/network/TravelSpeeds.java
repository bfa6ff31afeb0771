package org.culvert.road.network;

import java.util.Locale;
import java.util.Map;

/**
 * Speeds at which a road is likely to be driven, to compare ways and to tell how far away someone is. Estimates, common
 * practice without a source; never a statement about the limit that holds on a road.
 */
public final class TravelSpeeds {
    private static final double SHARE_OF_LIMIT = 0.85;
    private static final double UNKNOWN_KMH = 45;
    private static final Map<String, Double> BY_CLASS = Map.ofEntries(
            Map.entry("motorway", 95.0),
            Map.entry("autoroute", 95.0),
            Map.entry("freeway", 95.0),
            Map.entry("trunk", 80.0),
            Map.entry("highway", 80.0),
            Map.entry("primary", 70.0),
            Map.entry("arterial", 60.0),
            Map.entry("secondary", 60.0),
            Map.entry("collector", 50.0),
            Map.entry("tertiary", 50.0),
            Map.entry("unclassified", 45.0),
            Map.entry("local", 40.0),
            Map.entry("locale", 40.0),
            Map.entry("residential", 35.0),
            Map.entry("service", 20.0),
            Map.entry("track", 20.0),
            Map.entry("footway", 5.0),
            Map.entry("path", 5.0),
            Map.entry("pedestrian", 5.0),
            Map.entry("steps", 5.0));

    private TravelSpeeds() {}

    /** Kilometres an hour, greater than zero. */
    public static double kmh(RoadAttributes attributes) {
        Integer limit = attributes.speedLimitKmh();
        if (limit != null && limit > 0) {
            return SHARE_OF_LIMIT * limit;
        }
        String roadClass = attributes.roadClass();
        if (roadClass == null) {
            return UNKNOWN_KMH;
        }
        String plain =
                roadClass.toLowerCase(Locale.ROOT).replaceAll("_link$", "").strip();
        return BY_CLASS.getOrDefault(plain, UNKNOWN_KMH);
    }
}
