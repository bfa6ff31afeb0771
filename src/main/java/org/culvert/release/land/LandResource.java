package org.culvert.release.land;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.net.URI;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.culvert.release.rules.Land;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;
import org.jspecify.annotations.Nullable;

/** Land of which something is known that bears on where an animal may go. */
@Ledgered
@Path("/api/land-areas")
public class LandResource {
    private final LandService service;

    LandResource(LandService service) {
        this.service = service;
    }

    /** Enters land: polygons of GeoJSON with what is known of it. */
    @POST
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<LandService.LandAreaView> enter(@NotNull @Valid LandService.LandEntry entry) {
        LandService.LandAreaView area = service.enter(entry);
        return ResponseBuilder.<LandService.LandAreaView>created(URI.create("/api/land-areas/" + area.id()))
                .entity(area)
                .build();
    }

    /** Land areas without their geometry, of a kind, with a part of a name, or holding on a day; newest first. */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER, Role.ADMIN})
    public Page<LandService.LandAreaView> listAreas(
            @QueryParam("kind") @Nullable String kind,
            @QueryParam("name") @Nullable String name,
            @QueryParam("day") @Nullable String day,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return service.listAreas(
                kind == null ? null : kind(kind),
                name,
                day == null ? null : Paging.day("day", day),
                Paging.limit(limit),
                Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER, Role.ADMIN})
    public LandService.LandAreaView getArea(@PathParam("id") String id) {
        return service.getArea(Paging.uuid("id", id));
    }

    /** Says from which day on it no longer holds. Nothing is deleted: what holds instead is another area. */
    @POST
    @NeedsTag("land-area")
    @Path("/{id}/ending")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public LandService.LandAreaView end(@PathParam("id") String id, @NotNull @Valid LandService.LandEnding ending) {
        return service.end(Paging.uuid("id", id), ending);
    }

    private static Land.Kind kind(String text) {
        return Arrays.stream(Land.Kind.values())
                .filter(kind -> kind.name().equals(text))
                .findFirst()
                .orElseThrow(() -> InvalidException.of(
                        "kind",
                        "There is no such kind of land.",
                        Arrays.stream(Land.Kind.values()).map(Enum::name).collect(Collectors.joining(", "))));
    }
}
