package org.culvert.animal.photograph;

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
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.HexFormat;
import java.util.List;
import org.culvert.animal.CaseCorrections;
import org.culvert.platform.Actor;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.SealBrokenException;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.ShownOnce;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Photographs of incidents and of cases: copies for who sees these, sealed originals for very few. */
@Ledgered
@Path("/api")
public class PhotographResource {
    /** Why an original is opened, or why a photograph tells where an incident was. */
    public record PhotographReason(
            @NotBlank @Size(max = 2000) String reason) {}

    private final PhotographService photographs;
    private final OriginalService originals;
    private final FoundPlaceService places;
    private final Actor actor;

    PhotographResource(
            PhotographService photographs, OriginalService originals, FoundPlaceService places, Actor actor) {
        this.photographs = photographs;
        this.originals = originals;
        this.places = places;
        this.actor = actor;
    }

    @POST
    @Path("/incidents/{id}/photographs")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public RestResponse<PhotographView> addToIncident(
            @PathParam("id") String id, @NotNull @Valid PhotographService.SentPhotograph sent) {
        return created(photographs.addToIncident(Paging.uuid("id", id), sent));
    }

    /** Photographs of the incident and of those that stand joined with it, newest first. */
    @GET
    @Path("/incidents/{id}/photographs")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<PhotographView> listOfIncident(
            @PathParam("id") String id,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return photographs.listOfIncident(Paging.uuid("id", id), Paging.limit(limit), Paging.cursor(cursor));
    }

    @POST
    @Path("/cases/{id}/photographs")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public RestResponse<PhotographView> addToCase(
            @PathParam("id") String id, @NotNull @Valid PhotographService.SentPhotograph sent) {
        return created(photographs.addToCase(Paging.uuid("id", id), sent));
    }

    /** Photographs of the case and of its incident, newest first. */
    @GET
    @Path("/cases/{id}/photographs")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<PhotographView> listOfCase(
            @PathParam("id") String id,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return photographs.listOfCase(Paging.uuid("id", id), Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/photographs/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public PhotographView getPhotograph(@PathParam("id") String id) {
        return photographs.getPhotograph(Paging.uuid("id", id));
    }

    /** The picture to be looked at: upright, at most 2,048 pixels long, and without anything that the camera wrote into it. */
    @GET
    @Path("/photographs/{id}/copy")
    @Produces(KeptFiles.JPEG)
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response getCopy(@PathParam("id") String id, @Context Request request) {
        return picture(photographs.getCopy(Paging.uuid("id", id), false), request);
    }

    /** The same for lists, at most 320 pixels long. */
    @GET
    @Path("/photographs/{id}/small")
    @Produces(KeptFiles.JPEG)
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response getSmall(@PathParam("id") String id, @Context Request request) {
        return picture(photographs.getCopy(Paging.uuid("id", id), true), request);
    }

    /**
     * Opens the sealed original, for a reason that is kept with who opened it and what its content was then. Where the content
     * has not the digest any more under which it was sealed, that is kept, and it is not given.
     */
    @POST
    @ShownOnce
    @Path("/photographs/{id}/original-openings")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public OriginalService.OpenedOriginal openOriginal(
            @PathParam("id") String id, @NotNull @Valid PhotographReason reason) {
        OriginalService.OpenedOriginal opened = originals.open(Paging.uuid("id", id), reason.reason());
        if (!opened.opening().sealHolds()) {
            throw new SealBrokenException(
                    opened.opening().sealedSha256(), opened.opening().foundSha256());
        }
        return opened;
    }

    /** Who opened the original, when and why, the last first. */
    @GET
    @Path("/photographs/{id}/original-openings")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public List<PhotographView.OpeningView> listOpenings(@PathParam("id") String id) {
        return originals.listOpenings(Paging.uuid("id", id));
    }

    @POST
    @NeedsTag("photograph")
    @Path("/photographs/{id}/withdrawal")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public PhotographView withdraw(@PathParam("id") String id, @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return photographs.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }

    /** Puts the incident where the photograph says that it was taken; the place before stays in the revisions. */
    @POST
    @NeedsTag("incident")
    @Path("/incidents/{id}/photographs/{photographId}/found-place")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public FoundPlaceService.PlacedByPhotograph takePlace(
            @PathParam("id") String id,
            @PathParam("photographId") String photographId,
            @NotNull @Valid PhotographReason reason) {
        return places.place(
                Paging.uuid("id", id),
                Paging.uuid("photographId", photographId),
                reason.reason(),
                actor.hasRole(Role.DISPATCHER) || actor.hasRole(Role.COORDINATOR));
    }

    private static RestResponse<PhotographView> created(PhotographView view) {
        return RestResponse.ResponseBuilder.<PhotographView>created(URI.create("/api/photographs/" + view.id()))
                .entity(view)
                .build();
    }

    /** Kept by whoever asked, who asks each time whether they still may. */
    private static Response picture(KeptFiles.Content picture, Request request) {
        var tag = new EntityTag(HexFormat.of().formatHex(KeptFiles.sha256(picture.octets())));
        Response.ResponseBuilder known = request.evaluatePreconditions(tag);
        Response.ResponseBuilder answer =
                known == null ? Response.ok(picture.octets()).type(picture.mediaType()) : known;
        return answer.tag(tag)
                .header(HttpHeaders.CACHE_CONTROL, "private, no-cache")
                .header(HttpHeaders.VARY, "Authorization, Cookie")
                .header("X-Content-Type-Options", "nosniff")
                .build();
    }
}
