package org.culvert.road;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.culvert.platform.InvalidException;
import org.culvert.road.network.RoadLine;
import org.jspecify.annotations.Nullable;

/** Gathers the lines of a file, whatever kind of file it is, with their attributes. Not for use by several threads. */
final class RoadLines {
    private static final int MOST_NAMES_KEPT = 10_000;
    private static final int MOST_NAMES_SHOWN = 60;

    private final AttributeReader attributes;
    private final List<RoadLine> lines = new ArrayList<>();
    private final List<Integer> featureOfLine = new ArrayList<>();
    private final Map<String, String> leftOut = new LinkedHashMap<>();
    private final TreeSet<String> seen = new TreeSet<>();

    RoadLines(AttributeNames names) {
        this.attributes = new AttributeReader(names);
    }

    /** Attributes that the file has. */
    void saw(Collection<String> attributeNames) {
        for (String name : attributeNames) {
            if (seen.size() < MOST_NAMES_KEPT) {
                seen.add(name);
            }
        }
    }

    void leaveOut(String key, String reason) {
        leftOut.put(key, reason);
    }

    /**
     * Adds the lines of a feature: one, or several that have its attributes in common.
     *
     * @param feature its number, from 1
     * @param key what the source calls it
     * @param several whether the feature may have several lines, which then have keys of their own
     * @param courses first and second coordinate in turn, of each
     */
    void add(int feature, String key, boolean several, JsonNode properties, List<double[]> courses) {
        if (courses.isEmpty()) {
            leaveOut(key, "no course");
        }
        Double start = attributes.startMeasureMetres(properties);
        attributes.countOneWay(properties);
        // A line is turned to run as it is travelled, unless its chainage says which way it runs
        boolean turned = start == null && attributes.oneWay(properties) == AttributeReader.Travel.AGAINST;
        for (int part = 0; part < courses.size(); part++) {
            lines.add(new RoadLine(
                    several ? key + "." + (part + 1) : key,
                    attributes.attributes(properties),
                    part == 0 ? start : null,
                    turned ? turned(courses.get(part)) : courses.get(part)));
            featureOfLine.add(feature);
        }
    }

    private static double[] turned(double[] course) {
        double[] turned = new double[course.length];
        for (int i = 0; i < course.length; i += 2) {
            turned[i] = course[course.length - 2 - i];
            turned[i + 1] = course[course.length - 1 - i];
        }
        return turned;
    }

    /** @throws InvalidException naming the attributes that were asked for and that the file does not have */
    void requireNames(AttributeNames names) {
        List<InvalidException.FieldError> errors = new ArrayList<>();
        List<String> named = seen.stream().filter(name -> !name.isBlank()).toList();
        String known = named.isEmpty()
                ? "a file whose features have attributes"
                : String.join(", ", named.subList(0, Math.min(MOST_NAMES_SHOWN, named.size())));
        names.named().forEach((as, attribute) -> {
            if (!seen.contains(attribute)) {
                errors.add(new InvalidException.FieldError(
                        as, "No feature has an attribute " + attribute + ".", known, null));
            }
        });
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
    }

    /** @param byNumber whether features are known by their number in the file */
    RoadSource source(@Nullable String crsName, boolean byNumber) {
        return new RoadSource(lines, byNumber ? featureOfLine : null, leftOut, attributes.notUnderstood(), crsName);
    }
}
