package org.culvert.web.records;

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
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.culvert.exchange.records.RecordTakingEntry;
import org.culvert.exchange.records.TakingService;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.web.PageForms;
import org.culvert.web.records.RecordTrialPages.Asked;
import org.jspecify.annotations.Nullable;

/** A trial of a file: how far it is, what it found, and the taking of its rows. */
@OwnForm
@Path("/records/trials/{id}")
@Produces(MediaType.TEXT_HTML)
public class RecordTrialPageResource {
    private static final Asked ALL = new Asked(null, null, null);

    private final Template template;
    private final Template fragment;
    private final RecordTrialPages pages;
    private final TakingService takings;
    private final FormBodies bodies;
    private final PageForms forms;

    RecordTrialPageResource(
            @Location("records-trial.html") Template template,
            @Location("records-progress.html") Template fragment,
            RecordTrialPages pages,
            TakingService takings,
            FormBodies bodies,
            PageForms forms) {
        this.template = template;
        this.fragment = fragment;
        this.pages = pages;
        this.takings = takings;
        this.bodies = bodies;
        this.forms = forms;
    }

    /**
     * What a trial found.
     *
     * @param verdict {@code right}, {@code doubtful}, {@code apart} or {@code refused}: its rows alone
     * @param finding a kind of finding: rows that have it alone
     * @param after rows behind that one
     */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response show(
            @PathParam("id") String id,
            @QueryParam("verdict") @Nullable String verdict,
            @QueryParam("finding") @Nullable String finding,
            @QueryParam("after") @Nullable Long after) {
        return page(
                200,
                Paging.uuid("id", id),
                new Asked(given(verdict), given(finding), after),
                new TakingForm(),
                List.of());
    }

    /** How far it has come; once that is the end, the page is asked for anew. */
    @GET
    @Path("/progress")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response showProgress(@PathParam("id") String id) {
        RecordTrialPage page = pages.progress(Paging.uuid("id", id));
        Response.ResponseBuilder answer =
                Response.ok(fragment.data("page", page)).type(MediaType.TEXT_HTML_TYPE);
        return (page.isRunning() ? answer : answer.header("HX-Refresh", "true")).build();
    }

    /** Takes rows in. */
    @POST
    @Path("/taking")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response take(
            @PathParam("id") String id, @BeanParam TakingForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID trial = Paging.uuid("id", id);
        return forms.tried(
                () -> {
                    RecordTakingEntry entry = bodies.read(form.body(), RecordTakingEntry.class);
                    return forms.take("/records/trials/" + id + "/taking", form.key, entry, () -> {
                        takings.take(trial, entry);
                        return URI.create("/records/trials/" + trial);
                    });
                },
                (why, errors) -> page(why.status(), trial, ALL, form, errors));
    }

    private static @Nullable String given(@Nullable String asked) {
        return asked == null || asked.isEmpty() ? null : asked;
    }

    private Response page(int status, UUID id, Asked asked, TakingForm form, List<FieldError> errors) {
        return PageForms.html(
                status,
                template.data("page", pages.page(id, asked, form))
                        .data("errors", errors)
                        .data("key", UUID.randomUUID().toString()));
    }
}
