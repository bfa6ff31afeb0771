package org.culvert.web.kept;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.ForbiddenException;
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
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.photograph.OriginalService;
import org.culvert.platform.ConflictException;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.ledger.SeenRecords;
import org.culvert.web.PageForms;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.ActForms;
import org.culvert.web.acts.PlaceFields;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.PictureForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentForm;
import org.culvert.web.kept.KeptKind.Deed;
import org.culvert.web.kept.KeptKind.Kept;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/**
 * What is kept of a case, an incident, a clutch: corrected, taken back and added to by forms. Who may is what the table says
 * of the operations of the API behind each.
 */
@OwnForm
@Path("/kept/{whole}/{id}")
@Produces(MediaType.TEXT_HTML)
public class KeptPageResource {
    private final Wholes wholes;
    private final KeptPages pages;
    private final ActForms fields;
    private final PlaceFields places;
    private final RegionService region;
    private final FormBodies bodies;
    private final PageForms forms;
    private final SeenRecords seen;

    KeptPageResource(
            Wholes wholes,
            KeptPages pages,
            ActForms fields,
            PlaceFields places,
            RegionService region,
            FormBodies bodies,
            PageForms forms,
            SeenRecords seen) {
        this.wholes = wholes;
        this.pages = pages;
        this.fields = fields;
        this.places = places;
        this.region = region;
        this.bodies = bodies;
        this.forms = forms;
        this.seen = seen;
    }

    /**
     * @param kind left out where all are shown
     * @param before of the kind, where those that are older than one of it are shown
     */
    @GET
    @RolesAllowed("**")
    public TemplateInstance show(
            @PathParam("whole") String name,
            @PathParam("id") String id,
            @QueryParam("kind") @Nullable String kind,
            @QueryParam("before") @Nullable String before) {
        UUID about = Paging.uuid("id", id);
        Whole whole = wholes.readable(name, about);
        UUID last = before == null ? null : Paging.uuid("before", before);
        return kind == null || last == null
                ? pages.all(whole, about, List.of())
                : pages.older(whole, about, wholes.kind(whole, kind), last);
    }

    /** @param of the record to which it is done; left out where there is one of the kind alone */
    @GET
    @Path("/{kind}/{act}")
    @RolesAllowed("**")
    public TemplateInstance showForm(
            @PathParam("whole") String name,
            @PathParam("id") String id,
            @PathParam("kind") String kind,
            @PathParam("act") String act,
            @QueryParam("of") @Nullable String of) {
        UUID about = Paging.uuid("id", id);
        Whole whole = wholes.readable(name, about);
        KeptKind one = wholes.kind(whole, kind);
        Deed<?> deed = wholes.deed(one, act);
        return pages.form(whole, about, one, deed, wholes.require(whole, one, about, record(of)), null, List.of());
    }

    @POST
    @Path("/{kind}/{act}")
    @RolesAllowed("**")
    public Response carryOut(
            @PathParam("whole") String name,
            @PathParam("id") String id,
            @PathParam("kind") String kind,
            @PathParam("act") String act,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        UUID about = Paging.uuid("id", id);
        Whole whole = wholes.readable(name, about);
        KeptKind one = wholes.kind(whole, kind);
        Deed<?> deed = wholes.deed(one, act);
        SentFields typed = form.fields();
        UUID record = record(typed.given("act.of"));
        Kept kept = wholes.require(whole, one, about, record);
        return forms.once(
                "/kept/" + name + "/" + id + "/" + kind + "/" + act,
                form.key(),
                typed,
                () -> {
                    carryOut(whole, about, deed, kept, typed);
                    return URI.create(wholes.pageOf(whole, about));
                },
                (why, errors) -> PageForms.html(
                        why.status(),
                        pages.form(whole, about, one, deed, wholes.require(whole, one, about, record), typed, errors)));
    }

    private void carryOut(Whole whole, UUID about, Deed<?> deed, Kept kept, SentFields typed) {
        Act<?> act = deed.act();
        String changes = act.tag();
        if (changes != null) {
            seen.requireUnchanged(changes, Wholes.tagged(whole, act, kept.ids()).toString(), typed.given("act.seen"));
        }
        SentFields shown = pages.shown(act, kept);
        EntryBody told = EntryBody.of(fields.shapes(act), typed, shown, region.zone());
        places.read(fields.shapes(act), told);
        pages.chosen(whole, about, act).forEach((field, offered) -> {
            String chosen = typed.given(field);
            if (chosen != null && !offered.words().containsKey(chosen) && !chosen.equals(shown.text(field))) {
                told.refuse(field, "It is none of those that there are.", "one of the list");
            }
        });
        KeptPages.leaveAlone(act, told.told(), typed, shown);
        deed.carryOut(kept.ids(), told, bodies);
    }

    /** A photograph of an animal or a place. */
    @POST
    @Path("/photographs")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed("**")
    public Response addPhotograph(
            @PathParam("whole") String name,
            @PathParam("id") String id,
            @RestForm("picture") @Nullable FileUpload picture,
            @RestForm("caption") @Nullable String caption,
            @RestForm("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID about = Paging.uuid("id", id);
        Whole whole = wholes.readable(name, about);
        if (!wholes.takesPictures(whole)) {
            throw new ForbiddenException();
        }
        return forms.tried(
                () -> {
                    PictureForm sent = PictureForm.read(picture, caption);
                    return forms.take(
                            "/kept/" + name + "/" + id + "/photographs",
                            key,
                            List.of(sent.sha256(), Objects.requireNonNullElse(caption, "")),
                            () -> {
                                wholes.addPicture(whole, about, sent.picture());
                                return URI.create(wholes.pageOf(whole, about));
                            });
                },
                (why, errors) -> PageForms.html(why.status(), pages.all(whole, about, errors)));
    }

    /** A photograph as it came, with who opened it and why on record. */
    @POST
    @Path("/photographs/{photographId}/original")
    @RolesAllowed("**")
    public Response openOriginal(
            @PathParam("whole") String name,
            @PathParam("id") String id,
            @PathParam("photographId") String photographId,
            @FormParam("reason") @Nullable String reason,
            @FormParam("csrf") @Nullable String csrf) {
        UUID about = Paging.uuid("id", id);
        Whole whole = wholes.readable(name, about);
        if (!wholes.opensOriginals()) {
            throw new ForbiddenException();
        }
        UUID photograph = wholes.require(
                        whole, wholes.kind(whole, "photographs"), about, Paging.uuid("photographId", photographId))
                .ids()
                .id();
        return forms.shown(
                () -> {
                    OriginalService.OpenedOriginal opened = wholes.openOriginal(
                            photograph,
                            bodies.read(JsonNodeFactory.instance.objectNode().put("reason", reason), Why.class)
                                    .reason());
                    if (opened.content() == null) {
                        throw new ConflictException(
                                "The file is no longer what was sealed when it came; it is not shown.");
                    }
                    return Response.ok(opened.content(), opened.mediaType())
                            .header("Content-Disposition", "attachment")
                            .build();
                },
                (why, errors) -> PageForms.html(why.status(), pages.all(whole, about, errors)));
    }

    private static UUID record(@Nullable String of) {
        if (of == null) {
            throw InvalidException.of("of", "It is not told of which record.", "the identifier of one");
        }
        return Paging.uuid("of", of);
    }
}
