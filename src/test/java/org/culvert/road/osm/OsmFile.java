package org.culvert.road.osm;

import com.google.protobuf.ByteString;
import crosby.binary.Fileformat;
import crosby.binary.Osmformat;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.Deflater;

/** Writes extracts of OpenStreetMap for tests, with the classes of the format itself (OSM-binary). */
public final class OsmFile {
    private static final int NODES_OF_A_BLOCK = 1000;

    private record Node(long id, long longitude, long latitude) {}

    private record Way(long id, Map<String, String> tags, List<Long> nodes) {}

    private final Map<String, Node> nodes = new LinkedHashMap<>();
    private final List<Way> ways = new ArrayList<>();
    private boolean dense = true;
    private boolean packed = true;
    private String feature = "OsmSchema-V0.6";

    /** With nodes one by one, and blocks as they are. */
    public OsmFile plainly() {
        dense = false;
        packed = false;
        return this;
    }

    public OsmFile requiring(String newFeature) {
        feature = newFeature;
        return this;
    }

    /** A way along longitudes and latitudes in turn; where ways have a position in common they have a node in common. */
    public OsmFile way(long id, Map<String, String> tags, double... positions) {
        List<Long> along = new ArrayList<>();
        for (int i = 0; i < positions.length; i += 2) {
            along.add(node(positions[i], positions[i + 1]));
        }
        ways.add(new Way(id, tags, along));
        return this;
    }

    /** A way along a node that is not in the extract. */
    public OsmFile cutWay(long id, Map<String, String> tags, double[] before, double[] after) {
        way(id, tags, before);
        List<Long> along = ways.get(ways.size() - 1).nodes;
        along.add(999_999_999L);
        for (int i = 0; i < after.length; i += 2) {
            along.add(node(after[i], after[i + 1]));
        }
        return this;
    }

    private long node(double longitude, double latitude) {
        long east = Math.round(longitude * 1e7);
        long north = Math.round(latitude * 1e7);
        return nodes.computeIfAbsent(east + " " + north, key -> new Node(100 + 3L * nodes.size(), east, north)).id;
    }

    public byte[] octets() {
        var out = new ByteArrayOutputStream();
        try (var data = new DataOutputStream(out)) {
            write(
                    data,
                    "OSMHeader",
                    Osmformat.HeaderBlock.newBuilder()
                            .addRequiredFeatures(feature)
                            .addRequiredFeatures("DenseNodes")
                            .build()
                            .toByteString());
            List<Node> all = List.copyOf(nodes.values());
            for (int first = 0; first < all.size(); first += NODES_OF_A_BLOCK) {
                write(
                        data,
                        "OSMData",
                        nodeBlock(all.subList(first, Math.min(all.size(), first + NODES_OF_A_BLOCK)))
                                .toByteString());
            }
            write(data, "OSMData", wayBlock().toByteString());
        } catch (IOException impossible) {
            throw new IllegalStateException(impossible);
        }
        return out.toByteArray();
    }

    private void write(DataOutputStream out, String type, ByteString content) throws IOException {
        Fileformat.Blob.Builder blob = Fileformat.Blob.newBuilder();
        if (packed) {
            var deflater = new Deflater();
            deflater.setInput(content.toByteArray());
            deflater.finish();
            byte[] smaller = new byte[content.size() + 100];
            int length = deflater.deflate(smaller);
            deflater.end();
            blob.setRawSize(content.size()).setZlibData(ByteString.copyFrom(smaller, 0, length));
        } else {
            blob.setRaw(content);
        }
        byte[] octets = blob.build().toByteArray();
        byte[] header = Fileformat.BlobHeader.newBuilder()
                .setType(type)
                .setDatasize(octets.length)
                .build()
                .toByteArray();
        out.writeInt(header.length);
        out.write(header);
        out.write(octets);
    }

    private Osmformat.PrimitiveBlock nodeBlock(List<Node> some) {
        Osmformat.PrimitiveGroup.Builder group = Osmformat.PrimitiveGroup.newBuilder();
        if (dense) {
            Osmformat.DenseNodes.Builder packedNodes = Osmformat.DenseNodes.newBuilder();
            var last = new Node(0, 0, 0);
            for (Node node : some) {
                packedNodes.addId(node.id - last.id);
                packedNodes.addLon(node.longitude - last.longitude);
                packedNodes.addLat(node.latitude - last.latitude);
                last = node;
            }
            group.setDense(packedNodes);
        } else {
            some.forEach(node -> group.addNodes(Osmformat.Node.newBuilder()
                    .setId(node.id)
                    .setLon(node.longitude)
                    .setLat(node.latitude)));
        }
        return Osmformat.PrimitiveBlock.newBuilder()
                .setStringtable(Osmformat.StringTable.newBuilder().addS(ByteString.EMPTY))
                .addPrimitivegroup(group)
                .build();
    }

    private Osmformat.PrimitiveBlock wayBlock() {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        numbers.put("", 0);
        Osmformat.PrimitiveGroup.Builder group = Osmformat.PrimitiveGroup.newBuilder();
        for (Way way : ways) {
            Osmformat.Way.Builder built = Osmformat.Way.newBuilder().setId(way.id);
            way.tags.forEach((key, value) -> {
                built.addKeys(numbers.computeIfAbsent(key, absent -> numbers.size()));
                built.addVals(numbers.computeIfAbsent(value, absent -> numbers.size()));
            });
            long last = 0;
            for (long node : way.nodes) {
                built.addRefs(node - last);
                last = node;
            }
            group.addWays(built);
        }
        Osmformat.StringTable.Builder strings = Osmformat.StringTable.newBuilder();
        numbers.keySet().forEach(word -> strings.addS(ByteString.copyFrom(word, StandardCharsets.UTF_8)));
        return Osmformat.PrimitiveBlock.newBuilder()
                .setStringtable(strings)
                .addPrimitivegroup(group)
                .build();
    }
}
