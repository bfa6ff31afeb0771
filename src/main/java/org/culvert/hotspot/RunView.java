package org.culvert.hotspot;

import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A run as others see it.
 *
 * @param state {@code waiting}, {@code computing}, {@code done}, {@code failed} or {@code cancelled}, derived from what has happened to it
 * @param declared whether it was decided on beforehand; else it is exploratory
 * @param exploratoryRunsSoFar how many exploratory runs had been asked for on this server when this was read
 * @param cancelledBecause why it was called off, if it was
 * @param documentSha256 of the result, once there is one
 * @param result where the result is, once there is one
 */
public record RunView(
        UUID id,
        Instant requestedAt,
        boolean declared,
        long exploratoryRunsSoFar,
        RunSettings settings,
        String state,
        int simulationsDone,
        int simulationsTotal,
        int timesBegun,
        @Nullable Instant begunAt,
        @Nullable Instant finishedAt,
        @Nullable String failure,
        @Nullable String cancelledBecause,
        @Nullable String engineVersion,
        @Nullable Integer networkNumber,
        @Nullable String inputsSha256,
        @Nullable String documentSha256,
        @Nullable Links result,
        RecordView record) {

    /** The result in its forms; on paper it is a PDF. */
    public record Links(String json, String geoJson, String csv, String geoPackage, String paper, String page) {
        static Links of(UUID id) {
            String base = "/api/hotspot-runs/" + id;
            return new Links(
                    base + "/result",
                    base + "/hotspots.geojson",
                    base + "/hotspots.csv",
                    base + "/hotspots.gpkg",
                    "/hotspots/" + id + "/report.pdf",
                    "/hotspots/" + id);
        }
    }
}
