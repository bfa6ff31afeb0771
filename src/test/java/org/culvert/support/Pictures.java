package org.culvert.support;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Pictures as files, with what cameras and others write into them. */
public final class Pictures {
    private Pictures() {}

    /** As the Java library writes it. */
    public static byte[] file(String format, BufferedImage picture) {
        try {
            var octets = new ByteArrayOutputStream();
            if (!ImageIO.write(picture, format, octets)) {
                throw new IllegalArgumentException("nothing writes " + format);
            }
            return octets.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A picture of bars, so that it is not one colour. */
    public static BufferedImage bars(int width, int height) {
        var picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                picture.setRGB(x, y, (x / 16 + y / 16) % 2 == 0 ? 0x336699 : 0xcc9933);
            }
        }
        return picture;
    }

    /** A segment of a JPEG (ISO/IEC 10918-1, B.1.1.4) after the start of the image. */
    public static byte[] withSegment(byte[] jpeg, int marker, byte[] content) {
        var octets = new ByteArrayOutputStream();
        octets.write(jpeg, 0, 2);
        octets.write(0xff);
        octets.write(marker);
        octets.writeBytes(
                ByteBuffer.allocate(2).putShort((short) (content.length + 2)).array());
        octets.writeBytes(content);
        octets.write(jpeg, 2, jpeg.length - 2);
        return octets.toByteArray();
    }

    /** EXIF in a JPEG: APP1, "Exif" and two zeros (Exif 2.32, 4.7.2). */
    public static byte[] withExif(byte[] jpeg, byte[] exif) {
        return withSegment(jpeg, 0xe1, joined("Exif\0\0".getBytes(StandardCharsets.US_ASCII), exif));
    }

    /** A chunk of a PNG (ISO/IEC 15948, 5.3) after its header. */
    public static byte[] withChunk(byte[] png, String type, byte[] content) {
        int afterHeader = 8 + 12 + 13;
        byte[] typed = joined(type.getBytes(StandardCharsets.US_ASCII), content);
        var checksum = new CRC32();
        checksum.update(typed);
        var octets = new ByteArrayOutputStream();
        octets.write(png, 0, afterHeader);
        octets.writeBytes(ByteBuffer.allocate(4).putInt(content.length).array());
        octets.writeBytes(typed);
        octets.writeBytes(
                ByteBuffer.allocate(4).putInt((int) checksum.getValue()).array());
        octets.write(png, afterHeader, png.length - afterHeader);
        return octets.toByteArray();
    }

    public static byte[] joined(byte[] one, byte[] other) {
        byte[] both = java.util.Arrays.copyOf(one, one.length + other.length);
        System.arraycopy(other, 0, both, one.length, other.length);
        return both;
    }

    /** A small JPEG that says where it was taken, in whole ten-thousandths of a second of arc. */
    public static byte[] jpegAt(double latitude, double longitude) {
        return withExif(file("jpeg", bars(64, 48)), at(latitude, longitude).octets());
    }

    public static Exif at(double latitude, double longitude) {
        return Exif.bigEndian()
                .latitude(latitude < 0 ? "S" : "N", sexagesimal(Math.abs(latitude)))
                .longitude(longitude < 0 ? "W" : "E", sexagesimal(Math.abs(longitude)));
    }

    private static long[] sexagesimal(double degrees) {
        long parts = Math.round(degrees * 3600 * 10_000);
        return new long[] {parts / 36_000_000, 1, parts / 600_000 % 60, 1, parts % 600_000, 10_000};
    }

    /** What is sent to the server, with further fields that begin with a comma. */
    public static String sent(String mediaType, byte[] content, String more) {
        return "{\"mediaType\":\"%s\",\"content\":\"%s\"%s}"
                .formatted(mediaType, Base64.getEncoder().encodeToString(content), more);
    }
}
