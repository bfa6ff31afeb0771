package org.culvert.care.template;

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
import org.culvert.animal.CaseCorrections;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;

/** Templates of aftercare plans. */
@Ledgered
@Path("/api/plan-templates")
public class TemplateResource {
    private final TemplateService service;

    TemplateResource(TemplateService service) {
        this.service = service;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<PlanTemplateView> listTemplates() {
        return service.listTemplates();
    }

    @POST
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public RestResponse<PlanTemplateView> enter(@NotNull @Valid TemplateEntries.TemplateEntry entry) {
        PlanTemplateView view = service.enter(entry);
        return RestResponse.ResponseBuilder.<PlanTemplateView>created(URI.create("/api/plan-templates/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public PlanTemplateView getTemplate(@PathParam("id") String id) {
        return service.getTemplate(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. It wants adopting again. */
    @PATCH
    @NeedsTag("plan-template")
    @Path("/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public PlanTemplateView correct(
            @PathParam("id") String id, @NotNull @Valid TemplateEntries.TemplateCorrection correction) {
        return service.correct(Paging.uuid("id", id), correction);
    }

    /** A vet adopts the template as it was read. */
    @POST
    @NeedsTag("plan-template")
    @Path("/{id}/adoptions")
    @ResponseStatus(201)
    @RolesAllowed(Role.CLINIC)
    public PlanTemplateView adopt(@PathParam("id") String id, @NotNull @Valid TemplateEntries.AdoptionEntry entry) {
        return service.adopt(Paging.uuid("id", id), entry);
    }

    /** Takes an adoption back: no plan is made of the template any more. Plans that were made stay in force. */
    @POST
    @NeedsTag("plan-template")
    @Path("/{id}/adoptions/{adoptionId}/withdrawal")
    @RolesAllowed(Role.CLINIC)
    public PlanTemplateView withdraw(
            @PathParam("id") String id,
            @PathParam("adoptionId") String adoptionId,
            @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return service.withdraw(Paging.uuid("id", id), Paging.uuid("adoptionId", adoptionId), withdrawal.reason());
    }
}
