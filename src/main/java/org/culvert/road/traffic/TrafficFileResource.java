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
        return service.enter(said(columns), sent(columns, headers, file));
    }

    /** Says of each row what would be understood, on which road it lies, or why it would be refused. Keeps nothing. */
    @POST
    @KeepsNothing
    @Path("/trials")
    @Consumes({FileTypes.GEO_JSON, MediaType.APPLICATION_JSON, FileTypes.GEO_PACKAGE})
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TrafficFileTrial tryCounts(@BeanParam Columns columns, @Context HttpHeaders headers, InputStream file) {
        return service.tryFile(said(columns), sent(columns, headers, file));
    }

    private static SentFile sent(Columns columns, HttpHeaders headers, InputStream file) {
        return FileTypes.sent(headers.getHeaderString(HttpHeaders.CONTENT_TYPE), columns.crs, columns.layer, file);
    }

    private static TrafficFileSaid said(Columns columns) {
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
        Map<String, String> attributes = new HashMap<>();
        named.forEach((parameter, attribute) -> {
            if (attribute != null) {
                attributes.put(parameter, attribute);
            }
        });
        return new TrafficFileSaid(
                attributes,
                columns.year,
                columns.measure,
                columns.kind,
                columns.directions,
                columns.heavyVehicleUnit,
                columns.source,
                columns.uncertaintyMetres,
                columns.refusedRows);
    }
}
