package org.culvert.road;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.culvert.platform.file.ReadingWatch;
import org.culvert.road.osm.OsmExtract;
import org.jspecify.annotations.Nullable;

/**
 * Reads roads from an extract of OpenStreetMap. Roads are ways with one of the values of {@code highway} that motor traffic
 * may have (wiki.openstreetmap.org, Key:highway); others of {@code highway} are left out by their value, and so are those
 * that are closed to motor traffic. Two ways meet where they have a node in common, since its position is then one.
 */
final class OsmRoads {
    private static final Set<String> MOTOR_TRAFFIC = Set.of(
            "motorway",
            "motorway_link",
            "trunk",
            "trunk_link",
            "primary",
            "primary_link",
            "secondary",
            "secondary_link",
            "tertiary",
            "tertiary_link",
            "unclassified",
            "residential",
            "living_street",
            "service",
            "road",
            "track");

    /** From the most special to the most general: the first that is there decides (Key:access, land-based transport). */
    private static final List<String> ACCESS = List.of("motorcar", "motor_vehicle", "vehicle", "access");

    private static final Set<String> RINGS = Set.of("roundabout", "circular");

    private final AttributeNames asked;
    private final RoadLines lines;
    private int features;

    /** @param asked attributes that are read from other tags than the usual ones, or from tags that have no usual one */
    OsmRoads(AttributeNames asked) {
        this.asked = asked;
        this.lines = new RoadLines(asked.or(AttributeNames.OPEN_STREET_MAP));
    }

    RoadSource read(OsmExtract extract, ReadingWatch watch) {
        for (OsmExtract.Way way : extract.ways(tags -> tags.containsKey("highway"), watch)) {
            String key = "way " + way.id();
            features++;
            String reason = notForMotorTraffic(way.tags());
            if (reason != null) {
                lines.leaveOut(key, reason);
                continue;
            }
            lines.saw(way.tags().keySet());
            lines.add(features, key, way.courses().size() > 1, properties(way.tags()), way.courses());
        }
        lines.requireNames(asked);
        return lines.source(null, false);
    }

    private static @Nullable String notForMotorTraffic(Map<String, String> tags) {
        String highway = tags.getOrDefault("highway", "");
        if (!MOTOR_TRAFFIC.contains(highway)) {
            return "not for motor traffic: highway=" + (highway.length() > 30 ? "another value" : highway);
        }
        if ("yes".equals(tags.get("area"))) {
            return "an area, not a line";
        }
        for (String key : ACCESS) {
            String access = tags.get(key);
            if (access != null) {
                return access.equals("no") ? "closed to motor traffic" : null;
            }
        }
        return null;
    }

    /** A motorway and a roundabout are travelled one way unless something else is said (Key:oneway). */
    private static ObjectNode properties(Map<String, String> tags) {
        ObjectNode properties = JsonNodeFactory.instance.objectNode();
        tags.forEach(properties::put);
        boolean implied = "motorway".equals(tags.get("highway")) || RINGS.contains(tags.getOrDefault("junction", ""));
        if (implied && !tags.containsKey("oneway")) {
            properties.put("oneway", "yes");
        }
        return properties;
    }
}
