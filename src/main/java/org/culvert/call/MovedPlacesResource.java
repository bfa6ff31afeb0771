package org.culvert.call;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jspecify.annotations.Nullable;

/** What became of places when they were moved. */
@Ledgered
@Path("/api/place-moves/{id}")
public class MovedPlacesResource {
    private final PlaceMoveService service;

    MovedPlacesResource(PlaceMoveService service) {
        this.service = service;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public PlaceMoveView getPlaceMove(@PathParam("id") String id) {
        return service.getMove(Paging.uuid("id", id));
    }

    /** What became of each place, those of one outcome alone where it is named. */
    @GET
    @Path("/places")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Page<PlaceMoveView.MovedPlace> listMovedPlaces(
            @PathParam("id") String id,
            @QueryParam("outcome") @Nullable String outcome,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return service.listPlaces(Paging.uuid("id", id), outcome, Paging.limit(limit), Paging.cursor(cursor));
    }
}
