package org.culvert.taxon;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jspecify.annotations.Nullable;

/** Which animals there are. */
@Ledgered
@Path("/api")
public class TaxonResource {
    private final TaxonService service;
    private final CautionService cautions;

    TaxonResource(TaxonService service, CautionService cautions) {
        this.service = service;
        this.cautions = cautions;
    }

    @GET
    @Path("/taxon-groups")
    @RolesAllowed("**")
    public List<TaxonService.GroupView> listGroups() {
        return service.listGroups();
    }

    @POST
    @Path("/taxon-groups")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public List<TaxonService.GroupView> enterGroups(@NotNull List<TaxonService.@NotNull @Valid GroupEntry> entries) {
        return service.enterGroups(entries);
    }

    @GET
    @Path("/taxa")
    @RolesAllowed("**")
    public List<TaxonService.TaxonView> findTaxa(@QueryParam("q") @Nullable String words) {
        return service.findTaxa(words);
    }

    @POST
    @Path("/taxa")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public List<TaxonService.TaxonView> enterTaxa(@NotNull List<TaxonService.@NotNull @Valid TaxonEntry> entries) {
        return service.enterTaxa(entries);
    }

    /** Sensitive taxa whose review is past due. */
    @GET
    @Path("/taxa/sensitivity-reviews")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR, Role.OFFICER})
    public List<TaxonService.TaxonView> listReviewsDue() {
        return service.listReviewsDue();
    }

    @GET
    @Path("/taxa/{id}")
    @Tagged
    @RolesAllowed("**")
    public TaxonService.TaxonView getTaxon(@PathParam("id") String id) {
        return service.getTaxon(Paging.uuid("id", id));
    }

    @PUT
    @Path("/taxa/{id}/sensitivity")
    @NeedsTag("taxon")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public TaxonService.TaxonView settleSensitivity(
            @PathParam("id") String id, @NotNull @Valid TaxonService.SensitivityEntry entry) {
        return service.settleSensitivity(Paging.uuid("id", id), entry);
    }

    /** What callers and rescuers hear about groups. */
    @GET
    @Path("/cautions")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.ADMIN})
    public List<CautionService.CautionView> listCautions() {
        return cautions.listCautions();
    }

    @POST
    @Path("/cautions")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public void enterCautions(@NotNull List<CautionService.@NotNull @Valid CautionView> entries) {
        cautions.enterCautions(entries);
    }
}
