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
import org.culvert.hotspot.SeasonWindowService;
import org.culvert.hotspot.works.StretchQuestionService;
import org.culvert.hotspot.works.WorksKind;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Role;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Questions about any stretch of a road, for people; the address of an answer asks it again. */
@Path("/stretch")
@Produces(MediaType.TEXT_HTML)
public class StretchPageResource {
    private final Template template;
    private final StretchQuestionService service;
    private final TaxonService taxa;
    private final SeasonWindowService windows;
    private final Languages languages;

    StretchPageResource(
            @Location("stretch.html") Template template,
            StretchQuestionService service,
            TaxonService taxa,
            SeasonWindowService windows,
            Languages languages) {
        this.template = template;
        this.service = service;
        this.taxa = taxa;
        this.windows = windows;
        this.languages = languages;
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Response ask(@BeanParam StretchForm form) {
        if (!form.isAsked()) {
            return page(200, form, null, List.of());
        }
        try {
            return page(200, form, StretchPage.of(service.answer(form.question()), languages.ofPage()), List.of());
        } catch (InvalidException e) {
            return page(400, form, null, e.errors());
        }
    }

    private Response page(int status, StretchForm form, @Nullable StretchPage page, List<FieldError> errors) {
        TemplateInstance html = template.data("form", form)
                .data("page", page)
                .data("errors", errors)
                .data("groups", taxa.listGroups())
                .data("windows", windows.listWindows())
                .data("kinds", WorksKind.values());
        return PageForms.html(status, html);
    }
}
