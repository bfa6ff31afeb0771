package org.culvert.hotspot.effort;

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
import java.time.LocalDate;
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

/** Surveys of roads for struck animals. */
@Ledgered
@Path("/api/road-surveys")
public class RoadSurveyResource {
    private final RoadSurveyService service;

    RoadSurveyResource(RoadSurveyService service) {
        this.service = service;
    }

    @POST
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public RestResponse<RoadSurveyService.RoadSurveyView> enter(
            @NotNull @Valid RoadSurveyService.RoadSurveyEntry entry) {
        RoadSurveyService.RoadSurveyView survey = service.enter(entry);
        return ResponseBuilder.<RoadSurveyService.RoadSurveyView>created(URI.create("/api/road-surveys/" + survey.id()))
                .entity(survey)
                .build();
    }

    /** Surveys that began within a period, of one road or of all; also those that were withdrawn. */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ROADS_AUTHORITY, Role.OFFICER, Role.ADMIN})
    public Page<RoadSurveyService.RoadSurveyView> listSurveys(
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to,
            @QueryParam("road") @Nullable String road,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return service.listSurveys(day("from", from), day("to", to), road, Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ROADS_AUTHORITY, Role.OFFICER, Role.ADMIN})
    public RoadSurveyService.RoadSurveyView getSurvey(@PathParam("id") String id) {
        return service.getSurvey(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("road-survey")
    @Path("/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public RoadSurveyService.RoadSurveyView correctSurvey(
            @PathParam("id") String id, @NotNull @Valid RoadSurveyService.RoadSurveyCorrection correction) {
        return service.correct(Paging.uuid("id", id), correction);
    }

    /** Takes a survey back: it is kept and shown, and counts no longer. */
    @POST
    @NeedsTag("road-survey")
    @Path("/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public RoadSurveyService.RoadSurveyView withdraw(
            @PathParam("id") String id, @NotNull @Valid RoadSurveyService.RoadSurveyWithdrawal withdrawal) {
        return service.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }

    private static @Nullable LocalDate day(String field, @Nullable String text) {
        return text == null ? null : Paging.day(field, text);
    }
}
