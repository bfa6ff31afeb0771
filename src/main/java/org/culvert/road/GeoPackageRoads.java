package org.culvert.road;

import java.util.List;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.GeoPackageGeometry;
import org.culvert.geo.Grid;
import org.culvert.geo.Projections;
import org.culvert.platform.InvalidException;
import org.culvert.platform.file.ReadingWatch;
import org.culvert.platform.geopackage.GeoPackage;
import org.jspecify.annotations.Nullable;

/**
 * Reads roads from a layer of a GeoPackage (OGC 12-128r18), one feature after another. Features without a line are left out
 * by reason, and lines are called by the feature's number in the file.
 */
final class GeoPackageRoads {
    private final AttributeNames names;
    private final RoadLines lines;
    private int features;

    GeoPackageRoads(AttributeNames names) {
        this.names = names;
        this.lines = new RoadLines(names);
    }

    RoadSource read(GeoPackage file, GeoPackage.Layer layer, ReadingWatch watch) {
        lines.saw(file.columns(layer));
        lines.requireNames(names);
        file.read(layer, names.named().values(), (key, geometry, properties) -> {
            features++;
            watch.hear(ReadingWatch.Step.features, features, 0);
            String name = "line " + key;
            if (geometry == null) {
                lines.leaveOut(name, "no course");
                return;
            }
            GeoPackageGeometry read = read(name, geometry);
            if (read.kind() != GeoPackageGeometry.Kind.LINE) {
                lines.leaveOut(name, "not a line but a " + read.kind().word());
                return;
            }
            List<double[]> courses =
                    read.parts().stream().map(part -> part.get(0)).toList();
            lines.add(features, name, courses.size() > 1, properties, courses);
        });
        return lines.source(null, false);
    }

    private static GeoPackageGeometry read(String name, byte[] geometry) {
        try {
            return GeoPackageGeometry.read(geometry);
        } catch (IllegalArgumentException broken) {
            throw RoadSource.badLine(name, String.valueOf(broken.getMessage()));
        }
    }

    /**
     * The reference system of a layer.
     *
     * @param asked by its name, which wins; or null
     * @throws InvalidException naming {@code crs} if none is known
     */
    static Grid gridOf(GeoPackage.Layer layer, @Nullable String asked) {
        if (asked != null) {
            return named(asked);
        }
        if (layer.srsId() == 0 || layer.srsId() == -1) {
            throw InvalidException.of(
                    "crs",
                    "The layer " + layer.table() + " says that its reference system is not defined.",
                    "the name of its reference system, e.g. EPSG:28356");
        }
        String name = layer.organisation().strip() + ":" + layer.code();
        try {
            return Projections.named(name);
        } catch (CoordinateException unknown) {
            try {
                return Projections.ofText(name, layer.definition());
            } catch (CoordinateException unreadable) {
                throw invalid(unreadable);
            }
        }
    }

    static Grid named(String name) {
        try {
            return Projections.named(name);
        } catch (CoordinateException unknown) {
            throw invalid(unknown);
        }
    }

    private static InvalidException invalid(CoordinateException wrong) {
        return InvalidException.of("crs", PlaceInterpreter.sentence(wrong.whatIsWrong()), wrong.whatWouldBeRight());
    }
}
