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
import org.culvert.hotspot.works.BurdenService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Role;
import org.culvert.taxon.TaxonService;
import org.culvert.web.words.RoadWords;
import org.jspecify.annotations.Nullable;

/** Which roads carry more collisions than roads like them, for people; the address of an answer asks it again. */
@Path("/burden")
@Produces(MediaType.TEXT_HTML)
public class BurdenPageResource {
    private final Template template;
    private final BurdenService service;
    private final TaxonService taxa;
    private final Languages languages;

    BurdenPageResource(
            @Location("burden.html") Template template, BurdenService service, TaxonService taxa, Languages languages) {
        this.template = template;
        this.service = service;
        this.taxa = taxa;
        this.languages = languages;
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Response ask(@BeanParam BurdenForm form) {
        if (!form.isAsked()) {
            return page(200, form, null, List.of());
        }
        try {
            return page(200, form, BurdenPage.of(form.ask(service), languages.words(RoadWords.class)), List.of());
        } catch (InvalidException e) {
            return page(400, form, null, e.errors());
        }
    }

    private Response page(int status, BurdenForm form, @Nullable BurdenPage page, List<FieldError> errors) {
        TemplateInstance html = template.data("form", form)
                .data("page", page)
                .data("errors", errors)
                .data("groups", taxa.listGroups());
        return PageForms.html(status, html);
    }
}
