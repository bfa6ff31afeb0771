package org.culvert.hotspot;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jspecify.annotations.Nullable;

/** Collisions in figures, for those who keep roads. */
@Ledgered
@Path("/api/collision-counts")
public class CollisionCountResource {
    private final CollisionCountService service;

    CollisionCountResource(CollisionCountService service) {
        this.service = service;
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public CollisionCountsView count(
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("seasonWindow") @Nullable String seasonWindow,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to) {
        return service.count(taxonGroup, seasonWindow, day("from", from), day("to", to));
    }

    private static @Nullable LocalDate day(String field, @Nullable String text) {
        return text == null ? null : Paging.day(field, text);
    }
}
