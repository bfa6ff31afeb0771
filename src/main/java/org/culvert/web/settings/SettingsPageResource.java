package org.culvert.web.settings;

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
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.culvert.platform.CulvertException;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.ledger.SeenRecords;
import org.culvert.web.PageForms;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.ActForms;
import org.culvert.web.acts.PlaceFields;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentForm;
import org.jspecify.annotations.Nullable;

/**
 * What the network goes by: each kind of data with what holds now, and forms to enter, read again, correct and end it. Who
 * may read and use a kind is what the table says of the operations of the API behind it.
 */
@OwnForm
@Path("/settings")
@Produces(MediaType.TEXT_HTML)
public class SettingsPageResource {
    private final Sheets sheets;
    private final SettingsPages pages;
    private final ActForms fields;
    private final PlaceFields places;
    private final RegionService region;
    private final FormBodies bodies;
    private final PageForms forms;
    private final SeenRecords seen;

    SettingsPageResource(
            Sheets sheets,
            SettingsPages pages,
            ActForms fields,
            PlaceFields places,
            RegionService region,
            FormBodies bodies,
            PageForms forms,
            SeenRecords seen) {
        this.sheets = sheets;
        this.pages = pages;
        this.fields = fields;
        this.places = places;
        this.region = region;
        this.bodies = bodies;
        this.forms = forms;
        this.seen = seen;
    }

    @GET
    @RolesAllowed("**")
    public TemplateInstance show() {
        return pages.all();
    }

    @GET
    @Path("/{kind}")
    @RolesAllowed("**")
    public TemplateInstance showKind(@PathParam("kind") String kind) {
        return pages.one(sheets.readable(kind));
    }

    /**
     * The form of something that may be done with a kind.
     *
     * @param of the thing to which it is done, where it is done to one
     * @param fill {@code field:value}, which the form begins with
     */
    @GET
    @Path("/{kind}/{act}")
    @RolesAllowed("**")
    public TemplateInstance showForm(
            @PathParam("kind") String kind,
            @PathParam("act") String name,
            @QueryParam("of") @Nullable String of,
            @QueryParam("fill") @Nullable String fill) {
        Sheet sheet = sheets.readable(kind);
        SheetAct<?> usable = sheets.usable(sheet, name);
        Act<?> act = usable.act();
        int colon = fill == null ? -1 : fill.indexOf(':');
        return pages.form(
                sheet,
                act,
                id(act, of),
                fill == null || colon < 1
                        ? null
                        : SentFields.of(Map.of(fill.substring(0, colon), fill.substring(colon + 1))),
                List.of());
    }

    @POST
    @Path("/{kind}/{act}")
    @RolesAllowed("**")
    public Response carryOut(
            @PathParam("kind") String kind,
            @PathParam("act") String name,
            @BeanParam SentForm form,
            @FormParam("csrf") @Nullable String csrf) {
        Sheet sheet = sheets.readable(kind);
        SheetAct<?> usable = sheets.usable(sheet, name);
        Act<?> act = usable.act();
        SentFields typed = form.fields();
        UUID id = id(act, typed.given("act.of"));
        AtomicReference<@Nullable Object> made = new AtomicReference<>();
        Response done = forms.once(
                "/settings/" + kind + "/" + name,
                form.key(),
                typed,
                () -> carryOut(sheet, usable, id, typed, made),
                (why, errors) -> again(sheet, act, id, typed, why, errors));
        Object shown = made.get();
        return usable.shownOnce() && shown != null && done.getStatus() == Response.Status.SEE_OTHER.getStatusCode()
                ? PageForms.html(200, pages.once(sheet, shown))
                : done;
    }

    private URI carryOut(
            Sheet sheet, SheetAct<?> usable, UUID id, SentFields typed, AtomicReference<@Nullable Object> made) {
        Act<?> act = usable.act();
        String changes = act.tag();
        if (changes != null) {
            seen.requireUnchanged(changes, sheet.isAlone() ? "" : id.toString(), typed.given("act.seen"));
        }
        EntryBody told = EntryBody.of(fields.shapes(act), typed, pages.shown(sheet, act, id), region.zone());
        places.read(fields.shapes(act), told);
        Object result = usable.carryOut(id, told, bodies);
        made.set(result);
        UUID one = result instanceof UUID changed ? changed : id;
        return URI.create(sheet.home() + (one.equals(SheetAct.NONE) ? "" : "#i-" + one));
    }

    private Response again(
            Sheet sheet, Act<?> act, UUID id, SentFields typed, CulvertException why, List<FieldError> errors) {
        return PageForms.html(why.status(), pages.form(sheet, act, id, typed, errors));
    }

    private static UUID id(Act<?> act, @Nullable String of) {
        if (!act.ofOne()) {
            return SheetAct.NONE;
        }
        if (of == null) {
            throw InvalidException.of("of", "It is not told to which one.", "the identifier of one");
        }
        return Paging.uuid("of", of);
    }
}
