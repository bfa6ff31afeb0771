package org.culvert.road.osm;

import crosby.binary.Osmformat;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.culvert.platform.InvalidException;
import org.culvert.platform.file.ReadingWatch;
import org.jspecify.annotations.Nullable;

/**
 * The ways of an extract of OpenStreetMap with their courses. The file is read twice: nodes come before the ways that need
 * them, and most nodes belong to nothing that is asked for. Not for use by several threads.
 */
public final class OsmExtract implements AutoCloseable {
    private static final double NANO = 1e-9;
    private static final int MOST_NODES = 50_000_000;

    /**
     * A way.
     *
     * @param id its number in OpenStreetMap
     * @param courses longitude and latitude in turn; several where nodes between them are not in the extract, none where no
     *     two nodes in a row are
     */
    public record Way(long id, Map<String, String> tags, List<double[]> courses) {}

    private record Bare(long id, Map<String, String> tags, long[] nodes) {}

    private final Path file;

    private OsmExtract(Path file) {
        this.file = file;
    }

    /** Takes a copy of what is sent; close it, and the copy is gone. */
    public static OsmExtract open(InputStream sent) {
        Path file = null;
        try {
            file = Files.createTempFile("culvert", ".osm.pbf");
            Files.copy(sent, file, StandardCopyOption.REPLACE_EXISTING);
            var opened = new OsmExtract(file);
            file = null;
            return opened;
        } catch (IOException broken) {
            throw InvalidException.of(
                    "body", "The file could not be read to its end.", "an extract in protocol buffers (.osm.pbf)");
        } finally {
            delete(file);
        }
    }

    /**
     * The ways whose tags are wanted, in the order of the file.
     *
     * @param watch hears how many there are so far
     */
    public List<Way> ways(Predicate<Map<String, String>> wanted, ReadingWatch watch) {
        List<Bare> bare = new ArrayList<>();
        long[] total = new long[1];
        PbfBlocks.read(file, block -> {
            for (Osmformat.PrimitiveGroup group : block.getPrimitivegroupList()) {
                for (Osmformat.Way way : group.getWaysList()) {
                    Map<String, String> tags = tags(block, way.getKeysList(), way.getValsList());
                    if (wanted.test(tags)) {
                        total[0] += way.getRefsCount();
                        requireRoom(total[0]);
                        bare.add(new Bare(way.getId(), tags, nodes(way)));
                    }
                }
            }
            watch.hear(ReadingWatch.Step.features, bare.size(), 0);
        });
        Nodes nodes = new Nodes(bare);
        PbfBlocks.read(file, nodes::take);
        return bare.stream()
                .map(way -> new Way(way.id, way.tags, nodes.courses(way.nodes)))
                .toList();
    }

    private static void requireRoom(long nodes) {
        if (nodes > MOST_NODES) {
            throw InvalidException.of(
                    "body",
                    "The roads of this extract have more than " + MOST_NODES + " positions.",
                    "an extract of the region, not of a continent");
        }
    }

    private static long[] nodes(Osmformat.Way way) {
        long[] nodes = new long[way.getRefsCount()];
        long id = 0;
        for (int i = 0; i < nodes.length; i++) {
            id += way.getRefs(i);
            nodes[i] = id;
        }
        return nodes;
    }

    private static Map<String, String> tags(Osmformat.PrimitiveBlock block, List<Integer> keys, List<Integer> values) {
        Map<String, String> tags = new LinkedHashMap<>();
        for (int i = 0; i < Math.min(keys.size(), values.size()); i++) {
            tags.put(word(block, keys.get(i)), word(block, values.get(i)));
        }
        return tags;
    }

    private static String word(Osmformat.PrimitiveBlock block, int number) {
        if (number < 0 || number >= block.getStringtable().getSCount()) {
            throw PbfBlocks.damaged();
        }
        return block.getStringtable().getS(number).toString(StandardCharsets.UTF_8);
    }

    /** Positions of the nodes that ways are made of. */
    private static final class Nodes {
        private final long[] ids;
        private final double[] longitudes;
        private final double[] latitudes;

        Nodes(List<Bare> ways) {
            this.ids = ways.stream()
                    .flatMapToLong(way -> Arrays.stream(way.nodes))
                    .sorted()
                    .distinct()
                    .toArray();
            this.longitudes = new double[ids.length];
            this.latitudes = new double[ids.length];
            Arrays.fill(longitudes, Double.NaN);
        }

        void take(Osmformat.PrimitiveBlock block) {
            for (Osmformat.PrimitiveGroup group : block.getPrimitivegroupList()) {
                for (Osmformat.Node node : group.getNodesList()) {
                    put(block, node.getId(), node.getLon(), node.getLat());
                }
                Osmformat.DenseNodes dense = group.getDense();
                if (dense.getLonCount() != dense.getIdCount() || dense.getLatCount() != dense.getIdCount()) {
                    throw PbfBlocks.damaged();
                }
                long id = 0;
                long longitude = 0;
                long latitude = 0;
                for (int i = 0; i < dense.getIdCount(); i++) {
                    id += dense.getId(i);
                    longitude += dense.getLon(i);
                    latitude += dense.getLat(i);
                    put(block, id, longitude, latitude);
                }
            }
        }

        private void put(Osmformat.PrimitiveBlock block, long id, long longitude, long latitude) {
            int at = Arrays.binarySearch(ids, id);
            if (at >= 0) {
                longitudes[at] = NANO * (block.getLonOffset() + block.getGranularity() * longitude);
                latitudes[at] = NANO * (block.getLatOffset() + block.getGranularity() * latitude);
            }
        }

        List<double[]> courses(long[] nodes) {
            List<double[]> courses = new ArrayList<>();
            double[] course = new double[2 * nodes.length];
            int size = 0;
            for (int i = 0; i <= nodes.length; i++) {
                int at = i == nodes.length ? -1 : Arrays.binarySearch(ids, nodes[i]);
                if (at >= 0 && !Double.isNaN(longitudes[at])) {
                    course[size++] = longitudes[at];
                    course[size++] = latitudes[at];
                } else {
                    if (size > 2) {
                        courses.add(Arrays.copyOf(course, size));
                    }
                    size = 0;
                }
            }
            return courses;
        }
    }

    @Override
    public void close() {
        delete(file);
    }

    private static void delete(@Nullable Path file) {
        if (file != null) {
            try {
                Files.deleteIfExists(file);
            } catch (IOException stays) {
                throw new IllegalStateException("a temporary file cannot be deleted", stays);
            }
        }
    }
}
