package org.culvert.road.osm;

import com.google.protobuf.ByteString;
import com.google.protobuf.InvalidProtocolBufferException;
import crosby.binary.Fileformat;
import crosby.binary.Osmformat;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.function.Consumer;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * The blocks of a file in OpenStreetMap's protocol buffers, one after another (wiki.openstreetmap.org, PBF Format). Blocks
 * longer than the format allows are refused before they are unpacked.
 */
final class PbfBlocks {
    private static final int LONGEST_HEADER = 64 << 10;
    private static final int LONGEST_BLOCK = 32 << 20;
    private static final Set<String> FEATURES = Set.of("OsmSchema-V0.6", "DenseNodes");

    private PbfBlocks() {}

    static InvalidException damaged() {
        return InvalidException.of(
                "body",
                "The file is damaged, or no extract of OpenStreetMap.",
                "an extract in protocol buffers (.osm.pbf)");
    }

    /** @throws InvalidException where the file is not what it should be */
    static void read(Path file, Consumer<Osmformat.PrimitiveBlock> taker) {
        boolean begun = false;
        try (InputStream stream = Files.newInputStream(file);
                var in = new DataInputStream(new BufferedInputStream(stream, 1 << 16))) {
            Fileformat.BlobHeader header;
            while ((header = header(in)) != null) {
                byte[] octets = whole(in, header.getDatasize(), LONGEST_BLOCK);
                if (header.getType().equals("OSMHeader")) {
                    requireKnown(Osmformat.HeaderBlock.parseFrom(unpacked(Fileformat.Blob.parseFrom(octets))));
                    begun = true;
                } else if (header.getType().equals("OSMData")) {
                    if (!begun) {
                        throw damaged();
                    }
                    taker.accept(Osmformat.PrimitiveBlock.parseFrom(unpacked(Fileformat.Blob.parseFrom(octets))));
                }
            }
        } catch (InvalidProtocolBufferException | EOFException | DataFormatException broken) {
            throw damaged();
        } catch (IOException broken) {
            throw new IllegalStateException("a temporary file cannot be read", broken);
        }
        if (!begun) {
            throw damaged();
        }
    }

    /** Null at the end of the file. */
    private static Fileformat.@Nullable BlobHeader header(DataInputStream in) throws IOException {
        byte[] length = in.readNBytes(Integer.BYTES);
        if (length.length == 0) {
            return null;
        }
        if (length.length < Integer.BYTES) {
            throw damaged();
        }
        int octets = 0;
        for (byte octet : length) {
            octets = octets << 8 | octet & 0xff;
        }
        return Fileformat.BlobHeader.parseFrom(whole(in, octets, LONGEST_HEADER));
    }

    private static byte[] whole(DataInputStream in, int octets, int longest) throws IOException {
        if (octets < 0 || octets > longest) {
            throw damaged();
        }
        byte[] read = in.readNBytes(octets);
        if (read.length < octets) {
            throw damaged();
        }
        return read;
    }

    private static ByteString unpacked(Fileformat.Blob blob) throws DataFormatException {
        if (blob.hasRaw()) {
            return blob.getRaw();
        }
        if (!blob.hasZlibData()) {
            throw InvalidException.of(
                    "body",
                    "The file is packed in a way that is not read here.",
                    "an extract packed with zlib, as is usual: osmium cat -f pbf,pbf_compression=zlib makes one");
        }
        int size = blob.getRawSize();
        if (size < 0 || size > LONGEST_BLOCK) {
            throw damaged();
        }
        byte[] unpacked = new byte[size];
        var inflater = new Inflater();
        try {
            inflater.setInput(blob.getZlibData().toByteArray());
            int at = 0;
            while (at < size) {
                int more = inflater.inflate(unpacked, at, size - at);
                if (more == 0) {
                    throw damaged();
                }
                at += more;
            }
        } finally {
            inflater.end();
        }
        return ByteString.copyFrom(unpacked);
    }

    private static void requireKnown(Osmformat.HeaderBlock header) {
        for (String feature : header.getRequiredFeaturesList()) {
            if (!FEATURES.contains(feature)) {
                throw InvalidException.of(
                        "body",
                        "The file wants its reader to know " + (feature.length() > 60 ? "something else" : feature)
                                + ", which is not known here.",
                        "an extract of the map as it is now, without its history");
            }
        }
    }
}
