package org.culvert.care.clock;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;

/** Limits of time. */
@Ledgered
@Path("/api/time-limits")
public class LimitResource {
    private final LimitService limits;

    LimitResource(LimitService limits) {
        this.limits = limits;
    }

    @GET
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public List<LimitService.TimeLimitView> listLimits() {
        return limits.listLimits();
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public LimitService.TimeLimitView getLimit(@PathParam("id") String id) {
        return limits.getLimit(Paging.uuid("id", id));
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public LimitService.TimeLimitView createLimit(@NotNull @Valid LimitService.LimitEntry entry) {
        return limits.createLimit(entry);
    }

    @POST
    @NeedsTag("time-limit")
    @Path("/{id}/reviews")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public LimitService.TimeLimitView review(
            @PathParam("id") String id, @NotNull @Valid LimitService.LimitReview review) {
        return limits.review(Paging.uuid("id", id), review);
    }
}
