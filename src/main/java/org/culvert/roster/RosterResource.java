package org.culvert.roster;

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
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Who belongs to the network. Personal data go in and do not come out here. */
@Ledgered
@Path("/api")
public class RosterResource {
    /** Identifier of what was made. */
    public record Made(UUID id) {}

    private final RosterService service;
    private final VaccinationService vaccinations;
    private final AuthorisationService authorisations;
    private final RosterCorrector corrector;

    RosterResource(
            RosterService service,
            VaccinationService vaccinations,
            AuthorisationService authorisations,
            RosterCorrector corrector) {
        this.service = service;
        this.vaccinations = vaccinations;
        this.authorisations = authorisations;
        this.corrector = corrector;
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
    public Made createAuthorisation(@NotNull @Valid AuthorisationService.AuthorisationEntry entry) {
        return new Made(authorisations.create(entry));
    }

    /** Authorisations that an authority gives many at once, by order. */
    @POST
    @Path("/ordered-authorisations")
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public List<AuthorisationService.AuthorisationView> createByOrder(
            @NotNull @Valid AuthorisationService.OrderedAuthorisations entry) {
        return authorisations.createByOrder(entry);
    }

    @POST
    @Path("/vaccinations")
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public Made createVaccination(@NotNull @Valid VaccinationService.VaccinationEntry entry) {
        return new Made(vaccinations.create(entry));
    }

    /** How long vaccinations count, with the source of each. */
    @GET
    @Path("/vaccination-rules")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR, Role.DISPATCHER})
    public List<VaccinationService.VaccinationRuleView> listVaccinationRules() {
        return vaccinations.listRules();
    }

    @POST
    @Path("/vaccination-rules")
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public VaccinationService.VaccinationRuleView enterVaccinationRule(
            @NotNull @Valid VaccinationService.VaccinationRuleEntry entry) {
        return vaccinations.enterRule(entry);
    }

    @GET
    @Tagged
    @Path("/organisations/{id}")
    @RolesAllowed("**")
    public RosterService.OrganisationView getOrganisation(@PathParam("id") String id) {
        return service.getOrganisation(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("organisation")
    @Path("/organisations/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public RosterService.OrganisationView correctOrganisation(
            @PathParam("id") String id, @NotNull @Valid RosterCorrections.OrganisationCorrection correction) {
        corrector.correctOrganisation(Paging.uuid("id", id), correction);
        return service.getOrganisation(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/members/{id}")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR, Role.DISPATCHER})
    public RosterService.MemberView getMember(@PathParam("id") String id) {
        return service.getMember(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("member")
    @Path("/members/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public RosterService.MemberView correctMember(
            @PathParam("id") String id, @NotNull @Valid RosterCorrections.MemberCorrection correction) {
        corrector.correctMember(Paging.uuid("id", id), correction);
        return service.getMember(Paging.uuid("id", id));
    }

    /** Health data, for those who answer for who goes. */
    @GET
    @Path("/members/{id}/vaccinations")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public List<VaccinationService.VaccinationView> listVaccinations(@PathParam("id") String id) {
        return vaccinations.list(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/vaccinations/{id}")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public VaccinationService.VaccinationView getVaccination(@PathParam("id") String id) {
        return vaccinations.get(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("vaccination")
    @Path("/vaccinations/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public VaccinationService.VaccinationView correctVaccination(
            @PathParam("id") String id, @NotNull @Valid RosterCorrections.VaccinationCorrection correction) {
        return vaccinations.correct(Paging.uuid("id", id), correction);
    }

    @GET
    @Tagged
    @Path("/authorisations/{id}")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR, Role.OFFICER})
    public AuthorisationService.AuthorisationView getAuthorisation(@PathParam("id") String id) {
        return authorisations.get(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("authorisation")
    @Path("/authorisations/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public AuthorisationService.AuthorisationView correctAuthorisation(
            @PathParam("id") String id, @NotNull @Valid RosterCorrections.AuthorisationCorrection correction) {
        return authorisations.correct(Paging.uuid("id", id), correction);
    }

    @GET
    @Path("/authorisations")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR, Role.OFFICER})
    public List<AuthorisationService.AuthorisationView> listAuthorisations(
            @QueryParam("memberId") @Nullable String memberId,
            @QueryParam("organisationId") @Nullable String organisationId) {
        return authorisations.list(
                memberId == null ? null : Paging.uuid("memberId", memberId),
                organisationId == null ? null : Paging.uuid("organisationId", organisationId));
    }
}
