package org.culvert.care.clutch;

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

/** What has been published of how long eggs take, how fast they develop, and what makes the sex of the young. */
@Ledgered
@Path("/api/incubation-facts")
public class IncubationFactResource {
    private final IncubationFactService facts;

    IncubationFactResource(IncubationFactService facts) {
        this.facts = facts;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER, Role.ADMIN})
    public List<IncubationFactService.IncubationFactView> listFacts() {
        return facts.listFacts();
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER, Role.ADMIN})
    public IncubationFactService.IncubationFactView getFact(@PathParam("id") String id) {
        return facts.getFact(Paging.uuid("id", id));
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public IncubationFactService.IncubationFactView createFact(
            @NotNull @Valid IncubationFactService.IncubationFactEntry entry) {
        return facts.createFact(entry);
    }

    @POST
    @NeedsTag("incubation-fact")
    @Path("/{id}/reviews")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public IncubationFactService.IncubationFactView review(
            @PathParam("id") String id, @NotNull @Valid IncubationFactService.IncubationFactReview review) {
        return facts.review(Paging.uuid("id", id), review);
    }
}
