package org.culvert.care;

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
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;

/** Clutches. */
@Ledgered
@Path("/api")
public class CareResource {
    private final ClutchService clutches;

    CareResource(ClutchService clutches) {
        this.clutches = clutches;
    }

    @POST
    @Path("/clutches")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public RestResponse<ClutchService.ClutchView> createClutch(@NotNull @Valid ClutchService.ClutchEntry entry) {
        ClutchService.ClutchView view = clutches.createClutch(entry);
        return RestResponse.ResponseBuilder.<ClutchService.ClutchView>created(URI.create("/api/clutches/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Tagged
    @Path("/clutches/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public ClutchService.ClutchView getClutch(@PathParam("id") String id) {
        return clutches.getClutch(Paging.uuid("id", id));
    }

    @GET
    @Path("/cases/{id}/clutches")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<ClutchService.ClutchView> listClutches(@PathParam("id") String id) {
        return clutches.listClutches(Paging.uuid("id", id));
    }

    @POST
    @NeedsTag("clutch")
    @Path("/clutches/{id}/eggs")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchService.ClutchView addEggs(@PathParam("id") String id, @NotNull @Valid ClutchService.EggsEntry eggs) {
        return clutches.addEggs(Paging.uuid("id", id), eggs);
    }

    @POST
    @NeedsTag("clutch")
    @Path("/clutches/{id}/hand-overs")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchService.ClutchView handOver(
            @PathParam("id") String id, @NotNull @Valid ClutchService.ClutchHandOverEntry entry) {
        return clutches.handOver(Paging.uuid("id", id), entry);
    }

    @POST
    @NeedsTag("clutch")
    @Path("/clutches/{id}/hatchings")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CARER, Role.CLINIC})
    public ClutchService.HatchingView hatch(
            @PathParam("id") String id, @NotNull @Valid ClutchService.HatchingEntry entry) {
        return clutches.hatch(Paging.uuid("id", id), entry);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clutch")
    @Path("/clutches/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchService.ClutchView correctClutch(
            @PathParam("id") String id, @NotNull @Valid CareCorrections.ClutchCorrection correction) {
        return clutches.correct(Paging.uuid("id", id), correction);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clutch")
    @Path("/clutches/{id}/eggs/{recoveryId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchService.ClutchView correctEggs(
            @PathParam("id") String id,
            @PathParam("recoveryId") String recoveryId,
            @NotNull @Valid CareCorrections.EggsCorrection correction) {
        return clutches.correctEggs(Paging.uuid("id", id), Paging.uuid("recoveryId", recoveryId), correction);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clutch")
    @Path("/clutches/{id}/custody-links/{linkId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchService.ClutchView correctCustody(
            @PathParam("id") String id,
            @PathParam("linkId") String linkId,
            @NotNull @Valid CareCorrections.ClutchCustodyCorrection correction) {
        return clutches.correctCustody(Paging.uuid("id", id), Paging.uuid("linkId", linkId), correction);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clutch")
    @Path("/clutches/{id}/hatchings/{hatchingId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchService.ClutchView correctHatching(
            @PathParam("id") String id,
            @PathParam("hatchingId") String hatchingId,
            @NotNull @Valid CareCorrections.HatchedCorrection correction) {
        return clutches.correctHatching(Paging.uuid("id", id), Paging.uuid("hatchingId", hatchingId), correction);
    }
}
