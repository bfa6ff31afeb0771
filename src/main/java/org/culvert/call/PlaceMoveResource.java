package org.culvert.call;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.net.URI;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;

/** Places that go over from older versions of the roads to the current one. */
@Ledgered
@Path("/api/road-networks/{id}/place-moves")
public class PlaceMoveResource {
    private final PlaceMoveService service;

    PlaceMoveResource(PlaceMoveService service) {
        this.service = service;
    }

    /** Has the places moved, in the background: look at {@code Location} for how far it has come. */
    @POST
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<PlaceMoveView> movePlaces(@PathParam("id") String id) {
        PlaceMoveView move = service.start(Paging.uuid("id", id));
        return ResponseBuilder.create(RestResponse.Status.ACCEPTED, move)
                .location(URI.create("/api/place-moves/" + move.id()))
                .build();
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public List<PlaceMoveView> listPlaceMoves(@PathParam("id") String id) {
        return service.listMoves(Paging.uuid("id", id));
    }
}
