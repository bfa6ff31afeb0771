package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.culvert.hotspot.when.CollisionSeasonService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Role;
import org.culvert.taxon.TaxonService;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.web.words.RoadWords;
import org.jspecify.annotations.Nullable;

/** When collisions happen, for people; the address of an answer asks it again. */
@Path("/seasons")
@Produces(MediaType.TEXT_HTML)
public class SeasonsPageResource {
    private final Template template;
    private final CollisionSeasonService service;
    private final TaxonService taxa;
    private final Languages languages;

    SeasonsPageResource(
            @Location("seasons.html") Template template,
            CollisionSeasonService service,
            TaxonService taxa,
            Languages languages) {
        this.template = template;
        this.service = service;
        this.taxa = taxa;
        this.languages = languages;
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public Response ask(@BeanParam SeasonsForm form) {
        List<GroupView> groups = taxa.listGroups();
        if (!form.isAsked()) {
            return page(200, form, groups, null, List.of());
        }
        try {
            return page(
                    200,
                    form,
                    groups,
                    SeasonsPage.of(service.tell(form.question()), groups, languages.words(RoadWords.class)),
                    List.of());
        } catch (InvalidException e) {
            return page(400, form, groups, null, e.errors());
        }
    }

    private Response page(
            int status, SeasonsForm form, List<GroupView> groups, @Nullable SeasonsPage page, List<FieldError> errors) {
        TemplateInstance html = template.data("form", form)
                .data("page", page)
                .data("errors", errors)
                .data("groups", groups);
        return PageForms.html(status, html);
    }
}
