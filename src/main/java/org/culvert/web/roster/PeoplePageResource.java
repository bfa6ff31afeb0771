package org.culvert.web.roster;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.CulvertException;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.personal.PeopleService;
import org.culvert.platform.personal.PersonDossier;
import org.culvert.platform.personal.PersonView;
import org.culvert.web.PageForms;
import org.culvert.web.Typed;
import org.culvert.web.settings.SheetViews;
import org.jspecify.annotations.Nullable;

/** People of whom the network keeps personal data: looked for, and what is kept of one. Nobody is listed. */
@OwnForm
@Path("/roster/people")
@Produces(MediaType.TEXT_HTML)
public class PeoplePageResource {
    private final Template page;
    private final Template one;
    private final PeopleService people;
    private final PersonDossier dossier;
    private final FormBodies bodies;
    private final PageForms forms;
    private final SheetViews views;

    PeoplePageResource(
            @Location("people.html") Template page,
            @Location("person.html") Template one,
            PeopleService people,
            PersonDossier dossier,
            FormBodies bodies,
            PageForms forms,
            SheetViews views) {
        this.page = page;
        this.one = one;
        this.people = people;
        this.dossier = dossier;
        this.bodies = bodies;
        this.forms = forms;
        this.views = views;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance show() {
        return page(new Sought("", "", ""), null, List.of());
    }

    /** Sent as a form, so that no name stands in an address or a log. */
    @POST
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response find(
            @FormParam("name") @Nullable String name,
            @FormParam("phone") @Nullable String phone,
            @FormParam("email") @Nullable String email,
            @FormParam("csrf") @Nullable String csrf) {
        Sought sought = new Sought(text(name), text(phone), text(email));
        try {
            return PageForms.html(
                    200,
                    page(sought, people.find(bodies.read(sought.told(), PeopleService.PersonSought.class)), List.of()));
        } catch (CulvertException e) {
            return PageForms.html(e.status(), page(sought, null, forms.wrong(e)));
        }
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance showPerson(@PathParam("id") String id) {
        UUID person = Paging.uuid("id", id);
        PersonView seen = people.getPerson(person);
        return one.data("self", views.items("people", List.of(seen)))
                .data("sections", views.sections(dossier.gather(person)));
    }

    /** What was typed to find somebody. */
    public record Sought(String name, String phone, String email) {
        ObjectNode told() {
            ObjectNode told = JsonNodeFactory.instance.objectNode();
            put(told, "name", name);
            put(told, "phone", phone);
            put(told, "email", email);
            return told;
        }

        private static void put(ObjectNode told, String field, String text) {
            if (!text.isEmpty()) {
                told.put(field, text);
            }
        }
    }

    private static String text(@Nullable String typed) {
        String given = Typed.given(typed);
        return given == null ? "" : given;
    }

    private TemplateInstance page(Sought sought, @Nullable List<PersonView> found, List<FieldError> errors) {
        return page.data("sought", sought)
                .data("asked", found != null)
                .data("found", found == null ? List.of() : views.items("people", found))
                .data("errors", errors);
    }
}
