package org.culvert.road;

import java.util.List;
import java.util.Map;
import org.culvert.platform.InvalidException;
import org.culvert.road.network.RoadLine;
import org.jspecify.annotations.Nullable;

/**
 * What was read of a file of roads.
 *
 * @param lines its lines, with coordinates in the file's reference system
 * @param featureOfLine for each line the number of its feature, from 1, or null where keys name features better
 * @param leftOutByKey why features became no line
 * @param notUnderstood number of values that made no sense, by what they should have been
 * @param crsName the reference system that the file names, if it does
 */
record RoadSource(
        List<RoadLine> lines,
        @Nullable List<Integer> featureOfLine,
        Map<String, String> leftOutByKey,
        Map<String, Integer> notUnderstood,
        @Nullable String crsName) {

    private static final String WANTED = "a LineString or MultiLineString of positions, each at least two numbers";

    /** What to say of a line with something wrong in its course. */
    InvalidException bad(int line, String what) {
        return featureOfLine == null ? badLine(lines.get(line).key(), what) : badFeature(featureOfLine.get(line), what);
    }

    /** @param feature its number, from 1 */
    static InvalidException badFeature(int feature, String what) {
        return InvalidException.of(
                "features." + (feature - 1) + ".geometry", "In feature " + feature + " " + what + ".", WANTED);
    }

    static InvalidException badLine(String key, String what) {
        return InvalidException.of("features", "In " + key + " " + what + ".", WANTED);
    }
}
