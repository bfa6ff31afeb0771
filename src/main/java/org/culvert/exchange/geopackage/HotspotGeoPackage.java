package org.culvert.exchange.geopackage;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.culvert.hotspot.HotspotFiles;
import org.culvert.hotspot.HotspotReport;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** The hotspots of a report as one layer, with the fields of its GeoJSON. */
final class HotspotGeoPackage {
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();

    private HotspotGeoPackage() {}

    /** @param computedAt when the report was computed */
    static byte[] of(HotspotReport report, Instant computedAt) {
        List<GeoPackageFile.Column> columns = new ArrayList<>();
        HotspotFiles.examples(report)
                .forEach((name, example) ->
                        columns.add(new GeoPackageFile.Column(name, GeoPackageFile.Type.of(example))));
        List<GeoPackageFile.Feature> features = new ArrayList<>();
        for (HotspotReport.Stretch stretch : report.hotspots()) {
            Collection<@Nullable Object> values = fields(stretch, report).values();
            features.add(new GeoPackageFile.Feature(
                    stretch.rank(), GEOMETRIES.createMultiLineString(lines(stretch)), new ArrayList<>(values)));
        }
        return GeoPackageFile.write(
                new GeoPackageFile.Layer(
                        "hotspots", "Hotspots", report.errorRate().sentence(), "MULTILINESTRING", columns, computedAt),
                features);
    }

    private static Map<String, @Nullable Object> fields(HotspotReport.Stretch stretch, HotspotReport report) {
        return HotspotFiles.fields(stretch, report);
    }

    private static LineString[] lines(HotspotReport.Stretch stretch) {
        return stretch.lines().stream()
                .map(line -> {
                    var points = new Coordinate[line.length];
                    for (int i = 0; i < points.length; i++) {
                        points[i] = new Coordinate(line[i][0], line[i][1]);
                    }
                    return GEOMETRIES.createLineString(points);
                })
                .toArray(LineString[]::new);
    }
}
