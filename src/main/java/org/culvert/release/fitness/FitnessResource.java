package org.culvert.release.fitness;

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
import org.jboss.resteasy.reactive.ResponseStatus;

/** What vets signed of animals before they may go back. */
@Ledgered
@Path("/api/cases/{id}/fitness-checks")
public class FitnessResource {
    private final FitnessService checks;

    FitnessResource(FitnessService checks) {
        this.checks = checks;
    }

    /** Keeps a check as a vet signed it. It is never changed; a new one replaces it. */
    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public FitnessService.SignedCheckView sign(
            @PathParam("id") String id, @NotNull @Valid FitnessService.CheckEntry entry) {
        return checks.sign(Paging.uuid("id", id), entry);
    }

    /** Checks of a case, the latest first. */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<FitnessService.SignedCheckView> listChecks(@PathParam("id") String id) {
        return checks.listChecks(Paging.uuid("id", id));
    }
}
