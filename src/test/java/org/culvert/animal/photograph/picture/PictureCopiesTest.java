package org.culvert.animal.photograph.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import java.awt.Color;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.StreamSupport;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;
import org.culvert.platform.InvalidException;
import org.culvert.platform.file.KeptFiles;
import org.culvert.support.Exif;
import org.culvert.support.Pictures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PictureCopiesTest {
    private static final long MOST = 50_000_000;
    private static final int WIDTH = 96;
    private static final int HEIGHT = 64;

    @TempDir
    Path folder;

    private static PictureCopies copies(String mediaType, byte[] octets) {
        return PictureCopies.of(mediaType, octets, 1, MOST);
    }

    private static BufferedImage decoded(byte[] jpeg) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(jpeg));
    }

    /** What is seen: red at the top left, green at the top right, blue at the bottom left, white at the bottom right. */
    private static int seen(int x, int y) {
        boolean left = x < WIDTH / 2;
        return y < HEIGHT / 2 ? left ? 0xff0000 : 0x00ff00 : left ? 0x0000ff : 0xffffff;
    }

    /**
     * The table of the standard (Exif 2.32, 4.6.4 A, Orientation): "the 0th row is at the visual ... of the image, and the 0th
     * column is the visual ...".
     */
    @ParameterizedTest
    @CsvSource({
        "1, top, left-hand side",
        "2, top, right-hand side",
        "3, bottom, right-hand side",
        "4, bottom, left-hand side",
        "5, left-hand side, top",
        "6, right-hand side, top",
        "7, right-hand side, bottom",
        "8, left-hand side, bottom"
    })
    void aCopyIsTheRightWayUp(int orientation, String firstRow, String firstColumn) throws IOException {
        boolean rowsAcross = firstRow.equals("top") || firstRow.equals("bottom");
        int rows = rowsAcross ? HEIGHT : WIDTH;
        int columns = rowsAcross ? WIDTH : HEIGHT;
        var stored = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_RGB);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                int along = firstRow.equals("top") || firstRow.equals("left-hand side") ? row : rows - 1 - row;
                int beside = firstColumn.equals("top") || firstColumn.equals("left-hand side")
                        ? column
                        : columns - 1 - column;
                stored.setRGB(column, row, rowsAcross ? seen(beside, along) : seen(along, beside));
            }
        }
        for (byte[] jpeg : List.of(
                PictureCopies.of(KeptFiles.PNG, Pictures.file("png", stored), orientation, MOST)
                        .copy(),
                PictureCopies.of(KeptFiles.PNG, Pictures.file("png", stored), orientation, MOST)
                        .small())) {
            BufferedImage copy = decoded(jpeg);
            assertThat(copy.getWidth()).isEqualTo(WIDTH);
            assertThat(copy.getHeight()).isEqualTo(HEIGHT);
            for (int x : new int[] {10, WIDTH - 10}) {
                for (int y : new int[] {10, HEIGHT - 10}) {
                    assertNear(copy.getRGB(x, y), seen(x, y));
                }
            }
        }
    }

    private static void assertNear(int found, int wanted) {
        var a = new Color(found);
        var b = new Color(wanted);
        assertThat(Math.abs(a.getRed() - b.getRed())
                        + Math.abs(a.getGreen() - b.getGreen())
                        + Math.abs(a.getBlue() - b.getBlue()))
                .as("%s beside %s", a, b)
                .isLessThan(60);
    }

    /** A JPEG with everything that tells: EXIF, XMP, IPTC within Photoshop's, a comment, a profile with a text. */
    private static byte[] talkative() {
        byte[] jpeg = Pictures.file("jpeg", Pictures.bars(640, 480));
        jpeg = Pictures.withSegment(jpeg, 0xfe, ascii("SECRET comment"));
        jpeg = Pictures.withSegment(
                jpeg, 0xed, ascii("Photoshop 3.0\0" + "8BIM\4\4\0\0\0\0\0\22\34\2\120\0\15SECRET author\0"));
        jpeg = Pictures.withSegment(
                jpeg,
                0xe1,
                ascii(
                        "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">"
                                + "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\"><rdf:Description rdf:about=\"\""
                                + " xmlns:dc=\"http://purl.org/dc/elements/1.1/\" dc:format=\"SECRET xmp\"/></rdf:RDF></x:xmpmeta>"));
        return Pictures.withExif(
                jpeg,
                Pictures.at(-30.5, 150.05)
                        .make("SECRET camera")
                        .taken("2026:11:25 18:40:00")
                        .octets());
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    private static List<String> directories(byte[] picture) throws Exception {
        Metadata told = ImageMetadataReader.readMetadata(new ByteArrayInputStream(picture));
        return StreamSupport.stream(told.getDirectories().spliterator(), false)
                .map(Directory::getName)
                .toList();
    }

    /** Markers of a JPEG up to its first scan (ISO/IEC 10918-1, table B.1). */
    private static List<Integer> markers(byte[] jpeg) {
        List<Integer> markers = new ArrayList<>();
        int at = 2;
        while (at < jpeg.length) {
            int marker = Byte.toUnsignedInt(jpeg[at + 1]);
            markers.add(marker);
            if (marker == 0xda) {
                break;
            }
            at += 2 + Short.toUnsignedInt(ByteBuffer.wrap(jpeg, at + 2, 2).getShort());
        }
        return markers;
    }

    @Test
    void aCopySaysNothingButThePicture() throws Exception {
        byte[] talkative = talkative();
        assertThat(directories(talkative)).contains("GPS", "Exif IFD0", "XMP", "IPTC", "JpegComment");
        PictureCopies copies = copies(KeptFiles.JPEG, talkative);
        for (byte[] copy : List.of(copies.copy(), copies.small())) {
            assertThat(directories(copy))
                    .isSubsetOf("JPEG", "JFIF", "Huffman", "File Type")
                    .contains("JPEG");
            assertThat(new String(copy, StandardCharsets.ISO_8859_1))
                    .doesNotContain("SECRET", "Exif", "Photoshop", "adobe", "ICC_PROFILE");
            // APP0 (JFIF), tables, frame, scan
            assertThat(markers(copy)).isSubsetOf(0xe0, 0xdb, 0xc0, 0xc4, 0xda).contains(0xc0, 0xda);
        }
    }

    /** GDAL finds what the original tells, and nothing in the copies. */
    @Test
    void gdalFindsNothingInACopy() throws Exception {
        byte[] talkative = talkative();
        Path original = folder.resolve("original.jpg");
        Files.write(original, talkative);
        assertThat(ExifTellingTest.gdalinfo(original)).contains("EXIF_GPSLatitude", "EXIF_Make", "SECRET");
        PictureCopies copies = copies(KeptFiles.JPEG, talkative);
        for (byte[] octets : List.of(copies.copy(), copies.small())) {
            Path copy = folder.resolve("copy.jpg");
            Files.write(copy, octets);
            assertThat(ExifTellingTest.gdalinfo(copy))
                    .contains("Driver: JPEG/JPEG JFIF", "Size is ")
                    .doesNotContain("EXIF_", "SECRET", "xml:XMP", "COMMENT", "GPS");
        }
    }

    /** The largest that fits is kept in its proportions, and nothing is made larger. */
    @Test
    void copiesAreAsLongAsTheyMayBe() throws IOException {
        PictureCopies wide = copies(KeptFiles.JPEG, Pictures.file("jpeg", Pictures.bars(5000, 1000)));
        assertThat(wide.widthPixels()).isEqualTo(5000);
        assertThat(wide.heightPixels()).isEqualTo(1000);
        BufferedImage copy = decoded(wide.copy());
        assertThat(List.of(copy.getWidth(), copy.getHeight())).isEqualTo(List.of(2048, 410));
        BufferedImage small = decoded(wide.small());
        assertThat(List.of(small.getWidth(), small.getHeight())).isEqualTo(List.of(320, 64));
        BufferedImage tiny = decoded(
                copies(KeptFiles.PNG, Pictures.file("png", Pictures.bars(3, 2))).copy());
        assertThat(List.of(tiny.getWidth(), tiny.getHeight())).isEqualTo(List.of(3, 2));
        BufferedImage line = decoded(copies(
                        KeptFiles.PNG, Pictures.file("png", new BufferedImage(9000, 1, BufferedImage.TYPE_INT_RGB)))
                .copy());
        assertThat(List.of(line.getWidth(), line.getHeight())).isEqualTo(List.of(2048, 1));
    }

    @Test
    void whatCanBeSeenThroughStandsOnWhiteAndGreyStaysGrey() throws IOException {
        var clear = new BufferedImage(40, 40, BufferedImage.TYPE_INT_ARGB);
        assertNear(
                decoded(copies(KeptFiles.PNG, Pictures.file("png", clear)).copy())
                        .getRGB(20, 20),
                0xffffff);
        var grey = new BufferedImage(40, 40, BufferedImage.TYPE_BYTE_GRAY);
        grey.setRGB(20, 20, 0x808080);
        assertThat(copies(KeptFiles.JPEG, Pictures.file("jpeg", grey)).notes()).isEmpty();
    }

    /**
     * A profile goes with the file, and what it means into the pixels: 55 of 255 in linear light is 128 in sRGB, since
     * 1.055 * (55 / 255) ^ (1 / 2.4) - 0.055 = 0.502 (IEC 61966-2-1). One that is damaged counts for nothing.
     */
    @Test
    void aPictureInOtherColoursKeepsThem() throws IOException {
        var grey = new BufferedImage(64, 64, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 64 * 64; i++) {
            grey.setRGB(i % 64, i / 64, 0x373737);
        }
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_LINEAR_RGB).getData();
        assertNear(decoded(withProfile(grey, profile).copy()).getRGB(30, 30), 0x808080);
        for (byte[] damaged : List.of(Arrays.copyOf(profile, profile.length / 2), ascii("no profile at all"))) {
            PictureCopies copies = withProfile(grey, damaged);
            assertNear(decoded(copies.copy()).getRGB(30, 30), 0x373737);
            assertThat(copies.notes()).hasSize(1);
        }
    }

    /** As the ICC has them embedded in a JPEG: APP2, its name, part one of one (from memory). */
    private static PictureCopies withProfile(BufferedImage picture, byte[] profile) {
        byte[] segment = Pictures.joined(ascii("ICC_PROFILE\0\1\1"), profile);
        return copies(KeptFiles.JPEG, Pictures.withSegment(Pictures.file("jpeg", picture), 0xe2, segment));
    }

    /** A header that promises more pixels than anybody may send, with hardly anything after it. */
    @Test
    void aBombIsRefusedByItsHeader() {
        byte[] png = Pictures.file("png", Pictures.bars(16, 16));
        ByteBuffer.wrap(png).putInt(16, 60_000).putInt(20, 60_000);
        var checksum = new CRC32();
        checksum.update(png, 12, 17);
        ByteBuffer.wrap(png).putInt(29, (int) checksum.getValue());
        refusedFor("60000 by 60000 pixels", KeptFiles.PNG, png);

        byte[] jpeg = Pictures.file("jpeg", Pictures.bars(16, 16));
        for (int i = 2; i < jpeg.length - 8; i++) {
            if (jpeg[i] == (byte) 0xff && jpeg[i + 1] == (byte) 0xc0) {
                // SOF0: length, precision, lines, samples per line (ISO/IEC 10918-1, B.2.2)
                ByteBuffer.wrap(jpeg).putShort(i + 5, (short) 65_500).putShort(i + 7, (short) 65_500);
                break;
            }
        }
        refusedFor("65500 by 65500 pixels", KeptFiles.JPEG, jpeg);
        assertThatThrownBy(() ->
                        PictureCopies.of(KeptFiles.PNG, Pictures.file("png", Pictures.bars(1001, 1000)), 1, 1_000_000))
                .isInstanceOf(InvalidException.class);
        assertThat(PictureCopies.of(KeptFiles.PNG, Pictures.file("png", Pictures.bars(1000, 1000)), 1, 1_000_000))
                .isNotNull();
    }

    /** Words that would grow a thousandfold, in a picture whose reader reads its words. */
    @Test
    void wordsThatWouldGrowAreNeverInflated() throws IOException {
        var grown = new ByteArrayOutputStream();
        try (var deflating = new DeflaterOutputStream(grown, new Deflater(9))) {
            byte[] zeros = new byte[1_000_000];
            for (int i = 0; i < 3000; i++) {
                deflating.write(zeros);
            }
        }
        var palette = new BufferedImage(16, 16, BufferedImage.TYPE_BYTE_INDEXED);
        byte[] words = Pictures.joined(ascii("Comment\0\0"), grown.toByteArray());
        byte[] png = Pictures.withChunk(Pictures.file("png", palette), "zTXt", words);
        png = Pictures.withChunk(png, "iCCP", Pictures.joined(ascii("Profile\0\0"), grown.toByteArray()));
        assertThat(copies(KeptFiles.PNG, png).notes()).isEmpty();
        assertThat(ExifTelling.read(KeptFiles.PNG, png).notes()).isEmpty();
    }

    @Test
    void aJpegOfVeryManyScansIsRefused() {
        byte[] jpeg = Pictures.file("jpeg", Pictures.bars(16, 16));
        var many = new ByteArrayOutputStream();
        many.write(jpeg, 0, jpeg.length - 2);
        for (int i = 0; i < 100; i++) {
            many.writeBytes(new byte[] {(byte) 0xff, (byte) 0xda, 0, 8, 1, 1, 0, 0, 63, 0});
        }
        refusedFor("too many parts", KeptFiles.JPEG, many.toByteArray());
    }

    private static void refusedFor(String words, String mediaType, byte[] octets) {
        assertThatThrownBy(() -> copies(mediaType, octets)).isInstanceOfSatisfying(InvalidException.class, refused -> {
            assertThat(refused.errors().get(0).field()).isEqualTo("content");
            assertThat(refused.errors().get(0).detail()).contains(words);
        });
    }

    /** Cut off anywhere it is either refused or shown with a word, and nothing else is thrown. */
    @Test
    void aPictureThatIsCutOffIsRefusedOrSaysSo() {
        byte[] jpeg = Pictures.file("jpeg", Pictures.bars(300, 200));
        int shown = 0;
        for (int length = 3; length < jpeg.length - 2; length += 11) {
            try {
                assertThat(copies(KeptFiles.JPEG, Arrays.copyOf(jpeg, length)).notes())
                        .as("of %d octets", length)
                        .hasSize(1);
                shown++;
            } catch (InvalidException refused) {
                assertThat(refused.errors().get(0).field()).isEqualTo("content");
            }
        }
        assertThat(shown).as("cut off within the picture").isPositive();
        byte[] png = Pictures.file("png", Pictures.bars(300, 200));
        for (int length = 8; length < png.length; length += 5) {
            refusedFor("cannot be read", KeptFiles.PNG, Arrays.copyOf(png, length));
        }
    }

    @Test
    void aPictureThatIsSpoiltIsRefusedOrShown() {
        var dice = new Random(61);
        for (String format : List.of("jpeg", "png")) {
            byte[] picture = Pictures.file(format, Pictures.bars(64, 64));
            String mediaType = "image/" + format;
            int shown = 0;
            int refused = 0;
            for (int i = 0; i < 600; i++) {
                byte[] spoilt = picture.clone();
                for (int n = dice.nextInt(1, 5); n > 0; n--) {
                    spoilt[dice.nextInt(8, spoilt.length)] = (byte) dice.nextInt(256);
                }
                try {
                    assertThat(copies(mediaType, spoilt).copy()).isNotEmpty();
                    shown++;
                } catch (InvalidException e) {
                    refused++;
                }
            }
            assertThat(List.of(shown, refused)).as(format).allMatch(count -> count > 0);
        }
    }

    @Test
    void anOrientationOutsideOfTheTableIsAMistakeOfOurs() {
        assertThatThrownBy(() -> Orientation.applied(9, new int[4], 2, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Orientation.applied(1, new int[5], 2, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThat(Exif.bigEndian().octets()).hasSize(14);
    }
}
