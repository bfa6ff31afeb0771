package org.culvert.web.animal;

import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.web.PageForms;
import org.culvert.web.Typed;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentForm;
import org.jspecify.annotations.Nullable;

/** Cases: which there are, one of them, and a new one. */
@OwnForm
@Path("/cases")
@Produces(MediaType.TEXT_HTML)
public class CasePageResource {
    private final CaseListPages lists;
    private final CasePages pages;
    private final NewCasePages newCases;
    private final PageForms forms;

    CasePageResource(CaseListPages lists, CasePages pages, NewCasePages newCases, PageForms forms) {
        this.lists = lists;
        this.pages = pages;
        this.newCases = newCases;
        this.forms = forms;
    }

    /**
     * Open cases by what is most pressing, or those that somebody looks for.
     *
     * @param looked a number, a temporary number, or words of a kind's name
     * @param state {@code ended}: those that have ended
     */
    @GET
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response list(
            @QueryParam("q") @DefaultValue("") String looked,
            @QueryParam("state") @Nullable String state,
            @QueryParam("before") @Nullable String before) {
        String wanted = Objects.requireNonNullElse(Typed.given(looked), "");
        UUID numbered = lists.findByNumber(wanted);
        if (numbered != null) {
            return Response.seeOther(URI.create("/cases/" + numbered)).build();
        }
        String cursor = Typed.given(before);
        return PageForms.html(
                200, lists.page(wanted, "ended".equals(state), cursor == null ? null : Paging.uuid("before", cursor)));
    }

    /** A form for a case of an animal of an incident. */
    @GET
    @Path("/new")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public TemplateInstance begin(
            @QueryParam("incident") @Nullable String incident, @QueryParam("attendance") @Nullable String attendance) {
        Map<String, String> told = new TreeMap<>();
        told.put("incidentId", Objects.requireNonNullElse(Typed.given(incident), ""));
        told.put("attendanceId", Objects.requireNonNullElse(Typed.given(attendance), ""));
        return newCases.page(new CaseSent(NewCasePages.FORM, SentFields.of(told), List.of()));
    }

    @POST
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public Response open(@BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields typed = form.fields();
        return forms.once(
                "/cases",
                form.key(),
                typed,
                () -> URI.create("/cases/" + newCases.open(typed)),
                (why, errors) ->
                        PageForms.html(why.status(), newCases.page(new CaseSent(NewCasePages.FORM, typed, errors))));
    }

    /**
     * @param form the form that is to be seen at once
     * @param kept the form that was kept just now
     */
    @GET
    @Path("/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public TemplateInstance show(
            @PathParam("id") String id,
            @QueryParam("form") @Nullable String form,
            @QueryParam("kept") @Nullable String kept) {
        return pages.page(Paging.uuid("id", id), form, CaseAnswers.known(kept), CaseSent.NOTHING);
    }

    /** Who could take the animal, with what speaks for and against each. */
    @GET
    @Path("/{id}/carers")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public TemplateInstance listCarers(@PathParam("id") String id) {
        return pages.carers(Paging.uuid("id", id), CaseSent.NOTHING);
    }
}
