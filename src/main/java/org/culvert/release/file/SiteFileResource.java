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
import java.util.List;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.release.rules.Rule;
import org.culvert.road.file.FileTypes;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Release sites from GeoJSON and GeoPackage, all features of a file at once. */
@Ledgered
@Path("/api/release-sites/files")
public class SiteFileResource {
    private final FeatureFileService service;

    SiteFileResource(FeatureFileService service) {
        this.service = service;
    }

    /** Enters each point or polygon as a release site. Consent of who owns the land is unknown until somebody enters it. */
    @POST
    @Consumes({FileTypes.GEO_JSON, MediaType.APPLICATION_JSON, FileTypes.GEO_PACKAGE})
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public FeatureFileView enterSites(
            @QueryParam("nameAttribute") @Nullable String nameAttribute,
            @QueryParam("habitatAttribute") @Nullable String habitatAttribute,
            @QueryParam("catchmentAttribute") @Nullable String catchmentAttribute,
            @QueryParam("protectedAreaAttribute") @Nullable String protectedAreaAttribute,
            @QueryParam("jurisdiction") @Nullable String jurisdiction,
            @QueryParam("taxonGroups") @Nullable String taxonGroups,
            @QueryParam("uncertaintyMetres") @Nullable Double uncertaintyMetres,
            @QueryParam("crs") @Nullable String crs,
            @QueryParam("layer") @Nullable String layer,
            @Context HttpHeaders headers,
            InputStream file) {
        if (jurisdiction == null || !jurisdiction.matches(Rule.ISO_3166)) {
            throw InvalidException.of(
                    "jurisdiction", "This is no code of a jurisdiction.", "an ISO 3166 code, such as AU-QLD");
        }
        if (uncertaintyMetres != null && !(uncertaintyMetres > 0 && uncertaintyMetres < 1e6)) {
            throw InvalidException.of("uncertaintyMetres", "This is no radius.", "metres, more than 0");
        }
        List<String> groups = taxonGroups == null || taxonGroups.isBlank()
                ? List.of()
                : Arrays.stream(taxonGroups.split(",")).map(String::strip).toList();
        return service.enterSites(
                new FeatureFileService.SiteFile(
                        FeatureFileService.words("nameAttribute", nameAttribute),
                        FeatureFileService.words("habitatAttribute", habitatAttribute),
                        catchmentAttribute,
                        protectedAreaAttribute,
                        jurisdiction,
                        groups,
                        uncertaintyMetres),
                FileTypes.sent(headers.getHeaderString(HttpHeaders.CONTENT_TYPE), crs, layer, file));
    }
}
