package org.culvert.release.holds;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;

/** Holds on animals for the health of people or animals. */
@Ledgered
@Path("/api")
public class HoldResource {
    private final HoldService holds;

    HoldResource(HoldService holds) {
        this.holds = holds;
    }

    /** Sets a hold. Nothing overrides it; whom it concerns is not said here. */
    @POST
    @Path("/cases/{id}/holds")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public RestResponse<HoldService.CaseHoldView> setHold(
            @PathParam("id") String id, @NotNull @Valid HoldService.HoldEntry entry) {
        HoldService.CaseHoldView hold = holds.setHold(Paging.uuid("id", id), entry);
        return ResponseBuilder.<HoldService.CaseHoldView>created(URI.create("/api/holds/" + hold.id()))
                .entity(hold)
                .build();
    }

    /** Holds of a case, those that were cleared among them. */
    @GET
    @Path("/cases/{id}/holds")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public List<HoldService.CaseHoldView> listHolds(@PathParam("id") String id) {
        return holds.listHolds(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/holds/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public HoldService.CaseHoldView getHold(@PathParam("id") String id) {
        return holds.getHold(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("hold")
    @Path("/holds/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public HoldService.CaseHoldView correctHold(
            @PathParam("id") String id, @NotNull @Valid HoldService.HoldCorrection correction) {
        return holds.correct(Paging.uuid("id", id), correction);
    }

    /** Ends a hold, by the authority's word or a licensed vet's, with their reference. */
    @POST
    @NeedsTag("hold")
    @Path("/holds/{id}/clearing")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public HoldService.CaseHoldView clear(
            @PathParam("id") String id, @NotNull @Valid HoldService.HoldClearing clearing) {
        return holds.clear(Paging.uuid("id", id), clearing);
    }
}
