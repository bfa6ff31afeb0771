package org.culvert.hotspot.works;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jspecify.annotations.Nullable;

/** Windows along all roads, by how many more collisions they have than roads like them. */
@Ledgered
@Path("/api/burden")
public class BurdenResource {
    private final BurdenService service;

    BurdenResource(BurdenService service) {
        this.service = service;
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public BurdenView burden(
            @QueryParam("yearFrom") @Nullable Integer yearFrom,
            @QueryParam("yearTo") @Nullable Integer yearTo,
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("months") @Nullable String months,
            @QueryParam("seasonWindow") @Nullable String seasonWindow,
            @QueryParam("windowMetres") @Nullable Double windowMetres,
            @QueryParam("stepMetres") @Nullable Double stepMetres,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("largestVariation") @Nullable Double largestVariation,
            @QueryParam("council") @Nullable String council) {
        return service.burden(
                yearFrom,
                yearTo,
                taxonGroup,
                months,
                seasonWindow,
                windowMetres,
                stepMetres,
                limit,
                largestVariation,
                council);
    }
}
