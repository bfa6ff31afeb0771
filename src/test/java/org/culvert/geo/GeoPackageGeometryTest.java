package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import org.culvert.geo.GeoPackageGeometry.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.Ordinate;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBWriter;
import org.locationtech.jts.io.WKTReader;

/** The well-known binary is JTS's; headers are made by hand after OGC 12-128r18, clause 2.1.3, table 6. */
class GeoPackageGeometryTest {
    private static final int[] ENVELOPE_OCTETS = {0, 32, 48, 48, 64};

    private static Geometry shape(String wellKnownText) {
        try {
            return new WKTReader().read(wellKnownText);
        } catch (ParseException wrong) {
            throw new IllegalArgumentException(wrong);
        }
    }

    private static byte[] blob(int envelope, int moreFlags, byte[] binary) {
        var out = new ByteArrayOutputStream();
        out.writeBytes(new byte[] {'G', 'P', 0, (byte) (envelope << 1 | 1 | moreFlags), 0, 0, 0, 0});
        out.writeBytes(new byte[envelope < ENVELOPE_OCTETS.length ? ENVELOPE_OCTETS[envelope] : 0]);
        out.writeBytes(binary);
        return out.toByteArray();
    }

    private static byte[] plain(String wellKnownText) {
        return new WKBWriter(2, ByteOrderValues.LITTLE_ENDIAN).write(shape(wellKnownText));
    }

