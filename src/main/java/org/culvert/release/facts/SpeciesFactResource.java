package org.culvert.release.facts;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;

/** What has been published of species that bears on where and when they may go back. */
@Ledgered
@Path("/api/species-facts")
public class SpeciesFactResource {
    private final SpeciesFactService facts;

    SpeciesFactResource(SpeciesFactService facts) {
        this.facts = facts;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public List<SpeciesFactService.PublishedFactView> listFacts() {
        return facts.listFacts();
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public SpeciesFactService.PublishedFactView getFact(@PathParam("id") String id) {
        return facts.getFact(Paging.uuid("id", id));
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public SpeciesFactService.PublishedFactView createFact(@NotNull @Valid SpeciesFactService.FactEntry entry) {
        return facts.createFact(entry);
    }

    @POST
    @NeedsTag("species-fact")
    @Path("/{id}/reviews")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public SpeciesFactService.PublishedFactView review(
            @PathParam("id") String id, @NotNull @Valid SpeciesFactService.FactReview review) {
        return facts.review(Paging.uuid("id", id), review);
    }
}
