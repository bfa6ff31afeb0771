package org.culvert.hotspot;

import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Multi;
import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.net.URI;
import java.util.UUID;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;
import org.jspecify.annotations.Nullable;

/** Hotspot runs: asked for, watched, and read. */
@Ledgered
@Path("/api/hotspot-runs")
public class HotspotRunResource {
    private static final String ONE_YEAR_PRIVATE = "private, max-age=31536000, immutable";

    private final HotspotRunService service;
    private final RunEvents events;

    HotspotRunResource(HotspotRunService service, RunEvents events) {
        this.service = service;
        this.events = events;
    }

    /** Asks for a run. It is computed in the background: look at {@code Location} for how far it has come. */
    @POST
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public RestResponse<RunView> start(@NotNull @Valid RunEntry entry) {
        RunView run = service.start(entry);
        return ResponseBuilder.create(RestResponse.Status.ACCEPTED, run)
                .location(URI.create("/api/hotspot-runs/" + run.id()))
                .build();
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Page<RunView> listRuns(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return service.listRuns(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public RunView getRun(@PathParam("id") String id) {
        return service.getRun(id(id));
    }

    /** The result, to the byte: the same run on the same records gives the same bytes. */
    @GET
    @Path("/{id}/result")
    @Produces(MediaType.APPLICATION_JSON)
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public RestResponse<String> getResult(@PathParam("id") String id) {
        HotspotRunService.Document document = service.getDocument(id(id));
        return ResponseBuilder.ok(document.text(), MediaType.APPLICATION_JSON_TYPE)
                .header("ETag", "\"" + document.sha256() + "\"")
                .header("Cache-Control", ONE_YEAR_PRIVATE)
                .build();
    }

    @GET
    @Path("/{id}/hotspots.geojson")
    @Produces("application/geo+json")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public HotspotFiles.FeatureCollection getGeoJson(@PathParam("id") String id) {
        return HotspotFiles.geoJson(service.getReport(id(id)));
    }

    @GET
    @Path("/{id}/hotspots.csv")
    @Produces("text/csv;charset=UTF-8;header=present")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public RestResponse<String> getCsv(@PathParam("id") String id) {
        return ResponseBuilder.ok(HotspotFiles.csv(service.getReport(id(id))))
                .header("Content-Disposition", "attachment; filename=\"hotspots.csv\"")
                .build();
    }

    /**
     * How far a run has come, as it goes: events named {@code progress} with {@code state}, {@code simulationsDone} and
     * {@code simulationsTotal}. The stream ends when the run does.
     */
    @GET
    @Path("/{id}/progress")
    @Produces(MediaType.SERVER_SENT_EVENTS)
    @Blocking
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Multi<OutboundSseEvent> followRun(@PathParam("id") String id, @Context Sse sse) {
        UUID run = id(id);
        service.getStanding(run);
        return events.follow(run)
                .map(text -> sse.newEventBuilder().name("progress").data(text).build());
    }

    /** Calls a run off. It stays to be read, without a result. */
    @POST
    @Path("/{id}/cancellation")
    @ResponseStatus(201)
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public RunView cancel(@PathParam("id") String id, @NotNull @Valid CancellationEntry entry) {
        return service.cancel(id(id), entry.reason());
    }

    /** Why a run is not wanted any more. */
    public record CancellationEntry(
            @NotBlank @Size(max = 2000) String reason) {}

    private static UUID id(String text) {
        return Paging.uuid("id", text);
    }
}
