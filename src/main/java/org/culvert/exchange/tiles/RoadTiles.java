package org.culvert.exchange.tiles;

import io.github.sebasbaumh.mapbox.vectortile.VectorTile;
import io.github.sebasbaumh.mapbox.vectortile.adapt.jts.JtsAdapter;
import io.github.sebasbaumh.mapbox.vectortile.adapt.jts.UserDataKeyValueMapConverter;
import io.github.sebasbaumh.mapbox.vectortile.build.MvtLayerProps;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.culvert.geo.Bounds;
import org.culvert.geo.MercatorTile;
import org.culvert.road.CurrentRoads;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadNetwork;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * Draws links of a network into tiles (Mapbox Vector Tile specification 2.1). Each is whole within the tile and a margin around
 * it, so that lines meet at the edges; what would be smaller than a pixel is left out below zoom {@link #ALL_FROM}.
 */
final class RoadTiles {
    static final String LAYER = "roads";

    /** From this zoom on each link is there. */
    static final int ALL_FROM = 12;

    /** Of 16 pixels of 256. */
    private static final int MARGIN = 256;

    private static final int UNITS_A_PIXEL = 16;
    private static final GeometryFactory GEOMETRIES = new GeometryFactory();
    private static final Envelope WITH_MARGIN =
            new Envelope(-MARGIN, MercatorTile.EXTENT + MARGIN, -MARGIN, MercatorTile.EXTENT + MARGIN);

    private RoadTiles() {}

    /** What a tile tells of each link, by name, with what it is; {@code String} or {@code Number}, as TileJSON 3.0 has it. */
    static Map<String, String> fields() {
        return Map.of(
                "id", "String",
                "road", "String",
                "ref", "String",
                "roadClass", "String",
                "speedLimitKmh", "Number");
    }

    /** A tile, empty where there is no road. */
    static byte[] draw(CurrentRoads roads, MercatorTile tile) {
        RoadNetwork network = roads.network();
        List<Geometry> lines = new ArrayList<>();
        Bounds box = tile.bounds(MARGIN);
        for (int link : network.bounds().meets(box) ? network.linksIn(box) : new int[0]) {
            Geometry line = line(network.link(link).vertices(), tile);
            if (line != null) {
                line.setUserData(tags(roads, link));
                lines.add(line);
            }
        }
        if (lines.isEmpty()) {
            return new byte[0];
        }
        var props = new MvtLayerProps();
        VectorTile.Tile.Layer.Builder layer =
                VectorTile.Tile.Layer.newBuilder().setVersion(2).setName(LAYER).setExtent(MercatorTile.EXTENT);
        JtsAdapter.addFeatures(layer, lines, props, new UserDataKeyValueMapConverter());
        props.getKeys().forEach(layer::addKeys);
        props.getValues().forEach(value -> layer.addValues(value(value)));
        return VectorTile.Tile.newBuilder().addLayers(layer).build().toByteArray();
    }

    private static VectorTile.Tile.Value value(Object value) {
        VectorTile.Tile.Value.Builder builder = VectorTile.Tile.Value.newBuilder();
        return (value instanceof Integer whole ? builder.setIntValue(whole) : builder.setStringValue(value.toString()))
                .build();
    }

    private static Map<String, Object> tags(CurrentRoads roads, int link) {
        RoadAttributes known = roads.network().attributes(link);
        Map<String, Object> tags = new LinkedHashMap<>();
        tags.put("id", roads.linkId(link).toString());
        tags.put("road", roads.network().roadOf(link).label());
        put(tags, "ref", known.ref());
        put(tags, "roadClass", known.roadClass());
        put(tags, "speedLimitKmh", known.speedLimitKmh());
        return tags;
    }

    private static void put(Map<String, Object> tags, String name, @Nullable Object value) {
        if (value != null) {
            tags.put(name, value);
        }
    }

    /** The part of a line in a tile, in its units; null where nothing of it would be seen. */
    static @Nullable Geometry line(double[] longitudeLatitude, MercatorTile tile) {
        List<Coordinate> points = new ArrayList<>();
        for (int i = 0; i < longitudeLatitude.length; i += 2) {
            double[] place = tile.place(longitudeLatitude[i + 1], longitudeLatitude[i]);
            var point = new Coordinate(Math.rint(place[0]), Math.rint(place[1]));
            if (points.isEmpty() || !points.get(points.size() - 1).equals2D(point)) {
                points.add(point);
            }
        }
        if (points.size() < 2) {
            return null;
        }
        LineString whole = GEOMETRIES.createLineString(points.toArray(Coordinate[]::new));
        Envelope box = whole.getEnvelopeInternal();
        if (tile.zoom() < ALL_FROM && Math.max(box.getWidth(), box.getHeight()) < UNITS_A_PIXEL) {
            return null;
        }
        if (!WITH_MARGIN.intersects(box)) {
            return null;
        }
        Geometry part = WITH_MARGIN.contains(box) ? whole : whole.intersection(GEOMETRIES.toGeometry(WITH_MARGIN));
        return part.isEmpty() || part.getDimension() < 1 ? null : part;
    }
}
