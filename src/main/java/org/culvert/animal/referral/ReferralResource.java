package org.culvert.animal.referral;

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

/** Kinds that the network may not hold. */
@Ledgered
@Path("/api/referrals")
public class ReferralResource {
    private final ReferralService referrals;

    ReferralResource(ReferralService referrals) {
        this.referrals = referrals;
    }

    @GET
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public List<ReferralService.ReferralView> listReferrals() {
        return referrals.listReferrals();
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public ReferralService.ReferralView getReferral(@PathParam("id") String id) {
        return referrals.getReferral(Paging.uuid("id", id));
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ReferralService.ReferralView createReferral(@NotNull @Valid ReferralService.ReferralEntry entry) {
        return referrals.createReferral(entry);
    }

    @POST
    @NeedsTag("referral")
    @Path("/{id}/reviews")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ReferralService.ReferralView review(
            @PathParam("id") String id, @NotNull @Valid ReferralService.ReferralReview review) {
        return referrals.review(Paging.uuid("id", id), review);
    }
}
