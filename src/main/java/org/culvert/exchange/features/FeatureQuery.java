package org.culvert.exchange.features;

import java.util.Map;
import org.culvert.geo.Bounds;
import org.jspecify.annotations.Nullable;

/**
 * Which features are asked for. Those without a place lie in every box, and those without a time in every span, as the
 * standard has it.
 *
 * @param box null for everywhere
 * @param equal values of properties, each of the property's own Java type
 */
record FeatureQuery(@Nullable Bounds box, TimeSpan time, Map<String, Object> equal) {
    static final FeatureQuery ALL = new FeatureQuery(null, TimeSpan.EVER, Map.of());

    /** The value that a property must have, or null where it may have any. */
    @Nullable
    Object wanted(String property) {
        return equal.get(property);
    }

    /** Whether the properties of a feature are those that are asked for. */
    boolean fits(Record properties) {
        return equal.entrySet().stream()
                .allMatch(wanted -> wanted.getValue().equals(FeatureProperty.value(properties, wanted.getKey())));
    }

    boolean lies(Iterable<double[][]> lines) {
        if (box == null) {
            return true;
        }
        boolean placed = false;
        for (double[][] line : lines) {
            placed = true;
            if (LineInBox.meet(line, box)) {
                return true;
            }
        }
        return !placed;
    }
}
