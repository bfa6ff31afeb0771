package org.culvert.web.animal;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.clinic.profile.ProfileService;
import org.culvert.clinic.profile.ProfileService.ClinicProfileView;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.culvert.roster.RosterService;
import org.culvert.roster.RosterService.OrganisationView;
import org.culvert.taxon.TaxonService;
import org.culvert.web.PageForms;
import org.culvert.web.Typed;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentForm;
import org.jspecify.annotations.Nullable;

/** What waits for a clinic, and what it says of itself. */
@OwnForm
@Path("/clinic")
@Produces(MediaType.TEXT_HTML)
public class ClinicPageResource {
    private final Template template;
    private final ClinicPages pages;
    private final CasePages casePages;
    private final ProfileService profiles;
    private final RosterService roster;
    private final TaxonService taxa;
    private final FormBodies bodies;
    private final PageForms forms;
    private final Sight sight;
    private final Clock clock;

    ClinicPageResource(
            @Location("clinic.html") Template template,
            ClinicPages pages,
            CasePages casePages,
            ProfileService profiles,
            RosterService roster,
            TaxonService taxa,
            FormBodies bodies,
            PageForms forms,
            Sight sight,
            Clock clock) {
        this.template = template;
        this.pages = pages;
        this.casePages = casePages;
        this.profiles = profiles;
        this.roster = roster;
        this.taxa = taxa;
        this.bodies = bodies;
        this.forms = forms;
        this.sight = sight;
        this.clock = clock;
    }

    /** @param clinic for those who work for all of them: which one */
    @GET
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR, Role.ADMIN})
    public Response show(@QueryParam("clinic") @Nullable String clinic) {
        return page(200, chosen(clinic), null, List.of());
    }

    /** Keeps what a clinic says of itself. */
    @POST
    @Path("/profile")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response keep(@BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields typed = form.fields();
        UUID clinic = chosen(typed.given("clinicId"));
        if (clinic == null) {
            throw InvalidException.of("clinicId", "It is not said which clinic.", "a clinic of the network");
        }
        return forms.once(
                "/clinic/profile",
                form.key(),
                typed,
                () -> {
                    keep(clinic, typed);
                    return URI.create("/clinic?clinic=" + clinic + "#profile");
                },
                (why, errors) -> page(why.status(), clinic, typed, errors));
    }

    private void keep(UUID clinic, SentFields typed) {
        CaseTongue tongue = casePages.tongue();
        ClinicProfileView there = profiles.findOfClinic(clinic).orElse(null);
        EntryBody body = ClinicForm.body(
                clinic, typed, there == null ? null : ClinicForm.typed(there, tongue.locale()), tongue.zone());
        if (there == null) {
            profiles.enter(body.read(bodies, ProfileService.ProfileEntry.class));
        } else {
            profiles.correct(there.id(), body.read(bodies, ProfileService.ProfileCorrection.class));
        }
    }

    /** A clinic sees itself alone; those who work for all see the one that they choose. */
    private @Nullable UUID chosen(@Nullable String clinic) {
        Viewer asker = sight.viewer();
        String given = Typed.given(clinic);
        List<OrganisationView> clinics = roster.listOrganisations("clinic");
        UUID own = asker.organisationId();
        if (!asker.hasAny(Role.COORDINATOR, Role.ADMIN)) {
            return clinics.stream()
                    .map(OrganisationView::id)
                    .filter(id -> id.equals(own))
                    .findFirst()
                    .orElse(null);
        }
        if (given == null) {
            return clinics.isEmpty()
                    ? null
                    : clinics.stream()
                            .map(OrganisationView::id)
                            .filter(id -> id.equals(own))
                            .findFirst()
                            .orElse(clinics.get(0).id());
        }
        UUID id = Paging.uuid("clinic", given);
        if (clinics.stream().noneMatch(one -> one.id().equals(id))) {
            throw new NotFoundException("clinic", id);
        }
        return id;
    }

    /** @param sent what was typed into the form and not taken */
    private Response page(int status, @Nullable UUID clinic, @Nullable SentFields sent, List<FieldError> errors) {
        Viewer asker = sight.viewer();
        CaseTongue tongue = casePages.tongue();
        boolean choosesClinic = asker.hasAny(Role.COORDINATOR, Role.ADMIN);
        ClinicProfileView profile =
                clinic == null ? null : profiles.findOfClinic(clinic).orElse(null);
        SentFields kept = ClinicForm.typed(profile, tongue.locale());
        List<TaxonService.GroupView> groups = taxa.listGroups();
        return PageForms.html(
                status,
                template.data("clinic", clinic == null ? null : roster.getOrganisation(clinic))
                        .data("clinics", choosesClinic ? roster.listOrganisations("clinic") : List.of())
                        .data(
                                "waiting",
                                clinic == null || !asker.hasAny(Role.CLINIC, Role.COORDINATOR)
                                        ? null
                                        : pages.waiting(clinic, tongue))
                        .data("profile", profile)
                        .data("opening", ClinicForm.openingSaid(profile, tongue))
                        .data("groups", groups)
                        .data(
                                "form",
                                choosesClinic
                                        ? ClinicForm.form(
                                                tongue.words(),
                                                groups.stream()
                                                        .map(group -> new Option(group.key(), group.name()))
                                                        .toList(),
                                                profile != null,
                                                Objects.requireNonNullElse(sent, kept),
                                                errors)
                                        : null)
                        .data("errors", errors)
                        .data("say", tongue)
                        .data("now", clock.instant())
                        .data("key", UUID.randomUUID().toString()));
    }
}