    private static String flat(GeoPackageGeometry geometry) {
        var text = new StringBuilder(geometry.kind().word());
        for (List<double[]> part : geometry.parts()) {
            text.append(" |");
            part.forEach(line -> text.append(' ').append(Arrays.toString(line)));
        }
        return text.toString().toLowerCase(Locale.ROOT);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "POINT(1 2);point | [1.0, 2.0]",
                "POINT EMPTY;point",
                "LINESTRING(1 2,3 4);line | [1.0, 2.0, 3.0, 4.0]",
                "LINESTRING EMPTY;line",
                "MULTILINESTRING((1 2,3 4),(5 6,7 8,9 10));line | [1.0, 2.0, 3.0, 4.0] | [5.0, 6.0, 7.0, 8.0, 9.0, 10.0]",
                "MULTILINESTRING EMPTY;line",
                "POLYGON((0 0,9 0,9 9,0 0),(5 1,6 1,6 2,5 1));polygon | [0.0, 0.0, 9.0, 0.0, 9.0, 9.0, 0.0, 0.0] "
                        + "[5.0, 1.0, 6.0, 1.0, 6.0, 2.0, 5.0, 1.0]",
                "MULTIPOLYGON(((0 0,9 0,9 9,0 0)));polygon | [0.0, 0.0, 9.0, 0.0, 9.0, 9.0, 0.0, 0.0]",
                "MULTIPOINT((1 2),(3 4));point | [1.0, 2.0] | [3.0, 4.0]",
                "GEOMETRYCOLLECTION(POINT(1 2));other"
            })
    void inEitherOrderOfOctetsAndBehindEveryEnvelope(String wellKnownText, String expected) {
        for (int order : new int[] {ByteOrderValues.LITTLE_ENDIAN, ByteOrderValues.BIG_ENDIAN}) {
            byte[] binary = new WKBWriter(2, order).write(shape(wellKnownText));
            for (int envelope = 0; envelope < ENVELOPE_OCTETS.length; envelope++) {
                assertThat(flat(GeoPackageGeometry.read(blob(envelope, 0, binary))))
                        .as("order %s, envelope %s", order, envelope)
                        .isEqualTo(expected);
            }
        }
    }

    @Test
    void heightsAndMeasuresAreLeftAside() {
        String expected = "line | [1.0, 2.0, 4.0, 5.0] | [7.0, 8.0, 9.0, 10.0]";
        var heights = new WKBWriter(3, ByteOrderValues.LITTLE_ENDIAN);
        assertThat(flat(GeoPackageGeometry.read(
                        blob(0, 0, heights.write(shape("MULTILINESTRING Z((1 2 3,4 5 6),(7 8 0,9 10 0))"))))))
                .isEqualTo(expected);
        var measures = new WKBWriter(3, ByteOrderValues.BIG_ENDIAN);
        measures.setOutputOrdinates(Ordinate.createXYM());
        assertThat(flat(GeoPackageGeometry.read(
                        blob(0, 0, measures.write(shape("MULTILINESTRING M((1 2 3,4 5 6),(7 8 0,9 10 0))"))))))
                .isEqualTo(expected);
        var both = new WKBWriter(4, ByteOrderValues.LITTLE_ENDIAN, true);
        both.setOutputOrdinates(EnumSet.of(Ordinate.X, Ordinate.Y, Ordinate.Z, Ordinate.M));
        Geometry line = shape("MULTILINESTRING ZM((1 2 3 4,4 5 6 7),(7 8 0 0,9 10 0 0))");
        line.setSRID(4326);
        assertThat(flat(GeoPackageGeometry.read(blob(0, 0, both.write(line))))).isEqualTo(expected);
    }

    /** ISO 13249-3 adds 1000, 2000 or 3000 to the code where there are heights, measures or both. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void codesInThousandsToo(int thousands) {
        int dimensions = thousands == 3 ? 4 : 3;
        var binary = ByteBuffer.allocate(1 + 4 + 4 + 2 * dimensions * 8);
        binary.put((byte) 0).putInt(1000 * thousands + 2).putInt(2);
        for (int point = 0; point < 2; point++) {
            binary.putDouble(10 + point).putDouble(20 + point).putDouble(99);
            if (dimensions == 4) {
                binary.putDouble(77);
            }
        }
        assertThat(flat(GeoPackageGeometry.read(blob(1, 0, binary.array()))))
                .isEqualTo("line | [10.0, 20.0, 11.0, 21.0]");
    }

    @Test
    void whatIsOfTheWritersOwnOrACurveIsOther() {
        assertThat(GeoPackageGeometry.read(blob(0, 0b10_0000, new byte[] {1, 2}))
                        .kind())
                .isEqualTo(Kind.OTHER);
        // A circular string has code 8
        assertThat(GeoPackageGeometry.read(blob(0, 0, new byte[] {1, 8, 0, 0, 0, 0, 0, 0, 0}))
                        .kind())
                .isEqualTo(Kind.OTHER);
    }

    @Test
    void everyShorterPieceIsRefusedWithASentence() {
        byte[] whole = blob(1, 0, plain("MULTILINESTRING((1 2,3 4),(5 6,7 8))"));
        for (int length = 0; length < whole.length; length++) {
            byte[] piece = Arrays.copyOf(whole, length);
            assertThatThrownBy(() -> GeoPackageGeometry.read(piece))
                    .as("%s octets", length)
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("geometry");
        }
    }

    @Test
    void liesAreRefused() {
        byte[] line = plain("LINESTRING(1 2,3 4)");
        byte[] more = line.clone();
        more[7] = 0x7f;
        byte[] negative = line.clone();
        Arrays.fill(negative, 5, 9, (byte) 0xff);
        byte[] noOrder = line.clone();
        noOrder[0] = 7;
        byte[] otherParts = plain("MULTILINESTRING((1 2,3 4))");
        otherParts[10] = 1;
        for (byte[] lie : List.of(more, negative, noOrder, otherParts)) {
            assertThatThrownBy(() -> GeoPackageGeometry.read(blob(0, 0, lie)))
                    .isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> GeoPackageGeometry.read(blob(5, 0, line))).hasMessageContaining("envelope");
        byte[] later = blob(0, 0, line);
        later[2] = 3;
        assertThatThrownBy(() -> GeoPackageGeometry.read(later)).hasMessageContaining("version 4");
    }

    /** Lines within lines within lines, each some octets deeper: a reader that calls itself would run out of stack. */
    @Test
    void depthIsNoMatter() {
        var deep = new ByteArrayOutputStream();
        for (int i = 0; i < 1_000_000; i++) {
            deep.writeBytes(new byte[] {1, 5, 0, 0, 0, 1, 0, 0, 0});
        }
        assertThatThrownBy(() -> GeoPackageGeometry.read(blob(0, 0, deep.toByteArray())))
                .hasMessageContaining("another kind");
    }
}
