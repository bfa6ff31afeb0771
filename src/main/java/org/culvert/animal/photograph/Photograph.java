package org.culvert.animal.photograph;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.animal.photograph.picture.PictureCopies;
import org.culvert.animal.photograph.picture.PictureTold;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.culvert.platform.file.KeptFiles;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** A photograph of an incident or of a case; it happened when it was taken, as whoever sent it says. */
@Entity
@Table(name = "photographs")
class Photograph extends Recorded {
    @Nullable
    UUID incidentId;

    @Nullable
    UUID caseId;

    UUID originalFileId;
    byte[] originalSha256;
    UUID copyFileId;
    UUID smallFileId;
    int widthPixels;
    int heightPixels;

    @Nullable
    String caption;

    boolean takenWhereFound;

    @Nullable
    Double decimalLatitude;

    @Nullable
    Double decimalLongitude;

    @Nullable
    String placeVerbatim;

    @Nullable
    Double positionErrorMetres;

    @Nullable
    Double altitudeMetres;

    @Nullable
    Double directionDegrees;

    @Nullable
    String directionFrom;

    @Nullable
    LocalDateTime cameraClock;

    @Nullable
    String cameraOffset;

    @Nullable
    Instant gpsTime;

    int orientation;

    @JdbcTypeCode(SqlTypes.JSON)
    @Column(name = "notes")
    List<String> notes;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected Photograph() {}

    /** @param of the incident or the case */
    Photograph(
            Subject of,
            Files files,
            PictureCopies made,
            @Nullable String caption,
            @Nullable Instant takenAt,
            boolean takenWhereFound) {
        happenedAt(takenAt);
        this.incidentId = of.incidentId();
        this.caseId = of.caseId();
        this.originalFileId = files.original().id();
        this.originalSha256 = files.original().sha256().clone();
        this.copyFileId = files.copy();
        this.smallFileId = files.small();
        this.widthPixels = made.widthPixels();
        this.heightPixels = made.heightPixels();
        this.caption = caption;
        this.takenWhereFound = takenWhereFound;
        this.notes = made.notes();
    }

    /** What a photograph is of: one of the two. */
    record Subject(@Nullable UUID incidentId, @Nullable UUID caseId) {}

    /** The sealed original and its two copies. */
    record Files(KeptFiles.Kept original, UUID copy, UUID small) {}

    /** Takes over what the picture says of itself; of its place only where the animal was found. */
    void telling(PictureTold told) {
        PictureTold.ToldPlace place = told.place();
        if (place != null && takenWhereFound) {
            decimalLatitude = place.decimalLatitude();
            decimalLongitude = place.decimalLongitude();
            placeVerbatim = place.verbatim();
            positionErrorMetres = place.errorMetres();
            altitudeMetres = place.altitudeMetres();
            directionDegrees = place.directionDegrees();
            directionFrom = place.directionFrom();
        }
        cameraClock = told.cameraClock();
        ZoneOffset offset = told.cameraOffset();
        cameraOffset = offset == null ? null : offset.equals(ZoneOffset.UTC) ? "+00:00" : offset.getId();
        gpsTime = told.gpsTime();
        orientation = told.orientation();
        notes = Stream.concat(notes.stream(), told.notes().stream()).toList();
    }

    void withdraw(Instant at, String reason) {
        requireStands();
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }

    void requireStands() {
        if (withdrawnAt != null) {
            throw new ConflictException("That photograph was taken back: " + withdrawnBecause);
        }
    }
}
