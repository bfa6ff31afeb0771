package org.culvert.animal.photograph.picture;

import com.drew.imaging.ImageProcessingException;
import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.lang.ByteArrayReader;
import com.drew.lang.Rational;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.StringValue;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifReader;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.exif.GpsDirectory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.platform.file.KeptFiles;
import org.jspecify.annotations.Nullable;

/**
 * Reads what a picture says of itself: EXIF 2.32 (CIPA DC-008-2019) in a JPEG's APP1 or in a PNG's eXIf. Nothing else is read
 * of the file, and what cannot be understood is passed over with a word.
 */
public final class ExifTelling {
    /** As much as a segment of a JPEG can hold; a chunk of a PNG could be of any size. */
    private static final int LARGEST_EXIF = 65_535;

    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT).withResolverStyle(ResolverStyle.STRICT);
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("uuuu:MM:dd", Locale.ROOT).withResolverStyle(ResolverStyle.STRICT);

    private final List<String> notes = new ArrayList<>();

    private ExifTelling() {}

    /**
     * @param mediaType {@code image/jpeg} or {@code image/png}
     * @param octets that begin as such a file does
     */
    public static PictureTold read(String mediaType, byte[] octets) {
        return new ExifTelling().tell(mediaType, octets);
    }

    private PictureTold tell(String mediaType, byte[] octets) {
        Metadata told = metadata(mediaType, octets);
        boolean damaged = false;
        for (Directory directory : told.getDirectories()) {
            damaged |= directory.hasErrors();
        }
        if (damaged) {
            notes.add("What the picture says of itself is damaged in part: what could be read of it is shown.");
        }
        LocalDateTime clock = clock(told);
        return new PictureTold(
                orientation(told),
                place(told),
                clock,
                clock == null ? null : offset(told),
                gpsTime(told),
                List.copyOf(notes));
    }

    private Metadata metadata(String mediaType, byte[] octets) {
        try {
            if (mediaType.equals(KeptFiles.JPEG)) {
                return JpegMetadataReader.readMetadata(new ByteArrayInputStream(octets), List.of(new ExifReader()));
            }
            PngChunks chunks = PngChunks.of(octets);
            byte[] exif = chunks.exif();
            var told = new Metadata();
            if (chunks.exifIsDamaged() || (exif != null && exif.length > LARGEST_EXIF)) {
                notes.add("What the picture says of itself is damaged or too large, and was passed over.");
            } else if (exif != null) {
                new ExifReader().extract(new ByteArrayReader(exif), told);
            }
            return told;
        } catch (ImageProcessingException | IOException | RuntimeException unreadable) {
            // Whatever a file of a stranger does to the reader of its words, the picture itself is looked at apart
            notes.add("What the picture says of itself could not be read, and was passed over.");
            return new Metadata();
        }
    }

    private int orientation(Metadata told) {
        Directory directory = told.getFirstDirectoryOfType(ExifIFD0Directory.class);
        Integer value = directory == null ? null : directory.getInteger(ExifIFD0Directory.TAG_ORIENTATION);
        if (value == null) {
            return Orientation.UPRIGHT;
        }
        if (!Orientation.isOne(value)) {
            notes.add("Its orientation is none of 1 to 8, and was passed over.");
            return Orientation.UPRIGHT;
        }
        return value;
    }

    private @Nullable LocalDateTime clock(Metadata told) {
        Directory directory = told.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        String text = text(directory, ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL);
        // Digits are blanks where the clock was never set
        if (text == null || text.replaceAll("[ :0]", "").isEmpty()) {
            return null;
        }
        try {
            return inOurYears(LocalDateTime.parse(text, CLOCK));
        } catch (DateTimeException e) {
            notes.add("When it was taken is written in another form than EXIF's, and was passed over.");
            return null;
        }
    }

    private @Nullable ZoneOffset offset(Metadata told) {
        Directory directory = told.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        String text = text(directory, ExifSubIFDDirectory.TAG_TIME_ZONE_ORIGINAL);
        if (text == null || text.replaceAll("[ :]", "").isEmpty()) {
            return null;
        }
        try {
            if (!text.matches("[+-]\\d{2}:\\d{2}")) {
                throw new DateTimeException("another form");
            }
            return ZoneOffset.of(text);
        } catch (DateTimeException e) {
            notes.add("The offset of its clock from UTC is written in another form than EXIF's, and was passed over.");
            return null;
        }
    }

    private @Nullable Instant gpsTime(Metadata told) {
        GpsDirectory gps = told.getFirstDirectoryOfType(GpsDirectory.class);
        String day = text(gps, GpsDirectory.TAG_DATE_STAMP);
        Rational[] time = gps == null ? null : gps.getRationalArray(GpsDirectory.TAG_TIME_STAMP);
        if (day == null || time == null) {
            return null;
        }
        try {
            double hours = part(time, 0, 24);
            double minutes = part(time, 1, 60);
            double seconds = part(time, 2, 61);
            LocalDateTime midnight = inOurYears(LocalDate.parse(day, DAY).atStartOfDay());
            return midnight.toInstant(ZoneOffset.UTC)
                    .plusMillis(Math.round((hours * 3600 + minutes * 60 + seconds) * 1000));
        } catch (DateTimeException | ArithmeticException e) {
            notes.add("The satellites' time is written in another form than EXIF's, and was passed over.");
            return null;
        }
    }

    private static LocalDateTime inOurYears(LocalDateTime time) {
        if (time.getYear() < 1 || time.getYear() > 9999) {
            throw new DateTimeException("no such year is meant");
        }
        return time;
    }

    private PictureTold.@Nullable ToldPlace place(Metadata told) {
        GpsDirectory gps = told.getFirstDirectoryOfType(GpsDirectory.class);
        if (gps == null) {
            return null;
        }
        Rational[] latitude = gps.getRationalArray(GpsDirectory.TAG_LATITUDE);
        Rational[] longitude = gps.getRationalArray(GpsDirectory.TAG_LONGITUDE);
        if (latitude == null || longitude == null) {
            return null;
        }
        String datum = text(gps, GpsDirectory.TAG_MAP_DATUM);
        if (datum != null
                && !datum.replaceAll("[^A-Za-z0-9]", "")
                        .toUpperCase(Locale.ROOT)
                        .matches("(WGS84)?")) {
            notes.add("Its place is given in another datum than WGS 84, and was passed over.");
            return null;
        }
        String northOrSouth = letter(gps, GpsDirectory.TAG_LATITUDE_REF, "NS");
        String eastOrWest = letter(gps, GpsDirectory.TAG_LONGITUDE_REF, "EW");
        if (northOrSouth == null || eastOrWest == null) {
            notes.add("Its place does not say whether it is north or south, east or west, and was passed over.");
            return null;
        }
        try {
            double north = degrees(latitude, 90) * (northOrSouth.equals("S") ? -1 : 1);
            double east = degrees(longitude, 180) * (eastOrWest.equals("W") ? -1 : 1);
            if (north == 0 && east == 0) {
                notes.add("Its place is 0, 0, which cameras write that have none: it was passed over.");
                return null;
            }
            if ("V".equals(text(gps, GpsDirectory.TAG_STATUS))) {
                notes.add("The receiver had lost its satellites: the place may be that of an older fix.");
            }
            Double direction = number(gps, GpsDirectory.TAG_IMG_DIRECTION, 0, 360);
            String from = letter(gps, GpsDirectory.TAG_IMG_DIRECTION_REF, "TM");
            return new PictureTold.ToldPlace(
                    GpsText.of(latitude) + northOrSouth + " " + GpsText.of(longitude) + eastOrWest,
                    north,
                    east,
                    positive(number(gps, GpsDirectory.TAG_H_POSITIONING_ERROR, 0, 40_000_000)),
                    altitude(gps),
                    direction,
                    direction == null || from == null ? null : from.equals("T") ? "trueNorth" : "magneticNorth");
        } catch (ArithmeticException e) {
            notes.add("Its place is no place on Earth, and was passed over.");
            return null;
        }
    }

    /** Exif 2.32: 0 above sea level, 1 below; 3.0 has 2 and 3 for above and below the ellipsoid. */
    private @Nullable Double altitude(GpsDirectory gps) {
        Double altitude = number(gps, GpsDirectory.TAG_ALTITUDE, 0, 1_000_000);
        Integer below = gps.getInteger(GpsDirectory.TAG_ALTITUDE_REF);
        return altitude == null ? null : below != null && below % 2 == 1 ? -altitude : altitude;
    }

    private static @Nullable Double positive(@Nullable Double number) {
        return number == null || number == 0 ? null : number;
    }

    private static double degrees(Rational[] parts, int most) {
        double degrees = part(parts, 0, most + 1) + part(parts, 1, 60) / 60 + part(parts, 2, 60) / 3600;
        if (degrees > most) {
            throw new ArithmeticException("beyond the pole or the antimeridian");
        }
        return degrees;
    }

    /** @throws ArithmeticException if there is no such part, or none that is at least 0 and less than {@code below} */
    private static double part(Rational[] parts, int index, int below) {
        if (parts.length != 3 || parts[index].getDenominator() == 0) {
            throw new ArithmeticException("three numbers are wanted");
        }
        double part = parts[index].doubleValue();
        if (!(part >= 0 && part < below)) {
            throw new ArithmeticException("out of range");
        }
        return part;
    }

    private @Nullable Double number(GpsDirectory gps, int tag, double least, double most) {
        Rational value = gps.getRational(tag);
        if (value == null || value.getDenominator() == 0) {
            return null;
        }
        double number = value.doubleValue();
        return number >= least && number <= most ? number : null;
    }

    private static @Nullable String letter(Directory directory, int tag, String letters) {
        String text = text(directory, tag);
        return text != null && text.length() == 1 && letters.contains(text) ? text : null;
    }

    private static @Nullable String text(@Nullable Directory directory, int tag) {
        StringValue value = directory == null ? null : directory.getStringValue(tag);
        if (value == null) {
            return null;
        }
        String text = value.toString();
        int end = text.indexOf(0);
        return (end < 0 ? text : text.substring(0, end)).trim();
    }
}
