package org.culvert.road.traffic;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jspecify.annotations.Nullable;

/** Traffic of a piece of road. */
@Ledgered
@Path("/api/road-links/{id}/traffic")
public class LinkTrafficResource {
    private final LinkTrafficService service;

    LinkTrafficResource(LinkTrafficService service) {
        this.service = service;
    }

    /** The traffic of a link in some years, from the nearest count on its road, and where it is known from. */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ROADS_AUTHORITY, Role.OFFICER, Role.ADMIN})
    public LinkTrafficService.LinkTrafficView findTraffic(
            @PathParam("id") String id,
            @QueryParam("yearFrom") @Nullable Integer yearFrom,
            @QueryParam("yearTo") @Nullable Integer yearTo) {
        return service.find(Paging.uuid("id", id), yearFrom, yearTo);
    }
}
