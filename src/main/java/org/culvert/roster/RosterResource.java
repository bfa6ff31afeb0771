package org.culvert.roster;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Who belongs to the network. Personal data go in and do not come out here. */
@Ledgered
@Path("/api")
public class RosterResource {
    /** Identifier of what was made. */
    public record Made(UUID id) {}

    private final RosterService service;

    RosterResource(RosterService service) {
        this.service = service;
    }

    @GET
    @Path("/organisations")
    @RolesAllowed("**")
    public List<RosterService.OrganisationView> listOrganisations(@QueryParam("kind") @Nullable String kind) {
        return service.listOrganisations(kind);
    }

    @POST
    @Path("/organisations")
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public RosterService.OrganisationView createOrganisation(@NotNull @Valid RosterService.OrganisationEntry entry) {
        return service.createOrganisation(entry);
    }

    @GET
    @Path("/members")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR, Role.DISPATCHER})
    public List<RosterService.MemberView> listMembers() {
        return service.listMembers();
    }

    @POST
    @Path("/members")
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public RosterService.MemberView createMember(@NotNull @Valid RosterService.MemberEntry entry) {
        return service.createMember(entry);
    }

    @POST
    @Path("/authorisations")
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public Made createAuthorisation(@NotNull @Valid RosterService.AuthorisationEntry entry) {
        return new Made(service.createAuthorisation(entry));
    }

    @POST
    @Path("/vaccinations")
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public Made createVaccination(@NotNull @Valid RosterService.VaccinationEntry entry) {
        return new Made(service.createVaccination(entry));
    }
}
