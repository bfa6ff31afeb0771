package org.culvert.care.health;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;

/** Syndromes, thresholds, and reports of animals that show a syndrome. */
@Ledgered
@Path("/api")
public class SyndromeResource {
    private final SyndromeService syndromes;

    SyndromeResource(SyndromeService syndromes) {
        this.syndromes = syndromes;
    }

    @GET
    @Path("/syndromes")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public List<SyndromeView> listSyndromes() {
        return syndromes.listSyndromes();
    }

    @POST
    @Path("/syndromes")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public SyndromeView enterSyndrome(@NotNull @Valid SyndromeEntries.SyndromeEntry entry) {
        return syndromes.enterSyndrome(entry);
    }

    /** From how many, how near and how soon on there is an alert. */
    @GET
    @Path("/alert-thresholds")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public List<AlertThresholdView> listThresholds() {
        return syndromes.listThresholds();
    }

    @GET
    @Tagged
    @Path("/alert-thresholds/{id}")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public AlertThresholdView getThreshold(@PathParam("id") String id) {
        return syndromes.getThreshold(Paging.uuid("id", id));
    }

    /** A threshold holds from the next report on. */
    @POST
    @Path("/alert-thresholds")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<AlertThresholdView> enterThreshold(@NotNull @Valid SyndromeEntries.ThresholdEntry entry) {
        AlertThresholdView threshold = syndromes.enterThreshold(entry);
        return ResponseBuilder.<AlertThresholdView>created(URI.create("/api/alert-thresholds/" + threshold.id()))
                .entity(threshold)
                .build();
    }

    /** Says from which day on it no longer holds; another is entered beside it. */
    @POST
    @NeedsTag("alert-threshold")
    @Path("/alert-thresholds/{id}/ending")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public AlertThresholdView endThreshold(
            @PathParam("id") String id, @NotNull @Valid SyndromeEntries.ThresholdEnding ending) {
        return syndromes.endThreshold(Paging.uuid("id", id), ending);
    }

    /** Reports that an animal shows a syndrome; where enough are alike, an alert is raised. */
    @POST
    @Path("/cases/{id}/syndrome-reports")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public RestResponse<SyndromeReportView> report(
            @PathParam("id") String id, @NotNull @Valid SyndromeEntries.ReportEntry entry) {
        SyndromeReportView report = syndromes.report(Paging.uuid("id", id), entry);
        return ResponseBuilder.<SyndromeReportView>created(URI.create("/api/syndrome-reports/" + report.id()))
                .entity(report)
                .build();
    }

    @GET
    @Path("/cases/{id}/syndrome-reports")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public List<SyndromeReportView> listReports(@PathParam("id") String id) {
        return syndromes.listReports(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/syndrome-reports/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public SyndromeReportView getReport(@PathParam("id") String id) {
        return syndromes.getReport(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("syndrome-report")
    @Path("/syndrome-reports/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public SyndromeReportView correctReport(
            @PathParam("id") String id, @NotNull @Valid SyndromeEntries.ReportCorrection correction) {
        return syndromes.correct(Paging.uuid("id", id), correction);
    }

    /** Takes back what should not have been reported; an alert that it is in stays until somebody has read it. */
    @POST
    @NeedsTag("syndrome-report")
    @Path("/syndrome-reports/{id}/withdrawal")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public SyndromeReportView withdrawReport(
            @PathParam("id") String id, @NotNull @Valid SyndromeEntries.ReportWithdrawal withdrawal) {
        return syndromes.withdraw(Paging.uuid("id", id), withdrawal);
    }
}
