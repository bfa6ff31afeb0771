package org.culvert.support;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * EXIF written octet by octet, after TIFF 6.0 (section 2: header, image file directory, entries of 12 octets) and Exif 2.32
 * (CIPA DC-008-2019, 4.6: tags and their types). Nothing of the libraries that read it is used.
 */
public final class Exif {
    private static final int BYTE = 1;
    private static final int ASCII = 2;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;

    /** One entry: its type, how many values, and their octets. */
    private record Entry(int type, int count, byte[] octets) {}

    private final ByteOrder order;
    private final SortedMap<Integer, Entry> first = new TreeMap<>();
    private final SortedMap<Integer, Entry> exif = new TreeMap<>();
    private final SortedMap<Integer, Entry> gps = new TreeMap<>();

    private Exif(ByteOrder order) {
        this.order = order;
    }

    public static Exif bigEndian() {
        return new Exif(ByteOrder.BIG_ENDIAN);
    }

    public static Exif littleEndian() {
        return new Exif(ByteOrder.LITTLE_ENDIAN);
    }

    /** Orientation, tag 274. */
    public Exif orientation(int value) {
        first.put(274, shortOf(value));
        return this;
    }

    /** Make, tag 271. */
    public Exif make(String text) {
        first.put(271, ascii(text));
        return this;
    }

    /** XMP in the first directory, tag 700 (XMP Specification, part 3, 1.1.2). */
    public Exif xmp(String text) {
        byte[] octets = text.getBytes(StandardCharsets.UTF_8);
        first.put(700, new Entry(BYTE, octets.length, octets));
        return this;
    }

    /** DateTimeOriginal, tag 36867. */
    public Exif taken(String clock) {
        exif.put(36867, ascii(clock));
        return this;
    }

    /** OffsetTimeOriginal, tag 36881. */
    public Exif offset(String text) {
        exif.put(36881, ascii(text));
        return this;
    }

    /** GPSLatitudeRef and GPSLatitude, tags 1 and 2: degrees, minutes and seconds as numerators and denominators. */
    public Exif latitude(String reference, long... rationals) {
        gps.put(1, ascii(reference));
        gps.put(2, rationals(rationals));
        return this;
    }

    /** GPSLongitudeRef and GPSLongitude, tags 3 and 4. */
    public Exif longitude(String reference, long... rationals) {
        gps.put(3, ascii(reference));
        gps.put(4, rationals(rationals));
        return this;
    }

    /** GPSAltitudeRef and GPSAltitude, tags 5 and 6; 0 above sea level, 1 below. */
    public Exif altitude(int reference, long numerator, long denominator) {
        gps.put(5, new Entry(BYTE, 1, new byte[] {(byte) reference}));
        gps.put(6, rationals(numerator, denominator));
        return this;
    }

    /** GPSDateStamp and GPSTimeStamp, tags 29 and 7. */
    public Exif gpsTime(String day, long... rationals) {
        gps.put(29, ascii(day));
        gps.put(7, rationals(rationals));
        return this;
    }

    /** GPSImgDirectionRef and GPSImgDirection, tags 16 and 17. */
    public Exif direction(String reference, long numerator, long denominator) {
        gps.put(16, ascii(reference));
        gps.put(17, rationals(numerator, denominator));
        return this;
    }

    /** GPSHPositioningError, tag 31. */
    public Exif error(long numerator, long denominator) {
        gps.put(31, rationals(numerator, denominator));
        return this;
    }

    /** GPSStatus (9) or GPSMapDatum (18), or any other text of the GPS directory. */
    public Exif gpsText(int tag, String text) {
        gps.put(tag, ascii(text));
        return this;
    }

    /** The directory of GPS begins where the first one does: a circle. */
    public byte[] circular() {
        first.put(34853, new Entry(LONG, 1, number(4, 8)));
        return header(directory(8, first));
    }

    /** Everything, as it stands after "Exif" in a JPEG, or in a chunk eXIf of a PNG. */
    public byte[] octets() {
        if (!exif.isEmpty()) {
            first.put(34665, new Entry(LONG, 1, number(4, 0)));
        }
        if (!gps.isEmpty()) {
            first.put(34853, new Entry(LONG, 1, number(4, 0)));
        }
        int exifAt = 8 + directory(8, first).length;
        int gpsAt = exifAt + (exif.isEmpty() ? 0 : directory(exifAt, exif).length);
        first.computeIfPresent(34665, (tag, entry) -> new Entry(LONG, 1, number(4, exifAt)));
        first.computeIfPresent(34853, (tag, entry) -> new Entry(LONG, 1, number(4, gpsAt)));
        return header(
                directory(8, first),
                exif.isEmpty() ? new byte[0] : directory(exifAt, exif),
                gps.isEmpty() ? new byte[0] : directory(gpsAt, gps));
    }

    private byte[] header(byte[]... directories) {
        var all = new ByteArrayOutputStream();
        all.writeBytes((order == ByteOrder.BIG_ENDIAN ? "MM" : "II").getBytes(StandardCharsets.US_ASCII));
        all.writeBytes(number(2, 42));
        all.writeBytes(number(4, 8));
        for (byte[] directory : directories) {
            all.writeBytes(directory);
        }
        return all.toByteArray();
    }

    /** The number of entries, the entries, the place of the next directory (none), and what did not fit into four octets. */
    private byte[] directory(int at, SortedMap<Integer, Entry> entries) {
        var head = new ByteArrayOutputStream();
        var values = new ByteArrayOutputStream();
        int valuesAt = at + 2 + 12 * entries.size() + 4;
        head.writeBytes(number(2, entries.size()));
        entries.forEach((tag, entry) -> {
            head.writeBytes(number(2, tag));
            head.writeBytes(number(2, entry.type()));
            head.writeBytes(number(4, entry.count()));
            if (entry.octets().length <= 4) {
                head.writeBytes(java.util.Arrays.copyOf(entry.octets(), 4));
            } else {
                head.writeBytes(number(4, valuesAt + values.size()));
                values.writeBytes(entry.octets());
                if (values.size() % 2 == 1) {
                    values.write(0);
                }
            }
        });
        head.writeBytes(number(4, 0));
        head.writeBytes(values.toByteArray());
        return head.toByteArray();
    }

    private Entry shortOf(int value) {
        return new Entry(SHORT, 1, number(2, value));
    }

    private static Entry ascii(String text) {
        byte[] octets = (text + "\0").getBytes(StandardCharsets.US_ASCII);
        return new Entry(ASCII, octets.length, octets);
    }

    private Entry rationals(long... numbers) {
        var octets = new ByteArrayOutputStream();
        for (long number : numbers) {
            octets.writeBytes(number(4, number));
        }
        return new Entry(RATIONAL, numbers.length / 2, octets.toByteArray());
    }

    private byte[] number(int octets, long value) {
        ByteBuffer buffer = ByteBuffer.allocate(octets).order(order);
        if (octets == 2) {
            buffer.putShort((short) value);
        } else {
            buffer.putInt((int) value);
        }
        return buffer.array();
    }
}
