package org.culvert.release;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Positive;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.culvert.animal.CaseCorrections;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.culvert.release.rules.Rule;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Assessments and releases. */
@Ledgered
@Path("/api")
public class ReleaseResource {
    private final AssessmentService assessments;
    private final ReleaseService releases;
    private final AreaService areas;

    ReleaseResource(AssessmentService assessments, ReleaseService releases, AreaService areas) {
        this.areas = areas;
        this.assessments = assessments;
        this.releases = releases;
    }

    @POST
    @Path("/cases/{id}/found-place-unsuitable")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER})
    public AssessmentService.UnsuitableView recordUnsuitable(
            @PathParam("id") String id, @NotNull @Valid AssessmentService.UnsuitableEntry entry) {
        return assessments.recordUnsuitable(Paging.uuid("id", id), entry);
    }

    @GET
    @Path("/cases/{id}/found-place-unsuitable")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER})
    public List<AssessmentService.UnsuitableView> listUnsuitable(@PathParam("id") String id) {
        return assessments.listUnsuitable(Paging.uuid("id", id));
    }

    /** The area that rules and maps entered here do not rule out, as a GeoJSON feature, with the known sites in order. */
    @GET
    @Path("/cases/{id}/release-area")
    @Produces({"application/geo+json", MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public ReleaseAreaFeature findArea(
            @PathParam("id") String id,
            @QueryParam("jurisdiction") @Nullable @Pattern(regexp = Rule.ISO_3166, message = "must be an ISO 3166 code")
                    String jurisdiction,
            @QueryParam("withinMetres") @Nullable @Positive @Max(200_000) Double withinMetres) {
        return areas.find(Paging.uuid("id", id), jurisdiction, withinMetres);
    }

    @POST
    @Path("/assessments")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public RestResponse<AssessmentService.AssessmentView> assess(
            @NotNull @Valid AssessmentService.AssessmentEntry entry) {
        AssessmentService.AssessmentView view = assessments.assess(entry);
        return RestResponse.ResponseBuilder.<AssessmentService.AssessmentView>created(
                        URI.create("/api/assessments/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/assessments")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<AssessmentService.AssessmentView> listAssessments(
            @QueryParam("caseId") @Nullable String caseId,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return assessments.listAssessments(
                caseId == null ? null : Paging.uuid("caseId", caseId), Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Path("/assessments/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public AssessmentService.AssessmentView getAssessment(@PathParam("id") String id) {
        return assessments.getAssessment(Paging.uuid("id", id));
    }

    @POST
    @Path("/releases")
    @RolesAllowed(Role.COORDINATOR)
    public RestResponse<ReleaseView> release(@NotNull @Valid ReleaseEntries.ReleaseEntry entry) {
        ReleaseView view = releases.release(entry);
        return RestResponse.ResponseBuilder.<ReleaseView>created(URI.create("/api/releases/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/releases")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<ReleaseView> listReleases(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return releases.listReleases(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/releases/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public ReleaseView getRelease(@PathParam("id") String id) {
        return releases.getRelease(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("release")
    @Path("/releases/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed(Role.COORDINATOR)
    public ReleaseView correctRelease(
            @PathParam("id") String id, @NotNull @Valid ReleaseEntries.ReleaseCorrection correction) {
        return releases.correct(Paging.uuid("id", id), correction);
    }

    /** Takes back that an animal was let go: its case goes on, and what was recorded stays to be read. */
    @POST
    @NeedsTag("release")
    @Path("/releases/{id}/animals/{caseId}/withdrawal")
    @RolesAllowed(Role.COORDINATOR)
    public ReleaseView withdrawAnimal(
            @PathParam("id") String id,
            @PathParam("caseId") String caseId,
            @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return releases.withdraw(Paging.uuid("id", id), Paging.uuid("caseId", caseId), withdrawal.reason());
    }

    /** The document of a permit; sent as a file, since nothing that was handed in is shown as a page of ours. */
    @GET
    @Path("/releases/{id}/documents/{liftedId}")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public Response getDocument(@PathParam("id") String id, @PathParam("liftedId") String liftedId) {
        ReleaseService.Document document =
                releases.getDocument(Paging.uuid("id", id), Paging.uuid("liftedId", liftedId));
        return Response.ok(document.content())
                .type(document.mediaType())
                .header("Content-Disposition", "attachment; filename=\"permit-" + liftedId + "\"")
                .header("X-Content-Type-Options", "nosniff")
                .build();
    }
}
