package org.culvert.road;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.InputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.culvert.geo.Bounds;
import org.culvert.geo.CoordinateDoubt;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.Coordinates;
import org.culvert.geo.Grid;
import org.culvert.geo.Position;
import org.culvert.geo.Projections;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadLine;
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

    /**
     * Imports a GeoJSON feature collection as the next version.
     *
     * @param name what to call it
     * @param crs reference system of its coordinates; null takes the file's own, or longitude and latitude on WGS 84
     * @throws InvalidException naming the parameter or feature that is wrong
     */
    public RoadNetworkView importNetwork(String name, @Nullable String crs, AttributeNames names, InputStream body) {
        MessageDigest digest = sha256();
        GeoJsonRoads.Source source = new GeoJsonRoads(mapper, names).read(new DigestInputStream(body, digest));
        String crsName = crs != null ? crs : source.crsName() != null ? source.crsName() : USUAL_CRS;
        Grid grid = gridOf(crsName);
        NetworkBuilder.Built built = built(source, grid);
        checkRegion(built);
        NetworkStore.Kept kept = store.keep(
                built,
                new NetworkStore.Provenance(
                        name,
                        grid.name(),
                        HexFormat.of().formatHex(digest.digest()),
                        names.named(),
                        source.notUnderstood()));
        roads.became(kept.roads());
        return kept.view();
    }

    private static Grid gridOf(String name) {
        try {
            return Projections.named(name);
        } catch (CoordinateException unknown) {
            throw InvalidException.of(
                    "crs", PlaceInterpreter.sentence(unknown.whatIsWrong()), unknown.whatWouldBeRight());
        }
    }

    private static NetworkBuilder.Built built(GeoJsonRoads.Source source, Grid grid) {
        boolean plain = grid.name().equals("OGC:CRS84") || grid.name().equals("EPSG:4326");
        NetworkBuilder builder = plain ? NetworkBuilder.geographic() : NetworkBuilder.in(grid);
        for (int i = 0; i < source.lines().size(); i++) {
            RoadLine line = source.lines().get(i);
            check(line.vertices(), plain ? null : grid, source.featureOfLine().get(i));
            builder.add(line);
        }
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

    private static void check(double[] vertices, @Nullable Grid grid, int feature) {
        for (int i = 0; i < vertices.length; i += 2) {
            try {
                if (grid == null) {
                    new Position(vertices[i + 1], vertices[i]);
                } else {
                    grid.inverse(vertices[i], vertices[i + 1]);
                }
            } catch (CoordinateException impossible) {
                String swapped = impossible.otherReading() == null ? "" : "; latitude and longitude look swapped";
                throw GeoJsonRoads.badFeature(feature, impossible.whatIsWrong() + swapped);
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
