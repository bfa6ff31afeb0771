package org.culvert.web.clutch;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
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
import java.util.UUID;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.sight.Sight;
import org.culvert.web.PageForms;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentFile;
import org.culvert.web.forms.SentForm;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** Clutches, for people: which there are, what waits for each, and forms for what is done. */
@OwnForm
@Path("/clutches")
@Produces(MediaType.TEXT_HTML)
public class ClutchPageResource {
    private static final int SHOWN = 12;

    private final Template list;
    private final Template one;
    private final ClutchPages pages;
    private final ClutchForms forms;
    private final PageForms taken;
    private final Sight sight;

    ClutchPageResource(
            @Location("clutches.html") Template list,
            @Location("clutch.html") Template one,
            ClutchPages pages,
            ClutchForms forms,
            PageForms taken,
            Sight sight) {
        this.list = list;
        this.one = one;
        this.pages = pages;
        this.forms = forms;
        this.taken = taken;
        this.sight = sight;
    }

    /** @param caseNumber of a mother, to open a clutch from her case */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response listClutches(
            @QueryParam("before") @Nullable String before, @QueryParam("case") @Nullable String caseNumber) {
        SentFields asked =
                caseNumber == null ? SentFields.NOTHING : new SentFields(Map.of("motherCase", List.of(caseNumber)));
        return list(200, before, asked, List.of());
    }

    /** Opens a clutch from the case of its mother. */
    @POST
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public Response open(@BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields sent = form.fields();
        return taken.once(
                "/clutches",
                form.key(),
                sent,
                () -> URI.create("/clutches/" + forms.open(sent)),
                (why, errors) -> list(why.status(), null, sent, errors));
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response show(@PathParam("id") String id) {
        return page(200, Paging.uuid("id", id), SentFields.NOTHING, false, List.of());
    }

    /** Takes one of the forms of a clutch. */
    @POST
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public Response enter(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID clutch = Paging.uuid("id", id);
        sight.requireSeen("clutch", clutch);
        SentFields sent = form.fields();
        return taken.once(
                "/clutches/" + clutch,
                form.key(),
                sent,
                () -> {
                    forms.act(clutch, sent);
                    return URI.create("/clutches/" + clutch + "#due");
                },
                (why, errors) -> page(why.status(), clutch, sent, false, errors));
    }

    /** Takes the file of a logger. */
    @POST
    @Path("/{id}/temperature-files")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public Response addFile(
            @PathParam("id") String id,
            @RestForm("file") @Nullable FileUpload file,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        UUID clutch = Paging.uuid("id", id);
        sight.requireSeen("clutch", clutch);
        SentFields sent = form.fields();
        SentFile chosen = SentFile.chosen(file);
        return taken.once(
                "/clutches/" + clutch + "/temperature-files",
                form.key(),
                List.of(sent, SentFile.told(chosen)),
                () -> {
                    forms.takeFile(clutch, sent, chosen);
                    return URI.create("/clutches/" + clutch + "#days");
                },
                (why, errors) -> page(why.status(), clutch, sent, true, errors));
    }

    private Response list(int status, @Nullable String before, SentFields sent, List<FieldError> errors) {
        Page<ClutchPage.Listed> found =
                pages.list(SHOWN, before == null || before.isBlank() ? null : Paging.uuid("before", before));
        return PageForms.html(
                status,
                list.data("clutches", found.items())
                        .data("older", found.next())
                        .data("form", forms.opening(sent, errors))
                        .data("key", UUID.randomUUID().toString()));
    }

    private Response page(int status, UUID id, SentFields sent, boolean ofFile, List<FieldError> errors) {
        return PageForms.html(
                status,
                one.data("page", pages.page(id, sent, ofFile, errors))
                        .data("key", UUID.randomUUID().toString()));
    }
}
