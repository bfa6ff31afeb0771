package org.culvert.web.settings;

import com.fasterxml.jackson.databind.ObjectMapper;
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
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.exchange.files.BroughtFileService;
import org.culvert.exchange.files.BroughtFileView;
import org.culvert.exchange.files.FileFailure;
import org.culvert.exchange.files.FileResult;
import org.culvert.exchange.files.TrafficFileEntry.Wanted;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.sight.Sight;
import org.culvert.road.traffic.TrafficFileTrial;
import org.culvert.web.PageForms;
import org.culvert.web.acts.ActForms;
import org.culvert.web.acts.ActRights;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentFile;
import org.culvert.web.forms.SentForm;
import org.culvert.web.settings.SheetFiles.FileAct;
import org.culvert.web.traffic.TriedCounts;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** Files of roads, land, release sites and traffic counts: a new one, those that were brought, and how far the reading of one is. */
@OwnForm
@Path("/settings/files/{kind}")
@Produces(MediaType.TEXT_HTML)
public class SettingsFilePageResource {
    private static final int SHOWN = 20;

    /** Field of the file that is to be read again. */
    private static final String OF = "act.of";

    private final Template list;
    private final Template one;
    private final Template progress;
    private final Sheets sheets;
    private final ActRights rights;
    private final SheetFiles kinds;
    private final ActForms fields;
    private final BroughtFileService files;
    private final RegionService region;
    private final ObjectMapper mapper;
    private final FormBodies bodies;
    private final PageForms forms;
    private final Sight sight;

    SettingsFilePageResource(
            @Location("settings-file.html") Template list,
            @Location("settings-brought.html") Template one,
            @Location("settings-brought-progress.html") Template progress,
            Sheets sheets,
            ActRights rights,
            SheetFiles kinds,
            ActForms fields,
            BroughtFileService files,
            RegionService region,
            ObjectMapper mapper,
            FormBodies bodies,
            PageForms forms,
            Sight sight) {
        this.list = list;
        this.one = one;
        this.progress = progress;
        this.sheets = sheets;
        this.rights = rights;
        this.kinds = kinds;
        this.fields = fields;
        this.files = files;
        this.region = region;
        this.mapper = mapper;
        this.bodies = bodies;
        this.forms = forms;
        this.sight = sight;
    }

    /** @param before files that were brought before this one alone */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance show(@PathParam("kind") String kind, @QueryParam("before") @Nullable String before) {
        return list(sheets.readable(kind), usable(kind), SentFields.NOTHING, List.of(), before);
    }

    /** A file that was brought: how far its reading is, what came of it, or what was wrong. */
    @GET
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance showOne(@PathParam("kind") String kind, @PathParam("id") String id) {
        FileAct act = usable(kind);
        BroughtFileView file = files.getFile(act.kind(), Paging.uuid("id", id));
        return one(sheets.readable(kind), act, file, told(act, file), wrong(act, file));
    }

    /** How far it is; once that is the end, the page is asked for anew. */
    @GET
    @Path("/{id}/progress")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response showProgress(@PathParam("kind") String kind, @PathParam("id") String id) {
        FileAct act = usable(kind);
        BroughtFileView file = files.getFile(act.kind(), Paging.uuid("id", id));
        Response.ResponseBuilder answer = Response.ok(
                        progress.data("page", BroughtPage.of(file)).data("sheet", kind))
                .type(MediaType.TEXT_HTML_TYPE);
        return (file.isRunning() ? answer : answer.header("HX-Refresh", "true")).build();
    }

    /** Calls off a file that nobody has begun to read. */
    @POST
    @Path("/{id}/calling-off")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response callOff(
            @PathParam("kind") String kind,
            @PathParam("id") String id,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        Sheet sheet = sheets.readable(kind);
        FileAct act = usable(kind);
        UUID file = Paging.uuid("id", id);
        return forms.once(
                "/settings/files/" + kind + "/" + file + "/calling-off",
                key,
                SentFields.NOTHING,
                () -> address(files.callOff(act.kind(), file)),
                (why, errors) -> {
                    BroughtFileView told = files.getFile(act.kind(), file);
                    return PageForms.html(why.status(), one(sheet, act, told, told(act, told), errors));
                });
    }

    /** Keeps a file that was chosen, or takes one that is there, and has it read. */
    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response bring(
            @PathParam("kind") String kind,
            @BeanParam SentForm form,
            @RestForm("file") @Nullable FileUpload file,
            @FormParam("csrf") @Nullable String csrf) {
        Sheet sheet = sheets.readable(kind);
        FileAct act = usable(kind);
        SentFields typed = form.fields();
        String of = typed.given(OF);
        UUID before = of == null ? null : Paging.uuid("of", of);
        return forms.tried(
                () -> {
                    EntryBody told = EntryBody.of(fields.shapes(act.act()), typed, SentFields.NOTHING, region.zone());
                    if (act.isTried()) {
                        told.told().put(SheetFiles.WANTED, typed.given(SheetFiles.WANTED));
                    }
                    String path = "/settings/files/" + kind;
                    if (before != null && !isChosen(file)) {
                        return forms.take(
                                path,
                                form.key(),
                                typed,
                                () -> address(files.readAgain(act.kind(), before, entry(act, told))));
                    }
                    SentFile sent = SentFile.of(file);
                    return forms.take(
                            path,
                            form.key(),
                            List.of(sent.told(), typed),
                            () -> sent.read((name, octets) ->
                                    address(files.bring(act.kind(), entry(act, told), name, octets))));
                },
                (why, errors) -> PageForms.html(
                        why.status(),
                        before == null
                                ? list(sheet, act, typed, errors, null)
                                : one(sheet, act, files.getFile(act.kind(), before), typed, errors)));
    }

