package org.culvert.animal.photograph.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.lang.GeoLocation;
import com.drew.metadata.exif.GpsDirectory;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.culvert.geo.CoordinateReading;
import org.culvert.geo.Coordinates;
import org.culvert.platform.file.KeptFiles;
import org.culvert.support.Exif;
import org.culvert.support.Pictures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ExifTellingTest {
    private static final byte[] JPEG = Pictures.file("jpeg", Pictures.bars(64, 48));
    private static final byte[] PNG = Pictures.file("png", Pictures.bars(64, 48));

    @TempDir
    Path folder;

    private static PictureTold told(Exif exif) {
        return ExifTelling.read(KeptFiles.JPEG, Pictures.withExif(JPEG, exif.octets()));
    }

    private static PictureTold.ToldPlace place(Exif exif) {
        PictureTold told = told(exif);
        assertThat(told.notes()).isEmpty();
        assertThat(told.place()).isNotNull();
        return told.place();
    }

    /** The two forms that Exif 2.32 (4.6.6, GPSLatitude) gives: dd/1,mm/1,ss/1 and dd/1,mmmm/100,0/1. */
    @Test
    void aPlaceIsReadInBothFormsOfTheStandard() {
        for (Exif exif : List.of(Exif.bigEndian(), Exif.littleEndian())) {
            PictureTold.ToldPlace seconds =
                    place(exif.latitude("S", 33, 1, 51, 1, 31, 1).longitude("E", 151, 1, 12, 1, 53, 1));
            // 33 + 51/60 + 31/3600 and 151 + 12/60 + 53/3600, by hand
            assertThat(seconds.decimalLatitude()).isEqualTo(-33.858611, within(1e-6));
            assertThat(seconds.decimalLongitude()).isEqualTo(151.214722, within(1e-6));
            assertThat(seconds.verbatim()).isEqualTo("33\u00b051'31\"S 151\u00b012'53\"E");
            PictureTold.ToldPlace minutes =
                    place(exif.latitude("N", 50, 1, 4654, 100, 0, 1).longitude("W", 5, 1, 250, 100, 0, 1));
            // 50 + 46.54/60 and 5 + 2.5/60, by hand
            assertThat(minutes.decimalLatitude()).isEqualTo(50.775667, within(1e-6));
            assertThat(minutes.decimalLongitude()).isEqualTo(-5.041667, within(1e-6));
            assertThat(minutes.verbatim()).isEqualTo("50\u00b046.54'N 5\u00b02.50'W");
        }
    }

    /** The library that the bytes go through has a reading of places of its own, which is not used here. */
    @Test
    void theLibrarysOwnReadingOfAPlaceAgrees() throws Exception {
        var dice = new Random(59);
        for (int i = 0; i < 200; i++) {
            byte[] picture = Pictures.jpegAt(dice.nextDouble(-89, 89), dice.nextDouble(-179, 179));
            PictureTold.ToldPlace ours =
                    ExifTelling.read(KeptFiles.JPEG, picture).place();
            GeoLocation theirs = JpegMetadataReader.readMetadata(new ByteArrayInputStream(picture))
                    .getFirstDirectoryOfType(GpsDirectory.class)
                    .getGeoLocation();
            assertThat(ours.decimalLatitude()).isEqualTo(theirs.getLatitude(), within(1e-10));
            assertThat(ours.decimalLongitude()).isEqualTo(theirs.getLongitude(), within(1e-10));
        }
    }

    /** GDAL reads the bytes that the tests write as this does: they are EXIF, and not only to one reader. */
    @Test
    void gdalReadsTheSame() throws Exception {
        Path file = folder.resolve("picture.jpg");
        Exif exif = Exif.littleEndian()
                .orientation(6)
                .taken("2026:11:25 18:40:00")
                .offset("+11:00")
                .latitude("S", 30, 1, 30, 1, 1512, 100)
                .longitude("E", 150, 1, 3, 1, 450, 100)
                .altitude(0, 1234, 10)
                .gpsTime("2026:11:25", 7, 1, 40, 1, 1, 1)
                .direction("T", 27025, 100)
                .error(125, 10);
        Files.write(file, Pictures.withExif(JPEG, exif.octets()));
        String said = gdalinfo(file);
        assertThat(said)
                .contains("EXIF_Orientation=6")
                .contains("EXIF_DateTimeOriginal=2026:11:25 18:40:00")
                .contains("EXIF_GPSLatitudeRef=S")
                .contains("EXIF_GPSLatitude=(30) (30) (15.12)")
                .contains("EXIF_GPSLongitude=(150) (3) (4.5)")
                .contains("EXIF_GPSAltitude=(123.4)")
                .contains("EXIF_GPSImgDirection=(270.25)")
                .contains("EXIF_GPSDateStamp=2026:11:25");
        PictureTold told = ExifTelling.read(KeptFiles.JPEG, Files.readAllBytes(file));
        assertThat(told.orientation()).isEqualTo(6);
        assertThat(told.cameraClock()).isEqualTo(LocalDateTime.parse("2026-11-25T18:40:00"));
        assertThat(told.cameraOffset()).isEqualTo(ZoneOffset.ofHours(11));
        assertThat(told.gpsTime()).isEqualTo(Instant.parse("2026-11-25T07:40:01Z"));
        assertThat(told.place().verbatim()).isEqualTo("30\u00b030'15.12\"S 150\u00b03'4.50\"E");
        assertThat(told.place().altitudeMetres()).isEqualTo(123.4);
        assertThat(told.place().directionDegrees()).isEqualTo(270.25);
        assertThat(told.place().directionFrom()).isEqualTo("trueNorth");
        assertThat(told.place().errorMetres()).isEqualTo(12.5);
    }

    static String gdalinfo(Path file) throws Exception {
        Process gdalinfo = new ProcessBuilder("gdalinfo", file.toString())
                .redirectErrorStream(true)
                .start();
        String said = new String(gdalinfo.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(gdalinfo.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(gdalinfo.exitValue()).as(said).isZero();
        return said;
    }

    /** What is kept of a place as words is read again when an incident is put there. */
    @ParameterizedTest
    @CsvSource({
        "30,1,30,1,1512,100, 150,1,3,1,450,100",
        "30,1,305,10,0,1, 150,1,325,100,0,1",
        "305,10,0,1,0,1, 1500525,10000,0,1,0,1",
        "30,1,30,1,33554431,1048576, 150,1,3,1,7,3",
        "30,1,59,1,599999999,10000000, 150,1,59,1,599999999,10000000",
        "61,2,30,1,1,1, 301,2,3,1,1,7",
        "30,1,30,1,378,25, 150,1,3,1,9,2"
    })
    void itsWordsLeadToItsPlace(
            long a, long b, long c, long d, long e, long f, long g, long h, long i, long j, long k, long l) {
        PictureTold.ToldPlace place =
                place(Exif.bigEndian().latitude("S", a, b, c, d, e, f).longitude("E", g, h, i, j, k, l));
        CoordinateReading read = Coordinates.text(place.verbatim(), null);
        // Never off by more than what its digits cannot tell
        double resolution = read.uncertaintyMetres() - org.culvert.geo.Uncertainty.RECEIVER_METRES;
        assertThat(org.culvert.geo.Geodesy.metresBetween(
                        read.position(),
                        new org.culvert.geo.Position(place.decimalLatitude(), place.decimalLongitude())))
                .isLessThanOrEqualTo(resolution);
    }

    /** Some programs write fractions reduced: 378/25 is 15.12, and 9/2 is 4.5. */
    @Test
    void aReducedFractionKeepsItsDigits() {
        PictureTold.ToldPlace place =
                place(Exif.bigEndian().latitude("S", 30, 1, 30, 1, 378, 25).longitude("E", 150, 1, 3, 1, 9, 2));
        assertThat(place.verbatim()).isEqualTo("30\u00b030'15.12\"S 150\u00b03'4.5\"E");
    }

    @Test
    void coarseDigitsMakeALargeUncertainty() {
        PictureTold.ToldPlace whole =
                place(Exif.bigEndian().latitude("S", 30, 1, 30, 1, 15, 1).longitude("E", 150, 1, 3, 1, 4, 1));
        // A second of arc of latitude is about 31 m, one of longitude at 30.5 degrees about 27 m: 41 m together, and 30
        // m
        assertThat(Coordinates.text(whole.verbatim(), null).uncertaintyMetres()).isEqualTo(71, within(1.0));
    }

    @ParameterizedTest
    @CsvSource({
        "S, 91,1,0,1,0,1",
        "S, 90,1,0,1,1,100",
        "S, 30,1,60,1,0,1",
        "S, 30,1,0,1,60,1",
        "S, 30,0,0,1,0,1",
        "S, 30,1,0,0,0,1"
    })
    void whatIsNoPlaceOnEarthIsPassedOver(String reference, long a, long b, long c, long d, long e, long f) {
        PictureTold told =
                told(Exif.bigEndian().latitude(reference, a, b, c, d, e, f).longitude("E", 150, 1, 0, 1, 0, 1));
        assertThat(told.place()).isNull();
        assertThat(told.notes()).containsExactly("Its place is no place on Earth, and was passed over.");
    }

    @Test
    void aPlaceWithoutItsHemisphereOrInAnotherDatumOrAtNothingIsPassedOver() {
        assertThat(told(Exif.bigEndian().latitude("", 30, 1, 0, 1, 0, 1).longitude("E", 150, 1, 0, 1, 0, 1)))
                .satisfies(told -> assertThat(told.place()).isNull())
                .satisfies(told -> assertThat(told.notes().toString()).contains("north or south"));
        assertThat(told(Pictures.at(-30.5, 150).gpsText(18, "TOKYO")))
                .satisfies(told -> assertThat(told.place()).isNull())
                .satisfies(told -> assertThat(told.notes().toString()).contains("another datum"));
        assertThat(told(Exif.bigEndian().latitude("N", 0, 1, 0, 1, 0, 1).longitude("E", 0, 1, 0, 1, 0, 1)))
                .satisfies(told -> assertThat(told.place()).isNull())
                .satisfies(told -> assertThat(told.notes().toString()).contains("0, 0"));
        assertThat(place(Pictures.at(-30.5, 150).gpsText(18, "WGS-84")).decimalLatitude())
                .isEqualTo(-30.5);
        assertThat(told(Pictures.at(-30.5, 150).gpsText(9, "V")))
                .satisfies(told -> assertThat(told.place()).isNotNull())
                .satisfies(told -> assertThat(told.notes().toString()).contains("older fix"));
        assertThat(told(Exif.bigEndian().latitude("S", 30, 1, 0, 1).longitude("E", 150, 1, 0, 1, 0, 1))
                        .place())
                .isNull();
    }

    @Test
    void belowTheSeaIsBelow() {
        assertThat(place(Pictures.at(-30.5, 150).altitude(1, 421, 1)).altitudeMetres())
                .isEqualTo(-421);
        assertThat(place(Pictures.at(-30.5, 150).altitude(0, 421, 0)).altitudeMetres())
                .isNull();
        assertThat(place(Pictures.at(-30.5, 150).error(0, 1)).errorMetres()).isNull();
        assertThat(place(Pictures.at(-30.5, 150).direction("M", 90, 1)).directionFrom())
                .isEqualTo("magneticNorth");
        assertThat(place(Pictures.at(-30.5, 150).direction("T", 400, 1)).directionDegrees())
                .isNull();
    }

    @Test
    void aClockWithoutAnOffsetStaysOne() {
        PictureTold told = told(Exif.bigEndian().taken("2026:11:25 18:40:59"));
        assertThat(told.cameraClock()).isEqualTo(LocalDateTime.parse("2026-11-25T18:40:59"));
        assertThat(told.cameraOffset()).isNull();
        assertThat(told(Exif.bigEndian().taken("2026:11:25 18:40:59").offset("-03:30"))
                        .cameraOffset())
                .isEqualTo(ZoneOffset.ofHoursMinutes(-3, -30));
    }

    /** Exif 2.32, 4.6.5: where the time is not known, all but the colons are blanks; others write zeros. */
    @ParameterizedTest
    @ValueSource(strings = {"    :  :     :  :  ", "0000:00:00 00:00:00"})
    void aClockThatWasNeverSetSaysNothing(String clock) {
        PictureTold told = told(Exif.bigEndian().taken(clock));
        assertThat(told.cameraClock()).isNull();
        assertThat(told.notes()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"2026-11-25 18:40:00", "2026:13:25 18:40:00", "2026:02:30 18:40:00", "yesterday", "2026:11:25"})
    void aClockInAnotherFormIsPassedOver(String clock) {
        PictureTold told = told(Exif.bigEndian().taken(clock));
        assertThat(told.cameraClock()).isNull();
        assertThat(told.notes()).hasSize(1).first().asString().contains("another form");
    }

    @Test
    void satelliteTimeIsUtcWithFractionsAndIsPassedOverWhereItIsNone() {
        assertThat(told(Exif.bigEndian().gpsTime("2026:11:25", 23, 1, 59, 1, 59995, 1000))
                        .gpsTime())
                .isEqualTo(Instant.parse("2026-11-25T23:59:59.995Z"));
        assertThat(told(Exif.bigEndian().gpsTime("2026:11:25", 24, 1, 0, 1, 0, 1)))
                .satisfies(told -> assertThat(told.gpsTime()).isNull())
                .satisfies(told -> assertThat(told.notes()).hasSize(1));
        assertThat(told(Exif.bigEndian().gpsTime("the 25th", 2, 1, 0, 1, 0, 1)).notes())
                .hasSize(1);
    }

    @Test
    void aPngTellsInItsChunk() {
        byte[] exif = Pictures.at(-30.5, 150.05).orientation(8).octets();
        PictureTold told = ExifTelling.read(KeptFiles.PNG, Pictures.withChunk(PNG, "eXIf", exif));
        assertThat(told.place().decimalLongitude()).isEqualTo(150.05, within(1e-7));
        assertThat(told.orientation()).isEqualTo(8);
        assertThat(told.notes()).isEmpty();

        byte[] damaged = Pictures.withChunk(PNG, "eXIf", exif);
        damaged[8 + 12 + 13 + 8 + 20] ^= 1;
        assertThat(ExifTelling.read(KeptFiles.PNG, damaged).place()).isNull();
        assertThat(ExifTelling.read(KeptFiles.PNG, damaged).notes()).hasSize(1);
        byte[] large = Pictures.withChunk(PNG, "eXIf", Arrays.copyOf(exif, 70_000));
        assertThat(ExifTelling.read(KeptFiles.PNG, large).notes()).hasSize(1);
        assertThat(ExifTelling.read(KeptFiles.PNG, PNG).notes()).isEmpty();
    }

    @Test
    void anOrientationThatIsNoneIsPassedOver() {
        for (int wrong : List.of(0, 9, 65535)) {
            PictureTold told = told(Exif.bigEndian().orientation(wrong));
            assertThat(told.orientation()).isEqualTo(1);
            assertThat(told.notes()).hasSize(1);
        }
        assertThat(ExifTelling.read(KeptFiles.JPEG, JPEG).orientation()).isEqualTo(1);
    }

    /** Entities of XML would fetch files of the server, or grow: nothing comes of them. */
    @Test
    void anXmpThatAsksForMoreGetsNothing() throws Exception {
        Path secret = folder.resolve("secret");
        Files.writeString(secret, "SECRET");
        for (String entity : List.of("SYSTEM \"" + secret.toUri() + "\"", "\"" + "a".repeat(5000) + "\"")) {
            Exif exif = Pictures.at(-30.5, 150.05)
                    .xmp("<!DOCTYPE x [<!ENTITY e " + entity
                            + ">]><x:xmpmeta xmlns:x=\"adobe:ns:meta/\">&e;&e;&e;</x:xmpmeta>");
            PictureTold told = told(exif);
            assertThat(told.place().decimalLatitude()).isEqualTo(-30.5, within(1e-9));
            assertThat(told.toString()).doesNotContain("SECRET", "aaaa");
        }
    }

    @Test
    void aCircleOfDirectoriesComesToAnEnd() {
        byte[] picture =
                Pictures.withExif(JPEG, Exif.bigEndian().make("Culvert").circular());
        assertThat(ExifTelling.read(KeptFiles.JPEG, picture).place()).isNull();
    }

    /** Cut off anywhere, and with any octet changed, it is read as far as it goes, and nothing is thrown. */
    @Test
    void whateverIsDamagedIsReadAsFarAsItGoes() {
        byte[] exif = Pictures.at(-30.5, 150.05)
                .orientation(3)
                .make("Culvert")
                .taken("2026:11:25 18:40:00")
                .gpsTime("2026:11:25", 7, 1, 40, 1, 1, 1)
                .octets();
        for (int length = 0; length < exif.length; length++) {
            byte[] cut = Arrays.copyOf(exif, length);
            assertThat(ExifTelling.read(KeptFiles.JPEG, Pictures.withExif(JPEG, cut)))
                    .isNotNull();
            assertThat(ExifTelling.read(KeptFiles.PNG, Pictures.withChunk(PNG, "eXIf", cut)))
                    .isNotNull();
        }
        byte[] whole = Pictures.withExif(JPEG, exif);
        for (int length = 3; length < whole.length; length += 7) {
            assertThat(ExifTelling.read(KeptFiles.JPEG, Arrays.copyOf(whole, length)))
                    .isNotNull();
        }
        var dice = new Random(60);
        for (int i = 0; i < 3000; i++) {
            byte[] spoilt = exif.clone();
            for (int n = dice.nextInt(1, 6); n > 0; n--) {
                spoilt[dice.nextInt(spoilt.length)] = (byte) dice.nextInt(256);
            }
            PictureTold told = ExifTelling.read(KeptFiles.JPEG, Pictures.withExif(JPEG, spoilt));
            assertThat(told.orientation()).isBetween(1, 8);
            if (told.place() != null) {
                Coordinates.text(told.place().verbatim(), told.place().errorMetres());
            }
        }
    }
}
