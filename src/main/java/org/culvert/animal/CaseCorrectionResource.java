package org.culvert.animal;

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
import java.util.UUID;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;

/** Corrections of cases and their animals, and links of custody that were forgotten. */
@Ledgered
@Path("/api")
public class CaseCorrectionResource {
    private final CaseService cases;
    private final CustodyService custody;
    private final CaseCorrector corrector;

    CaseCorrectionResource(CaseService cases, CustodyService custody, CaseCorrector corrector) {
        this.cases = cases;
        this.custody = custody;
        this.corrector = corrector;
    }

    /** One individual. */
    @GET
    @Tagged
    @Path("/animals/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public CaseView.AnimalView getAnimal(@PathParam("id") String id) {
        return cases.getAnimal(id(id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("animal")
    @Path("/animals/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public CaseView.AnimalView correctAnimal(
            @PathParam("id") String id, @NotNull @Valid CaseCorrections.AnimalCorrection correction) {
        corrector.correctAnimal(id(id), correction);
        return cases.getAnimal(id(id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("case")
    @Path("/cases/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.DISPATCHER})
    public CaseView correctCase(@PathParam("id") String id, @NotNull @Valid CaseCorrections.CaseCorrection correction) {
        corrector.correctCase(id(id), correction);
        return cases.getCase(id(id));
    }

    /** Enters a link of custody that was forgotten, into a gap, before the first or after the last. */
    @POST
    @ResponseStatus(201)
    @Path("/cases/{id}/custody-links")
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.DISPATCHER})
    public CaseView insertCustody(@PathParam("id") String id, @NotNull @Valid CaseCorrections.CustodyEntry entry) {
        custody.insert(id(id), entry);
        return cases.getCase(id(id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("case")
    @Path("/cases/{id}/custody-links/{linkId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.DISPATCHER})
    public CaseView correctCustody(
            @PathParam("id") String id,
            @PathParam("linkId") String linkId,
            @NotNull @Valid CaseCorrections.CustodyCorrection correction) {
        custody.correct(id(id), Paging.uuid("linkId", linkId), correction);
        return cases.getCase(id(id));
    }

    /** Where an animal was from an instant on. */
    @GET
    @Tagged
    @Path("/whereabouts/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public CaseView.WhereaboutsView getWhereabouts(@PathParam("id") String id) {
        return cases.getWhereabouts(id(id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("whereabouts")
    @Path("/whereabouts/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public CaseView.WhereaboutsView correctWhereabouts(
            @PathParam("id") String id, @NotNull @Valid CaseCorrections.WhereaboutsCorrection correction) {
        corrector.correctWhereabouts(id(id), correction);
        return cases.getWhereabouts(id(id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("case")
    @Path("/cases/{id}/fate")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public CaseView correctFate(@PathParam("id") String id, @NotNull @Valid CaseCorrections.FateCorrection correction) {
        corrector.correctFate(id(id), correction);
        return cases.getCase(id(id));
    }

    /** Takes back that a case ended: it goes on with whoever had the animal, and what was recorded stays to be read. */
    @POST
    @NeedsTag("case")
    @Path("/cases/{id}/fate/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public CaseView withdrawFate(@PathParam("id") String id, @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        corrector.withdrawFate(id(id), withdrawal.reason());
        return cases.getCase(id(id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("case")
    @Path("/cases/{id}/body")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC})
    public CaseView correctBody(@PathParam("id") String id, @NotNull @Valid CaseCorrections.BodyCorrection correction) {
        corrector.correctBody(id(id), correction);
        return cases.getCase(id(id));
    }

    private static UUID id(String text) {
        return Paging.uuid("id", text);
    }
}
