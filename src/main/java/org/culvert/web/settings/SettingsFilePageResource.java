package org.culvert.web.settings;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.CulvertException;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.web.PageForms;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.ActForms;
import org.culvert.web.acts.ActRights;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentFile;
import org.culvert.web.forms.SentForm;
import org.culvert.web.settings.SheetFiles.FileAct;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** Files of roads, land and release sites. */
@OwnForm
@Path("/settings/files/{kind}")
@Produces(MediaType.TEXT_HTML)
public class SettingsFilePageResource {
    private final Template page;
    private final Sheets sheets;
    private final ActRights rights;
    private final SheetFiles files;
    private final ActForms fields;
    private final RegionService region;
    private final FormBodies bodies;
    private final PageForms forms;

    SettingsFilePageResource(
            @Location("settings-file.html") Template page,
            Sheets sheets,
            ActRights rights,
            SheetFiles files,
            ActForms fields,
            RegionService region,
            FormBodies bodies,
            PageForms forms) {
        this.page = page;
        this.sheets = sheets;
        this.rights = rights;
        this.files = files;
        this.fields = fields;
        this.region = region;
        this.bodies = bodies;
        this.forms = forms;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance show(@PathParam("kind") String kind) {
        Sheet sheet = sheets.readable(kind);
        return form(sheet, usable(kind).act(), SentFields.NOTHING, List.of());
    }

    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response bring(
            @PathParam("kind") String kind,
            @BeanParam SentForm form,
            @RestForm("file") @Nullable FileUpload file,
            @FormParam("csrf") @Nullable String csrf) {
        Sheet sheet = sheets.readable(kind);
        FileAct<?> act = usable(kind);
        SentFields typed = form.fields();
        return forms.tried(
                () -> {
                    SentFile sent = SentFile.of(file);
                    EntryBody told = EntryBody.of(fields.shapes(act.act()), typed, SentFields.NOTHING, region.zone());
                    return forms.take(
                            "/settings/files/" + kind,
                            form.key(),
                            List.of(sent.told(), typed),
                            () -> sent.read((name, octets) -> {
                                act.take(told, bodies, new SheetFiles.Sent(name, octets));
                                return URI.create(sheet.home());
                            }));
                },
                (why, errors) -> again(sheet, act.act(), typed, why, errors));
    }

    private FileAct<?> usable(String kind) {
        FileAct<?> act = files.find(kind);
        if (act == null) {
            throw new NotFoundException("kind of files", kind);
        }
        if (!rights.may(act.act().operation())) {
            throw new ForbiddenException();
        }
        return act;
    }

    private Response again(Sheet sheet, Act<?> act, SentFields typed, CulvertException why, List<FieldError> errors) {
        return Response.status(why.status())
                .entity(form(sheet, act, typed, errors))
                .type(MediaType.TEXT_HTML_TYPE)
                .build();
    }

    private TemplateInstance form(Sheet sheet, Act<?> act, SentFields typed, List<FieldError> errors) {
        return page.data("sheet", sheet.name())
                .data("key", sheet.key())
                .data("home", sheet.home())
                .data("form", fields.form(act, typed, errors, sheet::called, Map.of()))
                .data("once", UUID.randomUUID().toString());
    }
}
