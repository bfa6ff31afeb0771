package org.culvert.animal.photograph.picture;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * The chunks of a PNG (ISO/IEC 15948; eXIf: PNG Specification, third edition, 11.3.4.5). Nothing is inflated here, so that no
 * chunk of words can grow.
 */
final class PngChunks {
    /** What makes the picture; everything else is passed over. */
    private static final Set<String> OF_THE_PICTURE = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");

    private static final int SIGNATURE = 8;
    /** Length, type and checksum. */
    private static final int AROUND = 12;

    private final byte[] picture;
    private final byte @Nullable [] exif;
    private final boolean exifIsDamaged;
    private final boolean whole;

    private PngChunks(byte[] picture, byte @Nullable [] exif, boolean exifIsDamaged, boolean whole) {
        this.picture = picture;
        this.exif = exif;
        this.exifIsDamaged = exifIsDamaged;
        this.whole = whole;
    }

    /** @param octets that begin as a PNG does */
    static PngChunks of(byte[] octets) {
        var kept = new ByteArrayOutputStream(octets.length);
        kept.write(octets, 0, SIGNATURE);
        byte[] exif = null;
        boolean damaged = false;
        boolean whole = false;
        int at = SIGNATURE;
        while (!whole && octets.length - at >= AROUND) {
            long length = Integer.toUnsignedLong(ByteBuffer.wrap(octets, at, 4).getInt());
            if (length > octets.length - at - AROUND) {
                break;
            }
            int data = (int) length;
            String type = new String(octets, at + 4, 4, StandardCharsets.ISO_8859_1);
            if (OF_THE_PICTURE.contains(type)) {
                kept.write(octets, at, data + AROUND);
            } else if (type.equals("eXIf") && exif == null && !damaged) {
                var checksum = new CRC32();
                checksum.update(octets, at + 4, data + 4);
                damaged = (int) checksum.getValue()
                        != ByteBuffer.wrap(octets, at + 8 + data, 4).getInt();
                exif = damaged ? null : java.util.Arrays.copyOfRange(octets, at + 8, at + 8 + data);
            }
            whole = type.equals("IEND");
            at += data + AROUND;
        }
        return new PngChunks(kept.toByteArray(), exif, damaged, whole);
    }

    /** The file with nothing in it but the picture. */
    byte[] picture() {
        return picture;
    }

    /** What the chunk of EXIF holds; null where there is none, or one that is damaged. */
    byte @Nullable [] exif() {
        return exif;
    }

    boolean exifIsDamaged() {
        return exifIsDamaged;
    }

    /** Whether the file reaches its end. */
    boolean isWhole() {
        return whole;
    }
}
