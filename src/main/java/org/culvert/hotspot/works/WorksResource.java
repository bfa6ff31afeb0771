package org.culvert.hotspot.works;

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
import java.net.URI;
import java.util.List;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;
import org.jspecify.annotations.Nullable;

/** Works against collisions, and what they did. */
@Ledgered
@Path("/api/works")
public class WorksResource {
    private final WorksService service;
    private final EffectService effects;

    WorksResource(WorksService service, EffectService effects) {
        this.service = service;
        this.effects = effects;
    }

    @POST
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public RestResponse<WorksService.WorksView> enter(@NotNull @Valid WorksService.WorksEntry entry) {
        WorksService.WorksView works = service.enter(entry);
        return ResponseBuilder.<WorksService.WorksView>created(URI.create("/api/works/" + works.id()))
                .entity(works)
                .build();
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Page<WorksService.WorksView> listWorks(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return service.listWorks(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public WorksService.WorksView getWorks(@PathParam("id") String id) {
        return service.getWorks(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("works")
    @Path("/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public WorksService.WorksView correctWorks(
            @PathParam("id") String id, @NotNull @Valid WorksService.WorksCorrection correction) {
        return service.correct(Paging.uuid("id", id), correction);
    }

    /** What the works did: inside, at their ends, beyond, and all together, against what would have come without them. */
    @GET
    @Path("/{id}/effect")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public EffectView effect(
            @PathParam("id") String id,
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("months") @Nullable String months,
            @QueryParam("seasonWindow") @Nullable String seasonWindow,
            @QueryParam("yearsBefore") @Nullable Integer yearsBefore,
            @QueryParam("yearsAfter") @Nullable Integer yearsAfter,
            @QueryParam("beyondMetres") @Nullable Double beyondMetres,
            @QueryParam("windowMetres") @Nullable Double windowMetres,
            @QueryParam("comparison") List<String> comparison) {
        return effects.effect(
                Paging.uuid("id", id),
                taxonGroup,
                months,
                seasonWindow,
                yearsBefore,
                yearsAfter,
                beyondMetres,
                windowMetres,
                comparison);
    }
}
