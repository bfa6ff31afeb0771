package org.culvert.exchange.features;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A geometry of RFC 7946: longitude before latitude on WGS 84, at most seven decimals. */
public record Shape(String type, Object coordinates) {
    static Shape point(double longitude, double latitude) {
        return new Shape(ShapeType.POINT.geoJson(), rounded(new double[] {longitude, latitude}));
    }

    static @Nullable Shape pointOf(@Nullable Double longitude, @Nullable Double latitude) {
        return longitude == null || latitude == null ? null : point(longitude, latitude);
    }

    static Shape line(double[][] line) {
        return new Shape(ShapeType.LINE_STRING.geoJson(), rounded(line));
    }

    static Shape lines(List<double[][]> lines) {
        return new Shape(
                ShapeType.MULTI_LINE_STRING.geoJson(),
                lines.stream().map(Shape::rounded).toArray(double[][][]::new));
    }

    private static double[][] rounded(double[][] line) {
        double[][] rounded = new double[line.length][];
        for (int i = 0; i < line.length; i++) {
            rounded[i] = rounded(line[i]);
        }
        return rounded;
    }

    private static double[] rounded(double[] position) {
        return new double[] {sevenDecimals(position[0]), sevenDecimals(position[1])};
    }

    private static double sevenDecimals(double degrees) {
        return Math.round(degrees * 1e7) / 1e7;
    }
}
