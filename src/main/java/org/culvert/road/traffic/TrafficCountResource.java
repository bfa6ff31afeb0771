package org.culvert.road.traffic;

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
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.culvert.road.RoadLinkReader;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;
import org.jspecify.annotations.Nullable;

/** Counts and estimates of traffic. */
@Ledgered
@Path("/api/traffic-counts")
public class TrafficCountResource {
    private final TrafficCountService service;

    TrafficCountResource(TrafficCountService service) {
        this.service = service;
    }

    @POST
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<TrafficCountService.TrafficCountView> enter(
            @NotNull @Valid TrafficCountService.TrafficCountEntry entry) {
        TrafficCountService.TrafficCountView count = service.enter(entry);
        return ResponseBuilder.<TrafficCountService.TrafficCountView>created(
                        URI.create("/api/traffic-counts/" + count.id()))
                .entity(count)
                .build();
    }

    /** Counts of a road, a year, a kind or a station, or in a box, newest first; also those that were withdrawn. */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ROADS_AUTHORITY, Role.OFFICER, Role.ADMIN})
    public Page<TrafficCountService.TrafficCountView> listCounts(
            @QueryParam("road") @Nullable String road,
            @QueryParam("year") @Nullable Integer year,
            @QueryParam("kind") @Nullable String kind,
            @QueryParam("station") @Nullable String station,
            @QueryParam("bbox") @Nullable String bbox,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return service.listCounts(
                road,
                year,
                kind == null ? null : TrafficWords.named("kind", TrafficCountKind.class, kind),
                station,
                bbox == null ? null : RoadLinkReader.boundsOf(bbox),
                Paging.limit(limit),
                Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ROADS_AUTHORITY, Role.OFFICER, Role.ADMIN})
    public TrafficCountService.TrafficCountView getCount(@PathParam("id") String id) {
        return service.getCount(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("traffic-count")
    @Path("/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TrafficCountService.TrafficCountView correctCount(
            @PathParam("id") String id, @NotNull @Valid TrafficCountService.TrafficCountCorrection correction) {
        return service.correct(Paging.uuid("id", id), correction);
    }

    /** Takes a count back: it is kept and shown, and counts no longer. */
    @POST
    @NeedsTag("traffic-count")
    @Path("/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TrafficCountService.TrafficCountView withdraw(
            @PathParam("id") String id, @NotNull @Valid TrafficCountService.TrafficCountWithdrawal withdrawal) {
        return service.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }
}
