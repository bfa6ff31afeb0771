package org.culvert.road;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.InputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.culvert.geo.Bounds;
import org.culvert.geo.CoordinateDoubt;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.Coordinates;
import org.culvert.geo.Grid;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.platform.file.ReadingWatch;
import org.culvert.platform.geopackage.GeoPackage;
import org.culvert.road.network.CarriagewayPairs;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadLine;
import org.culvert.road.osm.OsmExtract;
import org.jspecify.annotations.Nullable;

/** Imports road networks. Reading and joining happen before the database is asked for anything. */
@ApplicationScoped
public class RoadNetworkService {
    private static final String USUAL_CRS = "CRS84";

    private final ObjectMapper mapper;
    private final NetworkStore store;
    private final RoadService roads;
    private final RegionService regions;

    RoadNetworkService(ObjectMapper mapper, NetworkStore store, RoadService roads, RegionService regions) {
        this.mapper = mapper;
        this.store = store;
        this.roads = roads;
        this.regions = regions;
    }

    public List<RoadNetworkView> listNetworks() {
        return store.listVersions();
    }

    /** A kind of file that roads come in. */
    public enum Format {
        GEO_JSON,
        GEO_PACKAGE,
        OPEN_STREET_MAP
    }

    /** A file that was read, and the network that was built of it, before anything of it is kept. */
    public static final class ReadNetwork {
        private final NetworkBuilder.Built built;
        private final NetworkStore.Provenance provenance;

        private ReadNetwork(NetworkBuilder.Built built, NetworkStore.Provenance provenance) {
            this.built = built;
            this.provenance = provenance;
        }
    }

    /**
     * Imports a file of roads as the next version.
     *
     * @param name what to call it
     * @param crs reference system of its coordinates; null takes the file's own, or longitude and latitude on WGS 84
     * @param layer layer of a GeoPackage; null where it has one only
     * @throws InvalidException naming the parameter or feature that is wrong
     */
    public RoadNetworkView importNetwork(
            Format format,
            String name,
            @Nullable String crs,
            @Nullable String layer,
            AttributeNames names,
            InputStream body) {
        ReadingWatch nobody = ReadingWatch.NOBODY;
        return keep(read(format, name, crs, layer, names, body, nobody), nobody);
    }

    /** Imports a GeoJSON feature collection as the next version. */
    public RoadNetworkView importNetwork(String name, @Nullable String crs, AttributeNames names, InputStream body) {
        return importNetwork(Format.GEO_JSON, name, crs, null, names, body);
    }

    /** The first half of {@link #importNetwork}, which keeps nothing and may take minutes. */
    public ReadNetwork read(
            Format format,
            String name,
            @Nullable String crs,
            @Nullable String layer,
            AttributeNames names,
            InputStream body,
            ReadingWatch watch) {
        MessageDigest digest = sha256();
        var digested = new DigestInputStream(body, digest);
        Sourced sourced = switch (format) {
            case GEO_JSON -> readGeoJson(crs, names, digested);
            case GEO_PACKAGE -> readGeoPackage(crs, layer, names, digested, watch);
            case OPEN_STREET_MAP -> readOsm(crs, names, digested, watch);
        };
        watch.hear(ReadingWatch.Step.joining, 0, 0);
        NetworkBuilder.Built built = built(sourced.source, sourced.grid);
        checkRegion(built);
        return new ReadNetwork(
                built,
                new NetworkStore.Provenance(
                        name,
                        sourced.grid.name(),
                        HexFormat.of().formatHex(digest.digest()),
                        sourced.names.named(),
                        sourced.source.notUnderstood()));
    }

    /** The second half of {@link #importNetwork}. */
    public RoadNetworkView keep(ReadNetwork read, ReadingWatch watch) {
        NetworkStore.Kept kept =
                store.keep(read.built, read.provenance, roads.findCurrent().orElse(null), watch);
        roads.became(kept.roads());
        return kept.view();
    }

    private record Sourced(RoadSource source, Grid grid, AttributeNames names) {}

    private Sourced readGeoJson(@Nullable String crs, AttributeNames names, InputStream body) {
        RoadSource source = new GeoJsonRoads(mapper, names).read(body);
        String crsName = crs != null ? crs : source.crsName() != null ? source.crsName() : USUAL_CRS;
        return new Sourced(source, GeoPackageRoads.named(crsName), names);
    }

    private static Sourced readGeoPackage(
            @Nullable String crs,
            @Nullable String layerName,
            AttributeNames names,
            InputStream body,
            ReadingWatch watch) {
        try (GeoPackage file = GeoPackage.open(body)) {
            GeoPackage.Layer layer = file.layer(layerName);
            Grid grid = GeoPackageRoads.gridOf(layer, crs);
            return new Sourced(new GeoPackageRoads(names).read(file, layer, watch), grid, names);
        }
    }

