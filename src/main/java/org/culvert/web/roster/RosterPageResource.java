package org.culvert.web.roster;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.UUID;
import org.culvert.care.placement.CarerService;
import org.culvert.clinic.profile.ProfileService;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.RosterService;
import org.culvert.roster.VaccinationService;
import org.culvert.web.settings.SheetViews;

/** The roster: what lapses first, who belongs to the network, and each with what they hold. */
@OwnForm
@Path("/roster")
@Produces(MediaType.TEXT_HTML)
public class RosterPageResource {
    private final Template all;
    private final Template one;
    private final RosterPages pages;
    private final RosterService roster;
    private final AuthorisationService authorisations;
    private final VaccinationService vaccinations;
    private final CarerService carers;
    private final ProfileService clinics;
    private final SheetViews views;

    RosterPageResource(
            @Location("roster.html") Template all,
            @Location("roster-one.html") Template one,
            RosterPages pages,
            RosterService roster,
            AuthorisationService authorisations,
            VaccinationService vaccinations,
            CarerService carers,
            ProfileService clinics,
            SheetViews views) {
        this.all = all;
        this.one = one;
        this.pages = pages;
        this.roster = roster;
        this.authorisations = authorisations;
        this.vaccinations = vaccinations;
        this.carers = carers;
        this.clinics = clinics;
        this.views = views;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance show() {
        return all.data("roster", pages.all());
    }

    @GET
    @Path("/members/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance showMember(@PathParam("id") String id) {
        UUID member = Paging.uuid("id", id);
        RosterService.MemberView view = roster.getMember(member);
        return one.data("name", view.callSign())
                .data("of", member.toString())
                .data("isMember", true)
                .data("self", views.items("members", List.of(view)))
                .data("authorisations", views.items("authorisations", authorisations.list(member, null)))
                .data("vaccinations", views.items("vaccinations", vaccinations.list(member)))
                .data("profiles", views.items("carer-profiles", carers.listProfiles(member)))
                .data("absences", views.items("absences", carers.listAbsences(member)))
                .data("clinics", List.of())
                .data("isClinic", false);
    }

    @GET
    @Path("/organisations/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance showOrganisation(@PathParam("id") String id) {
        UUID organisation = Paging.uuid("id", id);
        RosterService.OrganisationView view = roster.getOrganisation(organisation);
        return one.data("name", view.name())
                .data("of", organisation.toString())
                .data("isMember", false)
                .data("self", views.items("organisations", List.of(view)))
                .data("authorisations", views.items("authorisations", authorisations.list(null, organisation)))
                .data("vaccinations", List.of())
                .data("profiles", List.of())
                .data("absences", List.of())
                .data(
                        "clinics",
                        views.items(
                                "clinic-profiles",
                                clinics.listProfiles().stream()
                                        .filter(profile -> profile.clinicId().equals(organisation))
                                        .toList()))
                .data("isClinic", view.kind().equals("clinic"));
    }
}
