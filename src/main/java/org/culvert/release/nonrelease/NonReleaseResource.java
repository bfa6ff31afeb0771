package org.culvert.release.nonrelease;

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
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseCorrections;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Decisions that an animal may not go back. */
@Ledgered
@Path("/api")
public class NonReleaseResource {
    private final NonReleaseService service;
    private final NonReleaseReader reader;

    NonReleaseResource(NonReleaseService service, NonReleaseReader reader) {
        this.service = service;
        this.reader = reader;
    }

    @POST
    @Path("/cases/{id}/non-release-decisions")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public RestResponse<NonReleaseView> decide(
            @PathParam("id") String id, @NotNull @Valid NonReleaseEntries.NonReleaseEntry entry) {
        NonReleaseView view = service.decide(Paging.uuid("id", id), entry);
        return RestResponse.ResponseBuilder.<NonReleaseView>created(
                        URI.create("/api/non-release-decisions/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/cases/{id}/non-release-decisions")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<NonReleaseView> listOfCase(@PathParam("id") String id) {
        return service.listOfCase(Paging.uuid("id", id));
    }

    /** Decisions, or those whose welfare review falls due. */
    @GET
    @Path("/non-release-decisions")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public Page<NonReleaseView> listDecisions(
            @QueryParam("dueBefore") @Nullable String dueBefore,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return service.listDecisions(
                dueBefore == null ? null : Paging.day("dueBefore", dueBefore),
                Paging.limit(limit),
                Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/non-release-decisions/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public NonReleaseView getDecision(@PathParam("id") String id) {
        return service.getDecision(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("non-release-decision")
    @Path("/non-release-decisions/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public NonReleaseView correctDecision(
            @PathParam("id") String id, @NotNull @Valid NonReleaseEntries.NonReleaseCorrection correction) {
        return service.correct(Paging.uuid("id", id), correction);
    }

    @POST
    @Path("/non-release-decisions/{id}/second-opinion")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public NonReleaseView addOpinion(
            @PathParam("id") String id, @NotNull @Valid NonReleaseEntries.SecondOpinionEntry entry) {
        return service.addOpinion(Paging.uuid("id", id), entry);
    }

    @POST
    @Path("/non-release-decisions/{id}/authority-notice")
    @RolesAllowed(Role.COORDINATOR)
    public NonReleaseView addNotice(
            @PathParam("id") String id, @NotNull @Valid NonReleaseEntries.AuthorityNoticeEntry entry) {
        return service.addNotice(Paging.uuid("id", id), entry);
    }

    @POST
    @Path("/non-release-decisions/{id}/permit-to-keep")
    @RolesAllowed(Role.COORDINATOR)
    public NonReleaseView addPermit(
            @PathParam("id") String id, @NotNull @Valid NonReleaseEntries.PermitToKeepEntry entry) {
        return service.addPermit(Paging.uuid("id", id), entry);
    }

    /** The document of a permit, sent as a file. */
    @GET
    @Path("/non-release-decisions/{id}/permits-to-keep/{permitId}")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public Response getPermit(@PathParam("id") String id, @PathParam("permitId") String permitId) {
        UUID permit = Paging.uuid("permitId", permitId);
        NonReleaseReader.Document document = reader.getDocument(Paging.uuid("id", id), permit);
        return Response.ok(document.content())
                .type(document.mediaType())
                .header("Content-Disposition", "attachment; filename=\"permit-" + permit + "\"")
                .header("X-Content-Type-Options", "nosniff")
                .build();
    }

    @POST
    @NeedsTag("non-release-decision")
    @Path("/non-release-decisions/{id}/welfare-review")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public NonReleaseView addReview(
            @PathParam("id") String id, @NotNull @Valid NonReleaseEntries.WelfareReviewEntry entry) {
        return service.addReview(Paging.uuid("id", id), entry);
    }

    @POST
    @NeedsTag("non-release-decision")
    @Path("/non-release-decisions/{id}/outcome")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public NonReleaseView addOutcome(@PathParam("id") String id, @NotNull @Valid NonReleaseEntries.OutcomeEntry entry) {
        return service.addOutcome(Paging.uuid("id", id), entry);
    }

    /** Takes the decision back: the animal may go back after all. What was recorded stays to be read. */
    @POST
    @NeedsTag("non-release-decision")
    @Path("/non-release-decisions/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public NonReleaseView withdraw(@PathParam("id") String id, @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return service.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }

    /** Takes back one opinion, notice, permit, review or outcome. */
    @POST
    @NeedsTag("non-release-decision")
    @Path("/non-release-decisions/{id}/parts/{partId}/withdrawal")
    @RolesAllowed(Role.COORDINATOR)
    public NonReleaseView withdrawPart(
            @PathParam("id") String id,
            @PathParam("partId") String partId,
            @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return service.withdrawPart(Paging.uuid("id", id), Paging.uuid("partId", partId), withdrawal.reason());
    }
}