    private static boolean isChosen(@Nullable FileUpload file) {
        return file != null && file.fileName() != null && !file.fileName().isBlank();
    }

    private Object entry(FileAct act, EntryBody told) {
        return told.read(bodies, act.act().body());
    }

    private static URI address(BroughtFileView file) {
        return URI.create("/settings/files/" + file.kind().inAddresses() + "/" + file.id());
    }

    private FileAct usable(String kind) {
        FileAct act = kinds.find(kind);
        if (act == null) {
            throw new NotFoundException("kind of files", kind);
        }
        if (!rights.may(act.act().operation())) {
            throw new ForbiddenException();
        }
        return act;
    }

    /** What was told beside a file, as a form has it; what a trial proposes stands where nothing was told. */
    private SentFields told(FileAct act, BroughtFileView file) {
        SentFields told = EntryBody.typed(fields.shapes(act.act()), mapper.valueToTree(file.told()), region.zone());
        Map<String, List<String>> all = new LinkedHashMap<>(told.told());
        trial(file)
                .ifPresent(trial -> trial.columns().forEach(column -> {
                    String attribute = column.attribute();
                    if (attribute != null) {
                        all.put(column.parameter(), List.of(attribute));
                    }
                }));
        return new SentFields(all);
    }

    private static Optional<TrafficFileTrial> trial(BroughtFileView file) {
        FileResult result = file.result();
        return result == null ? Optional.empty() : Optional.ofNullable(result.trial());
    }

    /** What was wrong, or is still missing. */
    private List<FieldError> wrong(FileAct act, BroughtFileView file) {
        return Stream.concat(
                        failure(act, file).stream(),
                        trial(file).stream()
                                .flatMap(trial -> trial.stillMissing().stream())
                                .map(fault -> new FieldError(fault.field(), fault.detail(), fault.wanted(), null)))
                .toList();
    }

    /** What was wrong, beside the field of the form that it is of; what lies in the file itself is said with its place. */
    private List<FieldError> failure(FileAct act, BroughtFileView file) {
        FileFailure failure = file.failure();
        if (failure == null) {
            return List.of();
        }
        Set<String> names =
                fields.shapes(act.act()).stream().map(FieldShape::name).collect(Collectors.toSet());
        return failure.wrong().stream()
                .map(wrong -> {
                    String attribute = "attributes." + wrong.field();
                    String field = names.contains(attribute) ? attribute : wrong.field();
                    boolean inFile = !names.contains(field) && field.startsWith("features.");
                    return new FieldError(
                            field,
                            inFile ? "At " + field + ": " + wrong.detail() : wrong.detail(),
                            wrong.wanted(),
                            wrong.otherReading());
                })
                .toList();
    }

    private TemplateInstance list(
            Sheet sheet, FileAct act, SentFields typed, List<FieldError> errors, @Nullable String before) {
        Page<BroughtFileView> found = files.listFiles(
                act.kind(), SHOWN, before == null || before.isBlank() ? null : Paging.uuid("before", before));
        return with(list, sheet, act, typed, errors, Map.of())
                .data("files", found.items().stream().map(BroughtPage::of).toList())
                .data("older", found.next());
    }

    private TemplateInstance one(
            Sheet sheet, FileAct act, BroughtFileView file, SentFields typed, List<FieldError> errors) {
        return with(one, sheet, act, typed, errors, attributes(file))
                .data("page", BroughtPage.of(file))
                .data("ready", isReady(act, file))
                .data(
                        "mayCallOff",
                        file.state().equals("waiting")
                                && Objects.equals(
                                        sight.viewer().username(), file.record().recordedBy()));
    }

    /** Whether somebody has been told what would come of it, or has wanted it entered before. */
    private static boolean isReady(FileAct act, BroughtFileView file) {
        return !act.isTried()
                || Wanted.entry.name().equals(file.told().get(SheetFiles.WANTED))
                || trial(file).map(TriedCounts::of).filter(TriedCounts::isReady).isPresent();
    }

    /** Attributes of a file that was tried, for each field that names one. */
    private Map<String, Map<String, String>> attributes(BroughtFileView file) {
        Map<String, Map<String, String>> offered = new LinkedHashMap<>();
        trial(file).ifPresent(trial -> {
            Map<String, String> attributes = new LinkedHashMap<>();
            trial.attributes().forEach(attribute -> attributes.put(attribute, attribute));
            trial.columns().forEach(column -> offered.put(column.parameter(), attributes));
        });
        return offered;
    }

    private TemplateInstance with(
            Template page,
            Sheet sheet,
            FileAct act,
            SentFields typed,
            List<FieldError> errors,
            Map<String, Map<String, String>> offered) {
        return page.data("sheet", sheet.name())
                .data("canBeTried", act.isTried())
                .data("key", sheet.key())
                .data("home", sheet.home())
                .data(
                        "form",
                        fields.form(
                                act.act(),
                                typed,
                                errors,
                                field -> act.called().getOrDefault(field, sheet.called(field)),
                                offered))
                .data("once", UUID.randomUUID().toString());
    }
}
