package org.culvert.care.placement;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.net.URI;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;

/** Many animals at once. */
@Ledgered
@Path("/api")
public class SurgeResource {
    private final SurgeService surge;

    SurgeResource(SurgeService surge) {
        this.surge = surge;
    }

    /** Proposes who takes which of many animals; nothing moves until it is approved. */
    @POST
    @Path("/placement-proposals")
    @RolesAllowed(Role.COORDINATOR)
    public RestResponse<SurgeService.ProposalView> propose(@NotNull @Valid SurgeService.ProposalEntry entry) {
        SurgeService.ProposalView view = surge.propose(entry);
        return RestResponse.ResponseBuilder.<SurgeService.ProposalView>created(
                        URI.create("/api/placement-proposals/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Tagged
    @Path("/placement-proposals/{id}")
    @RolesAllowed(Role.COORDINATOR)
    public SurgeService.ProposalView getProposal(@PathParam("id") String id) {
        return surge.getProposal(Paging.uuid("id", id));
    }

    /** Places all of it, but for what is left out, or nothing. */
    @POST
    @NeedsTag("placement-proposal")
    @Path("/placement-proposals/{id}/approval")
    @RolesAllowed(Role.COORDINATOR)
    public SurgeService.ProposalView approve(
            @PathParam("id") String id, @NotNull @Valid SurgeService.ProposalApproval approval) {
        return surge.approve(Paging.uuid("id", id), approval);
    }
}
