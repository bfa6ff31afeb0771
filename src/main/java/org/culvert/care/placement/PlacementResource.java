package org.culvert.care.placement;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Who can take an animal, and who does. */
@Ledgered
@Path("/api")
public class PlacementResource {
    private final PlacementService placements;
    private final CarerSearch search;

    PlacementResource(PlacementService placements, CarerSearch search) {
        this.placements = placements;
        this.search = search;
    }

    /** Every carer, those who can take the animal first, with what speaks for and against each. */
    @GET
    @Path("/cases/{id}/carers")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public List<CarerSearch.CarerOption> findCarers(
            @PathParam("id") String id, @QueryParam("at") @Nullable Instant at) {
        return search.findCarers(Paging.uuid("id", id), at);
    }

    @POST
    @Path("/cases/{id}/placements")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public PlacementService.PlacementView place(
            @PathParam("id") String id, @NotNull @Valid PlacementService.PlacementEntry entry) {
        return placements.place(Paging.uuid("id", id), entry);
    }

    @GET
    @Path("/cases/{id}/placements")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<PlacementService.PlacementView> listPlacements(@PathParam("id") String id) {
        return placements.listPlacements(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/placements/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public PlacementService.PlacementView getPlacement(@PathParam("id") String id) {
        return placements.getPlacement(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("placement")
    @Path("/placements/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public PlacementService.PlacementView correctPlacement(
            @PathParam("id") String id, @NotNull @Valid PlacementService.PlacementCorrection correction) {
        return placements.correct(Paging.uuid("id", id), correction);
    }
}
