package org.culvert.release.file;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.io.InputStream;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.release.rules.Land;
import org.culvert.road.file.FileTypes;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Land from GeoJSON and GeoPackage, all features of a file at once. */
@Ledgered
@Path("/api/land-areas/files")
public class LandFileResource {
    private final FeatureFileService service;

    LandFileResource(FeatureFileService service) {
        this.service = service;
    }

    /** Enters each polygon as a land area of one kind; {@code nameAttribute} says which attribute holds its name. */
    @POST
    @Consumes({FileTypes.GEO_JSON, MediaType.APPLICATION_JSON, FileTypes.GEO_PACKAGE})
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public FeatureFileView enterLand(
            @QueryParam("kind") @Nullable String kind,
            @QueryParam("nameAttribute") @Nullable String nameAttribute,
            @QueryParam("source") @Nullable String source,
            @QueryParam("from") @Nullable String from,
            @QueryParam("until") @Nullable String until,
            @QueryParam("crs") @Nullable String crs,
            @QueryParam("layer") @Nullable String layer,
            @Context HttpHeaders headers,
            InputStream file) {
        return service.enterLand(
                new FeatureFileService.LandFile(
                        kind(kind),
                        FeatureFileService.words("nameAttribute", nameAttribute),
                        FeatureFileService.words("source", source),
                        Paging.day("from", from == null ? "" : from),
                        until == null ? null : Paging.day("until", until)),
                FileTypes.sent(headers.getHeaderString(HttpHeaders.CONTENT_TYPE), crs, layer, file));
    }

    private static Land.Kind kind(@Nullable String text) {
        return Arrays.stream(Land.Kind.values())
                .filter(kind -> kind.name().equals(text))
                .findFirst()
                .orElseThrow(() -> InvalidException.of(
                        "kind",
                        text == null ? "This is missing." : "There is no such kind of land.",
                        Arrays.stream(Land.Kind.values()).map(Enum::name).collect(Collectors.joining(", "))));
    }
}