    private static Sourced readOsm(@Nullable String crs, AttributeNames names, InputStream body, ReadingWatch watch) {
        Grid grid = GeoPackageRoads.named(crs == null ? USUAL_CRS : crs);
        if (!isWgs84(grid)) {
            throw InvalidException.of(
                    "crs", "OpenStreetMap is in longitude and latitude on WGS 84.", "no crs, or " + USUAL_CRS);
        }
        try (OsmExtract extract = OsmExtract.open(body)) {
            return new Sourced(
                    new OsmRoads(names).read(extract, watch), grid, names.or(AttributeNames.OPEN_STREET_MAP));
        }
    }

    private static boolean isWgs84(Grid grid) {
        return grid.name().equals("OGC:CRS84") || grid.name().equals("EPSG:4326");
    }

    private static NetworkBuilder.Built built(RoadSource source, Grid grid) {
        boolean plain = isWgs84(grid);
        NetworkBuilder builder = plain ? NetworkBuilder.geographic() : NetworkBuilder.in(grid);
        for (int i = 0; i < source.lines().size(); i++) {
            check(source, i, plain ? null : grid);
        }
        withCarriageways(source.lines(), plain ? null : grid).forEach(builder::add);
        source.leftOutByKey().forEach(builder::leaveOut);
        try {
            return builder.build();
        } catch (IllegalArgumentException impossible) {
            throw InvalidException.of(
                    "features",
                    PlaceInterpreter.sentence(String.valueOf(impossible.getMessage())),
                    "roads of one region, as lines with two different vertices at least");
        }
    }

    /** Lines that are travelled one way beside one another are carriageways of one road, also where the source does not say. */
    private static List<RoadLine> withCarriageways(List<RoadLine> lines, @Nullable Grid grid) {
        List<RoadLine> onEarth = lines.stream()
                .map(line ->
                        grid == null || !Boolean.TRUE.equals(line.attributes().oneWay())
                                ? line
                                : new RoadLine(line.key(), line.attributes(), null, onEarth(line.vertices(), grid)))
                .toList();
        @Nullable String[] told = CarriagewayPairs.tell(onEarth);
        List<RoadLine> all = new ArrayList<>(lines);
        for (int i = 0; i < told.length; i++) {
            if (told[i] != null) {
                RoadLine line = lines.get(i);
                all.set(
                        i,
                        new RoadLine(
                                line.key(),
                                line.attributes().withCarriageway(told[i]),
                                line.startMeasureMetres(),
                                line.vertices()));
            }
        }
        return all;
    }

    private static double[] onEarth(double[] vertices, Grid grid) {
        double[] onEarth = new double[vertices.length];
        for (int i = 0; i < vertices.length; i += 2) {
            Position position = grid.inverse(vertices[i], vertices[i + 1]);
            onEarth[i] = position.longitude();
            onEarth[i + 1] = position.latitude();
        }
        return onEarth;
    }

    private static void check(RoadSource source, int line, @Nullable Grid grid) {
        double[] vertices = source.lines().get(line).vertices();
        for (int i = 0; i < vertices.length; i += 2) {
            try {
                if (grid == null) {
                    new Position(vertices[i + 1], vertices[i]);
                } else {
                    grid.inverse(vertices[i], vertices[i + 1]);
                }
            } catch (CoordinateException impossible) {
                String swapped = impossible.otherReading() == null ? "" : "; latitude and longitude look swapped";
                throw source.bad(line, impossible.whatIsWrong() + swapped);
            }
        }
    }

    /** A whole file with its coordinates under each other's headings is legal, and somewhere else on Earth. */
    private void checkRegion(NetworkBuilder.Built built) {
        Position centre = built.network().frame().bounds().centre();
        regions.findRegion().ifPresent(region -> {
            Bounds box = new Bounds(region.south(), region.west(), region.north(), region.east());
            List<CoordinateDoubt> doubts = Coordinates.doubts(centre, box);
            if (!doubts.isEmpty()
                    && !box.grownBy(PlaceInterpreter.NEAR_THE_REGION_DEGREES).contains(centre)) {
                throw InvalidException.of(
                        "features",
                        "The middle of the network is at " + centre.asText() + ", outside the region " + region.name()
                                + ": " + doubts.get(0).reason() + ".",
                        "longitude before latitude, in a file whose middle is in or near the region",
                        doubts.get(0).otherReading());
            }
        });
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
    }
}
