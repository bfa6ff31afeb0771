package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.culvert.animal.CaseService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Role;
import org.culvert.release.AreaService;
import org.culvert.release.ReleaseAreaFeature;
import org.jspecify.annotations.Nullable;

/** Where an animal may go back, for people: drawn, and in words; the address of an answer asks it again. */
@Path("/release-area")
@Produces(MediaType.TEXT_HTML)
public class AreaPageResource {
    private final Template template;
    private final AreaService areas;
    private final CaseService cases;

    AreaPageResource(@Location("release-area.html") Template template, AreaService areas, CaseService cases) {
        this.template = template;
        this.areas = areas;
        this.cases = cases;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Response ask(@BeanParam AreaForm form) {
        if (!form.isAsked()) {
            return page(200, form, null, List.of());
        }
        try {
            ReleaseAreaFeature area = form.ask(areas, cases);
            return page(
                    200, form, AreaPage.of(area, cases.getCase(area.properties().caseId()), form), List.of());
        } catch (InvalidException e) {
            return page(400, form, null, e.errors());
        } catch (NotFoundException e) {
            return page(
                    e.status(),
                    form,
                    null,
                    List.of(new FieldError(
                            "caseId",
                            "There is no such case, or it is not one of yours.",
                            "the number of a case, or its identifier",
                            null)));
        }
    }

    private Response page(int status, AreaForm form, @Nullable AreaPage page, List<FieldError> errors) {
        return Response.status(status)
                .entity(template.data("page", page).data("errors", errors).data("fields", form.fields(errors)))
                .type(MediaType.TEXT_HTML_TYPE)
                .build();
    }
}
