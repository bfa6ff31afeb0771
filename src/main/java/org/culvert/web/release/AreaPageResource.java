package org.culvert.web.release;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.sight.Sight;
import org.culvert.release.AreaService;
import org.culvert.release.rules.Finding;
import org.culvert.web.Languages;
import org.culvert.web.PageForms;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentForm;
import org.culvert.web.words.ReleaseWords;
import org.jspecify.annotations.Nullable;

/**
 * Where an animal may go back, for people: drawn, and in words, with what is open before and forms for it; the address of an
 * answer asks it again.
 */
@OwnForm
@Path("/release-area")
@Produces(MediaType.TEXT_HTML)
public class AreaPageResource {
    private final Template template;
    private final PlanPages plans;
    private final PlanForms forms;
    private final AreaService areas;
    private final CaseService cases;
    private final PageForms taken;
    private final Languages languages;
    private final Sight sight;

    AreaPageResource(
            @Location("release-area.html") Template template,
            PlanPages plans,
            PlanForms forms,
            AreaService areas,
            CaseService cases,
            PageForms taken,
            Languages languages,
            Sight sight) {
        this.template = template;
        this.plans = plans;
        this.forms = forms;
        this.areas = areas;
        this.cases = cases;
        this.taken = taken;
        this.languages = languages;
        this.sight = sight;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response ask(@BeanParam AreaForm form) {
        return form.isAsked() ? answer(200, form, PlanForms.Again.NONE) : page(200, form, null, null, List.of());
    }

    @POST
    @Path("/{id}/assessments")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public Response assess(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields sent = form.fields();
        return take(id, "assess", "assessments", form.key(), sent, "assessments-h", caseId -> {
            forms.assessPlace(caseId, sent, Objects.requireNonNullElse(sent.given("jurisdiction"), ""));
            return null;
        });
    }

    @POST
    @Path("/{id}/fitness-checks")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public Response signFit(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields sent = form.fields();
        return take(id, "fitness", "fitness-checks", form.key(), sent, "open", caseId -> {
            forms.signFit(caseId, sent);
            return null;
        });
    }

    @POST
    @Path("/{id}/approvals")
    @RolesAllowed(Role.COORDINATOR)
    public Response approve(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields sent = form.fields();
        return take(id, "approval", "approvals", form.key(), sent, "open", caseId -> {
            forms.approve(caseId, sent);
            return null;
        });
    }

    @POST
    @Path("/{id}/found-place-unsuitable")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public Response recordUnsuitable(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields sent = form.fields();
        return take(id, "unsuitable", "found-place-unsuitable", form.key(), sent, "open", caseId -> {
            forms.recordUnsuitable(caseId, sent);
            return null;
        });
    }

    @POST
    @Path("/{id}/holds")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public Response clearHold(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields sent = form.fields();
        return take(id, "clearing", "holds", form.key(), sent, "open", caseId -> {
            forms.clear(caseId, sent);
            return null;
        });
    }

    @POST
    @Path("/{id}/non-release-decisions")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public Response decide(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields sent = form.fields();
        return take(
                id,
                "decision",
                "non-release-decisions",
                form.key(),
                sent,
                "open",
                caseId -> URI.create("/non-release-decisions/" + forms.decide(caseId, sent)));
    }

    /** Carries out a form of the planner. */
    private interface Change {
        /** Where it leads, or null: to the planner. */
        @Nullable
        URI make(UUID caseId);
    }

    private Response take(
            String id, String form, String path, @Nullable String key, SentFields sent, String part, Change change) {
        UUID caseId = Paging.uuid("id", id);
        sight.requireSeen("case", caseId);
        AreaForm asked = AreaForm.of(caseId.toString(), sent);
        Supplier<URI> made = () -> {
            URI next = change.make(caseId);
            return next == null ? URI.create(asked.address() + "#" + part) : next;
        };
        return taken.once(
                "/release-area/" + caseId + "/" + path,
                key,
                sent,
                made,
                (why, errors) -> answer(why.status(), asked, new PlanForms.Again(form, sent, errors)));
    }

    private Response answer(int status, AreaForm form, PlanForms.Again again) {
        AreaForm.Asked asked;
        try {
            asked = form.read(cases);
        } catch (InvalidException e) {
            return page(400, form, null, null, e.errors());
        }
        try {
            AreaService.Looked looked = areas.look(asked.caseId(), asked.jurisdiction(), asked.withinMetres());
            AreaPage area = AreaPage.of(
                    looked,
                    cases.getCase(asked.caseId()),
                    form,
                    PlanPages.everywhere(looked).stream().map(Finding::key).collect(Collectors.toSet()),
                    plans.tongue());
            return page(status, form, plans.page(asked.caseId(), form, looked, again), area, List.of());
        } catch (InvalidException e) {
            return page(
                    status == 200 ? 400 : status,
                    form,
                    plans.page(asked.caseId(), form, null, again),
                    null,
                    e.errors());
        } catch (NotFoundException e) {
            return page(
                    e.status(),
                    form,
                    null,
                    null,
                    List.of(new FieldError(
                            "caseId",
                            "There is no such case, or it is not one of yours.",
                            "the number of a case, or its identifier",
                            null)));
        }
    }

    private Response page(
            int status, AreaForm form, @Nullable PlanPage plan, @Nullable AreaPage area, List<FieldError> errors) {
        return PageForms.html(
                status,
                template.data("plan", plan)
                        .data("page", area)
                        .data("cuts", area == null ? List.of() : area.cuts())
                        .data("errors", errors)
                        .data(
                                "ask",
                                form.form(
                                        languages.words(ReleaseWords.class),
                                        plan == null ? null : plan.number(),
                                        errors))
                        .data("key", UUID.randomUUID().toString()));
    }
}
