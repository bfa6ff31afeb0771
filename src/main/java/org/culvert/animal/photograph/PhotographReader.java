package org.culvert.animal.photograph;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import org.culvert.animal.photograph.PhotographView.ExifPlaceView;
import org.culvert.animal.photograph.PhotographView.ExifView;
import org.culvert.geo.Bounds;
import org.culvert.geo.CoordinateReading;
import org.culvert.geo.Coordinates;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.Region;
import org.culvert.platform.RegionService;
import org.culvert.platform.Rows;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Shows photographs, a page of them in as many questions as one. */
@ApplicationScoped
class PhotographReader {
    private static final String PEOPLE =
            "People, their faces, number plates and homes are not for others to see: look before you show it, and take it"
                    + " back where it shows somebody.";
    private static final String SEALED =
            "Where it was taken is not read: it may be a carer's home. It stays sealed in the original.";
    private static final String CAMERA = "The place is that of the camera, and not of the animal.";
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss", Locale.ROOT);

    private final EntityManager entities;
    private final RegionService regions;
    private final RecordViews records;

    PhotographReader(EntityManager entities, RegionService regions, RecordViews records) {
        this.entities = entities;
        this.regions = regions;
        this.records = records;
    }

    /** What is known of the incident of a photograph. */
    private record Around(Instant reportedAt, @Nullable Position place, double uncertaintyMetres) {}

    PhotographView view(Photograph row) {
        return viewer(List.of(row)).apply(row);
    }

    /** Reads at once what the views of some photographs need. */
    Function<Photograph, PhotographView> viewer(List<Photograph> rows) {
        records.lookUp(rows);
        Map<UUID, Around> around = around(rows);
        Region region = regions.findRegion().orElse(null);
        return row -> new PhotographView(
                row.id(),
                row.incidentId,
                row.caseId,
                HexFormat.of().formatHex(row.originalSha256),
                row.widthPixels,
                row.heightPixels,
                row.caption,
                row.takenWhereFound,
                row.happenedAt(),
                exif(row, Objects.requireNonNull(around.get(row.id())), region),
                cautions(row),
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }

    private static List<String> cautions(Photograph row) {
        List<String> cautions = new ArrayList<>(List.of(PEOPLE));
        if (!row.takenWhereFound) {
            cautions.add(SEALED);
        } else if (row.decimalLatitude != null) {
            cautions.add(CAMERA);
        }
        return cautions;
    }

    private static ExifView exif(Photograph row, Around around, @Nullable Region region) {
        var plausibility = new Plausibility();
        ExifPlaceView place = row.withdrawnAt == null ? place(row, around, region) : null;
        if (place != null) {
            plausibility.ofPlace(
                    place.insideRegion(),
                    place.metresFromIncident(),
                    place.coordinateUncertaintyInMeters() + around.uncertaintyMetres(),
                    place.altitudeMetres());
        }
        ZoneOffset offset = row.cameraOffset == null ? null : ZoneOffset.of(row.cameraOffset);
        plausibility.ofTime(
                row.cameraClock,
                offset,
                row.gpsTime,
                region == null ? ZoneId.of("UTC") : region.zone(),
                around.reportedAt(),
                row.recordedAt());
        return new ExifView(
                place,
                row.cameraClock == null ? null : CLOCK.format(row.cameraClock),
                row.cameraOffset,
                row.cameraClock == null ? null : offset == null ? "clockTimeWithoutZone" : "withOffset",
                row.gpsTime,
                row.orientation,
                row.notes,
                plausibility.doubts());
    }

    private static @Nullable ExifPlaceView place(Photograph row, Around around, @Nullable Region region) {
        if (row.decimalLatitude == null || row.decimalLongitude == null || row.placeVerbatim == null) {
            return null;
        }
        var position = new Position(row.decimalLatitude, row.decimalLongitude);
        CoordinateReading reading = Coordinates.text(row.placeVerbatim, row.positionErrorMetres);
        Position incident = around.place();
        return new ExifPlaceView(
                position.latitude(),
                position.longitude(),
                reading.uncertaintyMetres(),
                row.positionErrorMetres == null ? "network" : "picture",
                row.placeVerbatim,
                row.altitudeMetres,
                row.directionDegrees,
                row.directionFrom,
                region == null
                        ? null
                        : new Bounds(region.south(), region.west(), region.north(), region.east()).contains(position),
                incident == null ? null : Geodesy.metresBetween(incident, position));
    }

    private Map<UUID, Around> around(List<Photograph> rows) {
        Map<UUID, Around> around = new HashMap<>();
        if (rows.isEmpty()) {
            return around;
        }
        List<?> found = entities.createNativeQuery("""
                        select p.id, i.reported_at, l.decimal_latitude, l.decimal_longitude,
                               l.coordinate_uncertainty_in_meters
                        from photographs p
                        left join cases c on c.id = p.case_id
                        join incidents i on i.id = coalesce(p.incident_id, c.incident_id)
                        left join places l on l.id = i.place_id
                        where p.id in (:ids)
                        """)
                .setParameter("ids", rows.stream().map(Photograph::id).toList())
                .getResultList();
        for (Object row : found) {
            Object[] columns = (Object[]) row;
            Double latitude = Rows.number(columns[2]);
            Double longitude = Rows.number(columns[3]);
            Double uncertainty = Rows.number(columns[4]);
            around.put(
                    (UUID) columns[0],
                    new Around(
                            Objects.requireNonNull(Rows.instant(columns[1])),
                            latitude == null || longitude == null ? null : new Position(latitude, longitude),
                            uncertainty == null ? 0 : uncertainty));
        }
        return around;
    }
}
