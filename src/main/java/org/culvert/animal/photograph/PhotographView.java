package org.culvert.animal.photograph;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A photograph of an incident or of a case, without its picture.
 *
 * @param sha256 digest under which the original is sealed, in hexadecimal (SHA-256, FIPS 180-4)
 * @param widthPixels of the original as it is stored; likewise the height
 * @param takenWhereFound whether it was taken where the animal was found; otherwise its place stays sealed in the original
 * @param takenAt when it was taken, as whoever sent it says
 * @param exif what the picture says of itself: offered, and never used by itself
 * @param cautions to be read before it is shown to others
 */
public record PhotographView(
        UUID id,
        @Nullable UUID incidentId,
        @Nullable UUID caseId,
        String sha256,
        int widthPixels,
        int heightPixels,
        @Nullable String caption,
        boolean takenWhereFound,
        @Nullable Instant takenAt,
        ExifView exif,
        List<String> cautions,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnBecause,
        RecordView record) {
    /**
     * What the picture says of itself. It is what a device wrote, or whoever had the file since.
     *
     * @param place where the camera was; null where it says nothing, where it stays sealed, and of a photograph that was taken back
     * @param cameraClock when it was taken by the camera's clock, such as {@code 2026-11-25T18:40:00}
     * @param cameraOffset of that clock from UTC, where the camera says so
     * @param cameraClockIs {@code withOffset}, or {@code clockTimeWithoutZone}: then nobody knows in which zone the clock ran
     * @param gpsTime of the satellites; it may be that of an older fix
     * @param orientation as stored: 1 upright, 2 to 8 mirrored or turned; the copies are upright
     * @param notes what could not be read, and what is to be known of the rest
     * @param doubts what speaks against it
     */
    public record ExifView(
            @Nullable ExifPlaceView place,
            @Nullable String cameraClock,
            @Nullable String cameraOffset,
            @Nullable String cameraClockIs,
            @Nullable Instant gpsTime,
            int orientation,
            List<String> notes,
            List<String> doubts) {}

    /**
     * Where the camera was, which is not where the animal was.
     *
     * @param uncertaintyFrom {@code picture} where the picture tells the error of its position, otherwise {@code network}: the
     *     figure for receivers of unknown accuracy
     * @param altitudeMetres above sea level, or above the ellipsoid: pictures seldom tell which
     * @param directionDegrees to where the camera looked, clockwise
     * @param directionFrom {@code trueNorth} or {@code magneticNorth}
     * @param insideRegion null where no region is told
     * @param metresFromIncident from where the incident is pinned now; null where it is pinned nowhere
     */
    public record ExifPlaceView(
            double decimalLatitude,
            double decimalLongitude,
            double coordinateUncertaintyInMeters,
            String uncertaintyFrom,
            String verbatim,
            @Nullable Double altitudeMetres,
            @Nullable Double directionDegrees,
            @Nullable String directionFrom,
            @Nullable Boolean insideRegion,
            @Nullable Double metresFromIncident) {}

    /**
     * That somebody opened the original.
     *
     * @param sealedSha256 digest under which it was sealed, in hexadecimal
     * @param foundSha256 digest of its content when it was opened
     * @param sealHolds whether the two agree; only then it was given
     */
    public record OpeningView(
            UUID id,
            UUID photographId,
            String reason,
            @Nullable Instant openedAt,
            String sealedSha256,
            String foundSha256,
            boolean sealHolds,
            RecordView record) {}
}
