package org.culvert.hotspot.when;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jspecify.annotations.Nullable;

/** When collisions happen: season, light and hour. */
@Ledgered
@Path("/api/collision-seasons")
public class CollisionSeasonResource {
    private final CollisionSeasonService service;

    CollisionSeasonResource(CollisionSeasonService service) {
        this.service = service;
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public CollisionSeasonsView tell(
            @QueryParam("periodFrom") @Nullable String periodFrom,
            @QueryParam("periodTo") @Nullable String periodTo,
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("comparedWith") @Nullable String comparedWith,
            @QueryParam("owner") @Nullable String owner) {
        return service.tell(new SeasonQuestion(
                day("periodFrom", periodFrom), day("periodTo", periodTo), taxonGroup, comparedWith, owner));
    }

    private static @Nullable LocalDate day(String field, @Nullable String text) {
        return text == null ? null : Paging.day(field, text);
    }
}
