package org.culvert.release;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseCorrections;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.jboss.resteasy.reactive.ResponseStatus;

/** Photographs of a release, the end of its support feeding, and what is seen of its animals later. */
@Ledgered
@Path("/api")
public class AfterReleaseResource {
    private final ReleaseService releases;
    private final PhotographService photographs;
    private final SightingService sightings;

    AfterReleaseResource(ReleaseService releases, PhotographService photographs, SightingService sightings) {
        this.releases = releases;
        this.photographs = photographs;
        this.sightings = sightings;
    }

    @POST
    @NeedsTag("release")
    @Path("/releases/{id}/support-feeding-end")
    @RolesAllowed({Role.COORDINATOR, Role.CARER})
    public ReleaseView endSupportFeeding(
            @PathParam("id") String id, @NotNull @Valid ReleaseEntries.SupportFeedingEnd end) {
        return releases.endSupportFeeding(Paging.uuid("id", id), end);
    }

    @POST
    @Path("/releases/{id}/photographs")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public PhotographService.ReleasePhotographView addPhotograph(
            @PathParam("id") String id, @NotNull @Valid PhotographService.PhotographEntry entry) {
        return photographs.add(Paging.uuid("id", id), entry);
    }

    /** The photograph as it was handed in, as a file. */
    @GET
    @Path("/releases/{id}/photographs/{photographId}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response getPhotograph(@PathParam("id") String id, @PathParam("photographId") String photographId) {
        UUID photograph = Paging.uuid("photographId", photographId);
        KeptFiles.Content content = photographs.getContent(Paging.uuid("id", id), photograph);
        return Response.ok(content.octets())
                .type(content.mediaType())
                .header("Content-Disposition", "attachment; filename=\"photograph-" + photograph + "\"")
                .header("X-Content-Type-Options", "nosniff")
                .build();
    }

    @POST
    @NeedsTag("release")
    @Path("/releases/{id}/photographs/{photographId}/withdrawal")
    @RolesAllowed(Role.COORDINATOR)
    public ReleaseView withdrawPhotograph(
            @PathParam("id") String id,
            @PathParam("photographId") String photographId,
            @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        UUID release = Paging.uuid("id", id);
        photographs.withdraw(release, Paging.uuid("photographId", photographId), withdrawal.reason());
        return releases.getRelease(release);
    }

    @POST
    @Path("/releases/{id}/sightings")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public SightingService.ReleaseSightingView recordSighting(
            @PathParam("id") String id, @NotNull @Valid SightingService.SightingEntry entry) {
        return sightings.record(Paging.uuid("id", id), entry);
    }

    @GET
    @Path("/releases/{id}/sightings")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<SightingService.ReleaseSightingView> listSightings(@PathParam("id") String id) {
        return sightings.listSightings(Paging.uuid("id", id));
    }

    @POST
    @NeedsTag("release")
    @Path("/releases/{id}/sightings/{sightingId}/withdrawal")
    @RolesAllowed(Role.COORDINATOR)
    public ReleaseView withdrawSighting(
            @PathParam("id") String id,
            @PathParam("sightingId") String sightingId,
            @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        UUID release = Paging.uuid("id", id);
        sightings.withdraw(release, Paging.uuid("sightingId", sightingId), withdrawal.reason());
        return releases.getRelease(release);
    }
}
