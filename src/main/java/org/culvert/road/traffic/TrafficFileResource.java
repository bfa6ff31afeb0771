package org.culvert.road.traffic;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.KeepsNothing;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.road.file.FileTypes;
import org.culvert.road.file.SentFile;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Counts of traffic from GeoJSON and GeoPackage: points beside a road, or lines along one. */
@Ledgered
@Path("/api/traffic-counts/files")
public class TrafficFileResource {
    /** Somebody measured where a counter stands, or set it on a map: common practice, no source. */
    private static final double USUAL_UNCERTAINTY_METRES = 25;

    private final TrafficFileService service;

    TrafficFileResource(TrafficFileService service) {
        this.service = service;
    }

    /** Which attribute of the file holds what, and what holds for all rows. */
    public static class Columns {
        @QueryParam("stationAttribute")
        @Nullable
        String stationAttribute;

        @QueryParam("roadAttribute")
        @Nullable
        String roadAttribute;

        @QueryParam("yearAttribute")
        @Nullable
        String yearAttribute;

        @QueryParam("fromAttribute")
        @Nullable
        String fromAttribute;

        @QueryParam("toAttribute")
        @Nullable
        String toAttribute;

        @QueryParam("vehiclesPerDayAttribute")
        @Nullable
        String vehiclesPerDayAttribute;

        @QueryParam("standardErrorAttribute")
        @Nullable
        String standardErrorAttribute;

        @QueryParam("daysCountedAttribute")
        @Nullable
        String daysCountedAttribute;

        @QueryParam("directionAttribute")
        @Nullable
        String directionAttribute;

        @QueryParam("heavyVehicleAttribute")
        @Nullable
        String heavyVehicleAttribute;

        @QueryParam("heavyVehicleUnit")
        @Nullable
        String heavyVehicleUnit;

        @QueryParam("kindAttribute")
        @Nullable
        String kindAttribute;

        @QueryParam("year")
        @Nullable
        Integer year;

        @QueryParam("measure")
        @Nullable
        String measure;

        @QueryParam("kind")
        @Nullable
        String kind;

        @QueryParam("directions")
        @Nullable
        String directions;

        @QueryParam("source")
        @Nullable
        String source;

        @QueryParam("uncertaintyMetres")
        @Nullable
        Double uncertaintyMetres;

        @QueryParam("refusedRows")
        @Nullable
        String refusedRows;

        @QueryParam("crs")
        @Nullable
        String crs;

        @QueryParam("layer")
        @Nullable
        String layer;
    }

    /**
     * Enters each point or line as a count. One row that is refused, and nothing is entered, unless {@code refusedRows} is
     * {@code leaveOut}.
     */
    @POST
    @Consumes({FileTypes.GEO_JSON, MediaType.APPLICATION_JSON, FileTypes.GEO_PACKAGE})
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TrafficFileView enterCounts(@BeanParam Columns columns, @Context HttpHeaders headers, InputStream file) {
        return service.enter(settings(columns), sent(columns, headers, file));
    }

    /** Says of each row what would be understood, on which road it lies, or why it would be refused. Keeps nothing. */
    @POST
    @KeepsNothing
    @Path("/trials")
    @Consumes({FileTypes.GEO_JSON, MediaType.APPLICATION_JSON, FileTypes.GEO_PACKAGE})
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TrafficFileTrial tryCounts(@BeanParam Columns columns, @Context HttpHeaders headers, InputStream file) {
        return service.tryFile(settings(columns), sent(columns, headers, file));
    }

    private static SentFile sent(Columns columns, HttpHeaders headers, InputStream file) {
        return FileTypes.sent(headers.getHeaderString(HttpHeaders.CONTENT_TYPE), columns.crs, columns.layer, file);
    }

    private static TrafficFileSettings settings(Columns columns) {
        Map<String, @Nullable String> named = new HashMap<>();
        named.put("stationAttribute", columns.stationAttribute);
        named.put("roadAttribute", columns.roadAttribute);
        named.put("yearAttribute", columns.yearAttribute);
        named.put("fromAttribute", columns.fromAttribute);
        named.put("toAttribute", columns.toAttribute);
        named.put("vehiclesPerDayAttribute", columns.vehiclesPerDayAttribute);
        named.put("standardErrorAttribute", columns.standardErrorAttribute);
        named.put("daysCountedAttribute", columns.daysCountedAttribute);
        named.put("directionAttribute", columns.directionAttribute);
        named.put("heavyVehicleAttribute", columns.heavyVehicleAttribute);
        named.put("kindAttribute", columns.kindAttribute);
        Double metres = columns.uncertaintyMetres;
        if (metres != null && !(metres > 0 && metres <= 1000)) {
            throw InvalidException.of(
                    "uncertaintyMetres", "This is no radius.", "metres, more than 0 and at most 1000");
        }
        if (columns.source != null && (columns.source.isBlank() || columns.source.length() > 2000)) {
            throw InvalidException.of(
                    "source", "This is empty or longer than can be kept.", "a text of at most 2000 characters");
        }
        if (columns.year != null && !(columns.year >= 1900 && columns.year <= 2200)) {
            throw InvalidException.of("year", "No such year is meant.", "a calendar year such as 2024");
        }
        return new TrafficFileSettings(
                TrafficFileService.columns(named),
                columns.year,
                columns.measure == null ? null : TrafficWords.named("measure", TrafficMeasure.class, columns.measure),
                columns.kind == null ? null : TrafficWords.named("kind", TrafficCountKind.class, columns.kind),
                columns.directions == null
                        ? null
                        : TrafficWords.named("directions", TrafficDirections.class, columns.directions),
                isOneOf("heavyVehicleUnit", columns.heavyVehicleUnit, "percent", "share"),
                columns.source == null ? null : columns.source.strip(),
                metres == null ? USUAL_UNCERTAINTY_METRES : metres,
                isOneOf("refusedRows", columns.refusedRows, "leaveOut", "stop"));
    }

    /** Whether the first of two words was sent; the second is the usual one. */
    private static boolean isOneOf(String field, @Nullable String sent, String first, String usual) {
        if (sent == null || sent.equals(usual) || sent.equals(first)) {
            return first.equals(sent);
        }
        throw InvalidException.of(field, "This is none of the values.", first + " or " + usual);
    }
}
