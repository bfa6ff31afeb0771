package org.culvert.hotspot;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.net.URI;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;
import org.jspecify.annotations.Nullable;

/** Declared annual runs: all groups and seasons of a plan at one error rate. */
@Ledgered
@Path("/api/annual-runs")
public class AnnualRunResource {
    private final AnnualRunService service;

    AnnualRunResource(AnnualRunService service) {
        this.service = service;
    }

    /** Declares the year's runs, all or none; they are computed in the background, one after another. */
    @POST
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public RestResponse<AnnualRunView> declare(@NotNull @Valid AnnualRunEntry entry) {
        AnnualRunView annual = service.declare(entry);
        return ResponseBuilder.create(RestResponse.Status.ACCEPTED, annual)
                .location(URI.create("/api/annual-runs/" + annual.id()))
                .build();
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Page<AnnualRunView> listAnnualRuns(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return service.listAnnualRuns(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public AnnualRunView getAnnualRun(@PathParam("id") String id) {
        return service.getAnnualRun(Paging.uuid("id", id));
    }
}
