package org.culvert.clinic;

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
import org.culvert.animal.CaseCorrections;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.SignInException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.culvert.platform.sight.Sight;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Visits to a clinic. */
@Ledgered
@Path("/api")
public class ClinicResource {
    private final ClinicService service;
    private final ClinicCorrector corrector;
    private final BodyParts parts;
    private final Sight sight;

    ClinicResource(ClinicService service, ClinicCorrector corrector, BodyParts parts, Sight sight) {
        this.service = service;
        this.corrector = corrector;
        this.parts = parts;
        this.sight = sight;
    }

    @POST
    @Path("/visits")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR})
    public RestResponse<VisitView> admit(@NotNull @Valid ClinicService.VisitEntry entry) {
        // A visit makes its clinic one of those that see the case: nobody lets themselves in
        if (sight.seesOwnOnly("case") && !sight.isOwn("case", entry.caseId())) {
            throw SignInException.notTheirs(
                    "The animal of that case is neither with your organisation nor on its way to it: whoever has it hands it"
                            + " over or says that it is there, or a coordinator records the visit.");
        }
        VisitView view = service.admit(entry);
        return RestResponse.ResponseBuilder.<VisitView>created(URI.create("/api/visits/" + view.id()))
                .entity(view)
                .build();
    }

    /**
     * Parts of the body that a finding may name.
     *
     * @param taxonGroup key of a group, to see only the parts that its animals have, as far as their plan is told
     */
    @GET
    @Path("/body-parts")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR, Role.CARER, Role.OFFICER})
    public List<BodyParts.BodyPartView> listParts(@QueryParam("taxonGroup") @Nullable String taxonGroup) {
        return parts.listParts(taxonGroup);
    }

    @GET
    @Tagged
    @Path("/visits/{id}")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR, Role.CARER, Role.OFFICER})
    public VisitView getVisit(@PathParam("id") String id) {
        return service.getVisit(Paging.uuid("id", id));
    }

    @GET
    @Path("/cases/{id}/visits")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR, Role.CARER, Role.OFFICER})
    public List<VisitView> listVisits(@PathParam("id") String id) {
        return service.listVisits(Paging.uuid("id", id));
    }

    @POST
    @Path("/visits/{id}/findings")
    @ResponseStatus(201)
    @RolesAllowed(Role.CLINIC)
    public VisitView addFinding(@PathParam("id") String id, @NotNull @Valid ClinicService.FindingEntry entry) {
        return service.addFinding(Paging.uuid("id", id), entry);
    }

    /** A vet's order, in the vet's own words. */
    @POST
    @Path("/visits/{id}/drug-orders")
    @ResponseStatus(201)
    @RolesAllowed(Role.CLINIC)
    public VisitView addDrugOrder(@PathParam("id") String id, @NotNull @Valid ClinicService.DrugOrderEntry entry) {
        return service.addDrugOrder(Paging.uuid("id", id), entry);
    }

    /** Something was given by an order; a carer may say so of what they hold. */
    @POST
    @Path("/visits/{id}/drug-orders/{orderId}/uses")
    @ResponseStatus(201)
    @RolesAllowed({Role.CLINIC, Role.CARER})
    public VisitView addDrugUse(
            @PathParam("id") String id,
            @PathParam("orderId") String orderId,
            @NotNull @Valid ClinicService.DrugUseEntry entry) {
        return service.addDrugUse(Paging.uuid("id", id), Paging.uuid("orderId", orderId), entry);
    }

    /** Takes an order back; what was given by it stays recorded. */
    @POST
    @NeedsTag("visit")
    @Path("/visits/{id}/drug-orders/{orderId}/withdrawal")
    @RolesAllowed(Role.CLINIC)
    public VisitView withdrawDrugOrder(
            @PathParam("id") String id,
            @PathParam("orderId") String orderId,
            @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return service.withdrawDrug(Paging.uuid("id", id), Paging.uuid("orderId", orderId), null, withdrawal.reason());
    }

    /** Takes back that something was given. */
    @POST
    @NeedsTag("visit")
    @Path("/visits/{id}/drug-orders/{orderId}/uses/{useId}/withdrawal")
    @RolesAllowed(Role.CLINIC)
    public VisitView withdrawDrugUse(
            @PathParam("id") String id,
            @PathParam("orderId") String orderId,
            @PathParam("useId") String useId,
            @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return service.withdrawDrug(
                Paging.uuid("id", id),
                Paging.uuid("orderId", orderId),
                Paging.uuid("useId", useId),
                withdrawal.reason());
    }

    @POST
    @Path("/visits/{id}/readings")
    @ResponseStatus(201)
    @RolesAllowed(Role.CLINIC)
    public VisitView addReading(@PathParam("id") String id, @NotNull @Valid ClinicService.ReadingEntry entry) {
        return service.addReading(Paging.uuid("id", id), entry);
    }

    @POST
    @Path("/visits/{id}/procedures")
    @ResponseStatus(201)
    @RolesAllowed(Role.CLINIC)
    public VisitView addProcedure(@PathParam("id") String id, @NotNull @Valid ClinicService.ProcedureEntry entry) {
        return service.addProcedure(Paging.uuid("id", id), entry);
    }

    @POST
    @NeedsTag("visit")
    @Path("/visits/{id}/discharge")
    @ResponseStatus(201)
    @RolesAllowed(Role.CLINIC)
    public VisitView discharge(@PathParam("id") String id, @NotNull @Valid ClinicService.DischargeEntry entry) {
        return service.discharge(Paging.uuid("id", id), entry);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("visit")
    @Path("/visits/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR})
    public VisitView correctVisit(
            @PathParam("id") String id, @NotNull @Valid ClinicCorrections.VisitCorrection correction) {
        corrector.correctVisit(Paging.uuid("id", id), correction);
        return service.getVisit(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("visit")
    @Path("/visits/{id}/findings/{findingId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.CLINIC})
    public VisitView correctFinding(
            @PathParam("id") String id,
            @PathParam("findingId") String findingId,
            @NotNull @Valid ClinicCorrections.FindingCorrection correction) {
        corrector.correctFinding(Paging.uuid("id", id), Paging.uuid("findingId", findingId), correction);
        return service.getVisit(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("visit")
    @Path("/visits/{id}/readings/{readingId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.CLINIC})
    public VisitView correctReading(
            @PathParam("id") String id,
            @PathParam("readingId") String readingId,
            @NotNull @Valid ClinicCorrections.ReadingCorrection correction) {
        corrector.correctReading(Paging.uuid("id", id), Paging.uuid("readingId", readingId), correction);
        return service.getVisit(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("visit")
    @Path("/visits/{id}/procedures/{procedureId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.CLINIC})
    public VisitView correctProcedure(
            @PathParam("id") String id,
            @PathParam("procedureId") String procedureId,
            @NotNull @Valid ClinicCorrections.ProcedureCorrection correction) {
        corrector.correctProcedure(Paging.uuid("id", id), Paging.uuid("procedureId", procedureId), correction);
        return service.getVisit(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("visit")
    @Path("/visits/{id}/discharge")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.CLINIC})
    public VisitView correctDischarge(
            @PathParam("id") String id, @NotNull @Valid ClinicCorrections.DischargeCorrection correction) {
        corrector.correctDischarge(Paging.uuid("id", id), correction);
        return service.getVisit(Paging.uuid("id", id));
    }
}
