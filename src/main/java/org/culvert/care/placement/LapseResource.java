package org.culvert.care.placement;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;

/** Authorisations that lapse while their holders have animals. */
@Ledgered
@Path("/api")
public class LapseResource {
    private final LapseService lapses;

    LapseResource(LapseService lapses) {
        this.lapses = lapses;
    }

    /** Holders of animals whose authorisation lapses within so many days, with a way out for each animal. */
    @GET
    @Path("/lapsing-authorisations")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public List<LapseService.LapseView> listLapses(
            @QueryParam("withinDays") @DefaultValue("56") @Min(1) @Max(730) int withinDays) {
        return lapses.listLapses(withinDays);
    }
}
