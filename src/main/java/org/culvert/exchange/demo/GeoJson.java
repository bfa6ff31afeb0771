package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Writes features as GeoJSON (RFC 7946), one a line. */
final class GeoJson {
    private final StringBuilder text = new StringBuilder("{\"type\":\"FeatureCollection\",\"features\":[\n");
    private boolean first = true;

    /** @param properties names and values in turn; a null value is left out */
    void line(List<Spot> line, @Nullable Object... properties) {
        feature("LineString", coordinates(line), properties);
    }

    void ring(List<Spot> ring, @Nullable Object... properties) {
        feature("Polygon", '[' + coordinates(counterClockwise(ring)) + ']', properties);
    }

    void point(Spot spot, @Nullable Object... properties) {
        feature("Point", coordinate(spot), properties);
    }

    String text() {
        return text + "\n]}\n";
    }

    private void feature(String type, String coordinates, @Nullable Object... properties) {
        text.append(first ? "" : ",\n").append("{\"type\":\"Feature\",\"properties\":{");
        first = false;
        boolean firstProperty = true;
        for (int i = 0; i < properties.length; i += 2) {
            Object value = properties[i + 1];
            if (value != null) {
                text.append(firstProperty ? "" : ",")
                        .append(quoted(String.valueOf(properties[i])))
                        .append(':')
                        .append(value instanceof Number || value instanceof Boolean ? value : quoted(value.toString()));
                firstProperty = false;
            }
        }
        text.append("},\"geometry\":{\"type\":\"")
                .append(type)
                .append("\",\"coordinates\":")
                .append(coordinates)
                .append("}}");
    }

    private static String quoted(String value) {
        return '"' + value.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    private static String coordinates(List<Spot> spots) {
        StringBuilder result = new StringBuilder("[");
        for (Spot spot : spots) {
            result.append(result.length() > 1 ? "," : "").append(coordinate(spot));
        }
        return result.append(']').toString();
    }

    private static String coordinate(Spot spot) {
        return String.format(Locale.ROOT, "[%.7f,%.7f]", spot.longitude(), spot.latitude());
    }

    private static List<Spot> counterClockwise(List<Spot> ring) {
        double doubleArea = 0;
        for (int i = 1; i < ring.size(); i++) {
            doubleArea += (double) ring.get(i - 1).longitudeE7() * ring.get(i).latitudeE7()
                    - (double) ring.get(i).longitudeE7() * ring.get(i - 1).latitudeE7();
        }
        if (doubleArea >= 0) {
            return ring;
        }
        List<Spot> turned = new ArrayList<>(ring);
        Collections.reverse(turned);
        return turned;
    }
}
