package org.culvert.animal.photograph.picture;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a picture says of itself, as far as it could be read. It is what a device wrote, or whoever had the file since.
 *
 * @param orientation 1 to 8; 1 where it says nothing
 * @param cameraClock when it was taken by the clock of the camera, which has no zone by itself
 * @param cameraOffset of that clock from UTC, where the camera says so
 * @param gpsTime of the satellites; it may be that of an older fix
 * @param notes what was passed over, and what is to be known of the rest
 */
public record PictureTold(
        int orientation,
        @Nullable ToldPlace place,
        @Nullable LocalDateTime cameraClock,
        @Nullable ZoneOffset cameraOffset,
        @Nullable Instant gpsTime,
        List<String> notes) {
    /**
     * Where the camera was, which is not where the animal was.
     *
     * @param verbatim with the digits that the file has
     * @param errorMetres horizontal error of the position as the receiver says it (GPSHPositioningError), in metres
     * @param altitudeMetres above sea level, or above the ellipsoid: files seldom tell which
     * @param directionDegrees to where the camera looked, clockwise
     * @param directionFrom {@code trueNorth} or {@code magneticNorth}
     */
    public record ToldPlace(
            String verbatim,
            double decimalLatitude,
            double decimalLongitude,
            @Nullable Double errorMetres,
            @Nullable Double altitudeMetres,
            @Nullable Double directionDegrees,
            @Nullable String directionFrom) {}
}
