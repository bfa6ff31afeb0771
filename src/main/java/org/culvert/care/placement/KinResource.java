package org.culvert.care.placement;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.net.URI;
import org.culvert.animal.CaseCorrections;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;

/** Who is kept together. */
@Ledgered
@Path("/api")
public class KinResource {
    private final KinService kin;

    KinResource(KinService kin) {
        this.kin = kin;
    }

    /** Animals in care from which that of a case is not parted, and what people said of it. */
    @GET
    @Path("/cases/{id}/kin")
    @RolesAllowed({Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public KinService.KinView getKin(@PathParam("id") String id) {
        return kin.getKin(Paging.uuid("id", id));
    }

    /** Says that an animal is kept together with another, or goes alone. */
    @POST
    @Path("/cases/{id}/keeping-ties")
    @RolesAllowed({Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public RestResponse<KinService.KeepingTieView> enter(
            @PathParam("id") String id, @NotNull @Valid KinService.KeepingTieEntry entry) {
        KinService.KeepingTieView view = kin.enter(Paging.uuid("id", id), entry);
        return RestResponse.ResponseBuilder.<KinService.KeepingTieView>created(
                        URI.create("/api/keeping-ties/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Tagged
    @Path("/keeping-ties/{id}")
    @RolesAllowed({Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public KinService.KeepingTieView getTie(@PathParam("id") String id) {
        return kin.getTie(Paging.uuid("id", id));
    }

    /** It is not so any more. */
    @POST
    @NeedsTag("keeping-tie")
    @Path("/keeping-ties/{id}/withdrawal")
    @RolesAllowed({Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public KinService.KeepingTieView withdraw(
            @PathParam("id") String id, @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return kin.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }
}
