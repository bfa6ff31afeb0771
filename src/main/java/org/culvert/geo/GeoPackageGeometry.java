package org.culvert.geo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * A geometry as a GeoPackage keeps it: a header and well-known binary (OGC 12-128r18, clause 2.1.3; the binary is that of
 * OGC 06-103r4, clause 8, with the codes for heights and measures of ISO 13249-3). Only the first two coordinates of a
 * position are read, easting or longitude first, whatever the reference system's own order is.
 *
 * @param kind what it is
 * @param parts its parts: of a point and of several points one list with one pair each, of lines one list each, of polygons
 *     their rings, the outer one first; coordinates in turn. None where it is empty
 */
public record GeoPackageGeometry(Kind kind, List<List<double[]>> parts) {
    /** A geometry of several has the same kind as one. */
    public enum Kind {
        POINT,
        LINE,
        POLYGON,
        /** A curve, a collection of several kinds, or something of the writer's own. */
        OTHER;

        /** For people: {@code line}. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private static final int[] ENVELOPE_OCTETS = {0, 32, 48, 48, 64};
    private static final int HEADER_OCTETS = 8;
    private static final int SINGLE_POINT = 1;
    private static final int SINGLE_LINE = 2;
    private static final int SINGLE_POLYGON = 3;
    private static final int SEVERAL = 3;
    private static final int HIGHEST_READ = SINGLE_POLYGON + SEVERAL;

    /** Codes of an older writing: heights, measures and a reference system as bits. */
    private static final int OLD_HEIGHT = 0x80000000;

    private static final int OLD_MEASURE = 0x40000000;
    private static final int OLD_SYSTEM = 0x20000000;

    public boolean isEmpty() {
        return parts.isEmpty();
    }

    /**
     * Reads a geometry.
     *
     * @throws IllegalArgumentException with a sentence about what is wrong, safe to show
     */
    public static GeoPackageGeometry read(byte[] blob) {
        if (blob.length < HEADER_OCTETS || blob[0] != 'G' || blob[1] != 'P') {
            throw new IllegalArgumentException("the geometry does not begin with GP");
        }
        if (blob[2] != 0) {
            throw new IllegalArgumentException(
                    "the geometry is written by version " + (blob[2] + 1) + " of the header");
        }
        int flags = blob[3];
        int envelope = flags >> 1 & 0b111;
        if (envelope >= ENVELOPE_OCTETS.length) {
            throw new IllegalArgumentException("the geometry's header has an envelope of no known kind");
        }
        if ((flags & 0b10_0000) != 0) {
            return new GeoPackageGeometry(Kind.OTHER, List.of());
        }
        return new Reading(blob, HEADER_OCTETS + ENVELOPE_OCTETS[envelope]).geometry();
    }

    private static final class Reading {
        private final byte[] octets;
        private int at;
        private boolean little;
        private int dimensions;

        Reading(byte[] octets, int at) {
            this.octets = octets;
            this.at = at;
        }

        GeoPackageGeometry geometry() {
            int type = head();
            if (type < SINGLE_POINT || type > HIGHEST_READ) {
                return new GeoPackageGeometry(Kind.OTHER, List.of());
            }
            List<List<double[]>> parts = new ArrayList<>();
            if (type <= SINGLE_POLYGON) {
                add(type, parts);
            } else {
                // The least that a part needs is its head and a number
                int count = count(2 * Integer.BYTES + 1);
                for (int part = 0; part < count; part++) {
                    int of = head();
                    if (of != type - SEVERAL) {
                        throw new IllegalArgumentException(
                                "the parts of the geometry are of another kind than it says");
                    }
                    add(of, parts);
                }
            }
            int single = type <= SINGLE_POLYGON ? type : type - SEVERAL;
            Kind kind = single == SINGLE_POINT ? Kind.POINT : single == SINGLE_LINE ? Kind.LINE : Kind.POLYGON;
            return new GeoPackageGeometry(kind, parts);
        }

        private void add(int type, List<List<double[]>> parts) {
            if (type == SINGLE_POINT) {
                double[] point = positions(1);
                if (!Double.isNaN(point[0]) || !Double.isNaN(point[1])) {
                    parts.add(List.of(point));
                }
                return;
            }
            List<double[]> part = new ArrayList<>();
            int rings = type == SINGLE_POLYGON ? count(Integer.BYTES) : 1;
            for (int ring = 0; ring < rings; ring++) {
                double[] line = positions(count(dimensions * Double.BYTES));
                if (line.length > 0) {
                    part.add(line);
                }
            }
            if (!part.isEmpty()) {
                parts.add(part);
            }
        }

        /** Order of octets and kind; how many numbers a position has is kept. */
        private int head() {
            require(1);
            int order = octets[at++];
            if (order != 0 && order != 1) {
                throw new IllegalArgumentException("the geometry names no order of octets");
            }
            little = order == 1;
            int code = integer();
            int plain = code & ~(OLD_HEIGHT | OLD_MEASURE | OLD_SYSTEM);
            if ((code & OLD_SYSTEM) != 0) {
                integer();
            }
            dimensions = 2
                    + ((code & OLD_HEIGHT) != 0 ? 1 : 0)
                    + ((code & OLD_MEASURE) != 0 ? 1 : 0)
                    + (plain / 1000 == 3 ? 2 : plain / 1000 == 0 ? 0 : 1);
            return plain / 1000 <= 3 ? plain % 1000 : 0;
        }

        private double[] positions(int count) {
            double[] pairs = new double[2 * count];
            for (int i = 0; i < count; i++) {
                pairs[2 * i] = number();
                pairs[2 * i + 1] = number();
                require((dimensions - 2) * Double.BYTES);
                at += (dimensions - 2) * Double.BYTES;
            }
            return pairs;
        }

        /** A count of things that take some octets each at least: what cannot be in the rest is a lie. */
        private int count(int octetsEach) {
            int count = integer();
            if (count < 0 || (long) count * octetsEach > octets.length - at) {
                throw new IllegalArgumentException("the geometry says that it is longer than it is");
            }
            return count;
        }

        private int integer() {
            require(Integer.BYTES);
            int value = 0;
            for (int i = 0; i < Integer.BYTES; i++) {
                value = value << 8 | octets[little ? at + Integer.BYTES - 1 - i : at + i] & 0xff;
            }
            at += Integer.BYTES;
            return value;
        }

        private double number() {
            require(Double.BYTES);
            long value = 0;
            for (int i = 0; i < Double.BYTES; i++) {
                value = value << 8 | octets[little ? at + Double.BYTES - 1 - i : at + i] & 0xff;
            }
            at += Double.BYTES;
            return Double.longBitsToDouble(value);
        }

        private void require(int more) {
            if (octets.length - at < more) {
                throw new IllegalArgumentException("the geometry ends before it is whole");
            }
        }
    }

    @Override
    public String toString() {
        return kind + " "
                + parts.stream()
                        .map(part -> part.stream().map(Arrays::toString).toList())
                        .toList();
    }
}
