package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
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
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.hotspot.works.EffectService;
import org.culvert.hotspot.works.WorksKind;
import org.culvert.hotspot.works.WorksService;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.taxon.TaxonService;
import org.culvert.web.words.RoadWords;
import org.jspecify.annotations.Nullable;

/** Works against collisions for people: which there are, and what each did. */
@OwnForm
@Path("/works")
@Produces(MediaType.TEXT_HTML)
public class WorksPageResource {
    private static final int WORKS_A_PAGE = 50;
    private static final int USUAL_YEARS = 5;

    private final Template list;
    private final Template one;
    private final WorksService service;
    private final EffectService effects;
    private final TaxonService taxa;
    private final PageForms forms;
    private final Languages languages;

    WorksPageResource(
            @Location("works.html") Template list,
            @Location("works-effect.html") Template one,
            WorksService service,
            EffectService effects,
            TaxonService taxa,
            PageForms forms,
            Languages languages) {
        this.list = list;
        this.one = one;
        this.service = service;
        this.effects = effects;
        this.taxa = taxa;
        this.forms = forms;
        this.languages = languages;
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance listWorks(@QueryParam("cursor") @Nullable String cursor) {
        return page(cursor, List.of(), new WorksForm());
    }

    private TemplateInstance page(@Nullable String cursor, List<FieldError> errors, WorksForm form) {
        RoadWords words = languages.words(RoadWords.class);
        Page<WorksService.WorksView> works = service.listWorks(WORKS_A_PAGE, Paging.cursor(cursor));
        return list.data(
                        "works",
                        works.items().stream()
                                .map(one -> WorksRow.of(one, words))
                                .toList())
                .data("next", works.next())
                .data("errors", errors)
                .data("form", form)
                .data("kinds", Stream.of(WorksKind.values()).map(Enum::name).toList())
                .data("key", UUID.randomUUID().toString());
    }

    @POST
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Response enter(@BeanParam WorksForm form, @FormParam("csrf") @Nullable String csrf) {
        return forms.tried(
                () -> {
                    WorksService.WorksEntry entry = form.entry();
                    return forms.take(
                            "/works",
                            form.key,
                            entry,
                            () -> URI.create("/works/" + service.enter(entry).id()));
                },
                (why, errors) -> PageForms.html(why.status(), page(null, errors, form)));
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance showWorks(
            @PathParam("id") String id,
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("yearsBefore") @Nullable Integer yearsBefore,
            @QueryParam("yearsAfter") @Nullable Integer yearsAfter) {
        UUID worksId = Paging.uuid("id", id);
        String group = taxonGroup == null || taxonGroup.isBlank() ? null : taxonGroup.strip();
        TemplateInstance html = one.data(
                        "works", WorksRow.of(service.getWorks(worksId), languages.words(RoadWords.class)))
                .data("groups", taxa.listGroups())
                .data("taxonGroup", Objects.requireNonNullElse(group, ""))
                .data("yearsBefore", Objects.requireNonNullElse(yearsBefore, USUAL_YEARS))
                .data("yearsAfter", Objects.requireNonNullElse(yearsAfter, USUAL_YEARS));
        try {
            return html.data(
                            "page",
                            EffectPage.of(effects.effect(
                                    worksId, group, null, null, yearsBefore, yearsAfter, null, null, List.of())))
                    .data("whyNone", null);
        } catch (ConflictException e) {
            return html.data("page", null).data("whyNone", e.getMessage());
        }
    }
}
