package org.culvert.web.records;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
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
import java.util.Map;
import java.util.UUID;
import org.culvert.exchange.records.RecordFileService;
import org.culvert.exchange.records.RecordFileService.CallingOffEntry;
import org.culvert.exchange.records.RecordFileView;
import org.culvert.exchange.records.RecordReadingEntry;
import org.culvert.exchange.records.RecordReadingService;
import org.culvert.exchange.records.RecordStandings;
import org.culvert.exchange.records.RecordStandings.RecordFileStanding;
import org.culvert.exchange.records.TrialService;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.web.PageForms;
import org.culvert.web.forms.SentFile;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** Files of old records: which there are, a new one, and how each is read. */
@OwnForm
@Path("/records")
@Produces(MediaType.TEXT_HTML)
public class RecordPageResource {
    private static final int SHOWN = 20;

    private final Template list;
    private final Template one;
    private final RecordFilePages pages;
    private final RegisterNames register;
    private final RecordFileService files;
    private final RecordReadingService readings;
    private final RecordStandings standings;
    private final TrialService trials;
    private final FormBodies bodies;
    private final PageForms forms;

    RecordPageResource(
            @Location("records.html") Template list,
            @Location("records-file.html") Template one,
            RecordFilePages pages,
            RegisterNames register,
            RecordFileService files,
            RecordReadingService readings,
            RecordStandings standings,
            TrialService trials,
            FormBodies bodies,
            PageForms forms) {
        this.list = list;
        this.one = one;
        this.pages = pages;
        this.register = register;
        this.files = files;
        this.readings = readings;
        this.standings = standings;
        this.trials = trials;
        this.bodies = bodies;
        this.forms = forms;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response show(@QueryParam("before") @Nullable String before) {
        return list(200, before, List.of());
    }

    /** Keeps a file that was chosen, and looks through it. */
    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response bring(
            @RestForm("file") @Nullable FileUpload file,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        return forms.tried(
                () -> {
                    SentFile sent = SentFile.of(file);
                    return forms.take(
                            "/records",
                            key,
                            sent.told(),
                            () -> sent.read((name, octets) -> {
                                RecordFileView brought = files.bring(name, octets);
                                return URI.create("/records/" + brought.id());
                            }));
                },
                (why, errors) -> list(why.status(), null, errors));
    }

    /**
     * A file, and how it is to be read.
     *
     * @param former {@code yes}: filled in as another file with the same headings was decided
     */
    @GET
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response showFile(@PathParam("id") String id, @QueryParam("former") @Nullable String former) {
        return page(200, pages.page(Paging.uuid("id", id), "yes".equals(former)), false, List.of());
    }

    /** Looks at a file again as it is filled in, or decides that it is read so and tries it. */
    @POST
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response read(
            @PathParam("id") String id, @BeanParam ReadingForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID file = Paging.uuid("id", id);
        ReadingChoice typed;
        try {
            typed = ReadingChoice.of(form);
        } catch (InvalidException e) {
            return page(e.status(), pages.page(file, false), false, e.errors());
        }
        boolean anew = form.seen != null && !form.seen.equals(typed.seen());
        if (anew || !"try".equals(form.act)) {
            RecordFilePage shown = pages.page(file, typed, anew, List.of());
            return page(isWrong(shown) ? 400 : 200, shown, anew, List.of());
        }
        return forms.tried(
                () -> {
                    RecordReadingEntry entry = bodies.read(typed.body(register.now()::find), RecordReadingEntry.class);
                    return forms.take("/records/" + id, form.key, entry, () -> {
                        readings.decide(file, entry);
                        return trial(trials.start(file).id());
                    });
                },
                (why, errors) -> page(why.status(), pages.page(file, typed, false, errors), false, errors));
    }

    private static boolean isWrong(RecordFilePage shown) {
        return shown.reading() != null && !shown.reading().errors().isEmpty();
    }

    /** Tries a file again as it was decided last. */
    @POST
    @Path("/{id}/trials")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response tryAgain(
            @PathParam("id") String id,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID file = Paging.uuid("id", id);
        return forms.tried(
                () -> forms.take(
                        "/records/" + id + "/trials",
                        key,
                        "try",
                        () -> trial(trials.start(file).id())),
                (why, errors) -> page(why.status(), pages.page(file, false), false, errors));
    }

    /** Forgets a file that nobody wants. */
    @POST
    @Path("/{id}/calling-off")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response callOff(
            @PathParam("id") String id,
            @FormParam("reason") @Nullable String reason,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID file = Paging.uuid("id", id);
        return forms.tried(
                () -> {
                    CallingOffEntry entry = bodies.read(
                            JsonNodeFactory.instance.objectNode().put("reason", reason == null ? "" : reason.strip()),
                            CallingOffEntry.class);
                    return forms.take("/records/" + id + "/calling-off", key, entry, () -> {
                        files.callOff(file, entry);
                        return URI.create("/records");
                    });
                },
                (why, errors) -> page(why.status(), pages.page(file, false), false, errors));
    }

    private static URI trial(UUID id) {
        return URI.create("/records/trials/" + id);
    }

    private Response page(int status, RecordFilePage page, boolean anew, List<FieldError> errors) {
        RecordFilePage.Reading reading = page.reading();
        return PageForms.html(
                status,
                one.data("page", page)
                        .data("reading", reading)
                        .data("anew", anew)
                        .data("errors", reading == null || reading.errors().isEmpty() ? errors : reading.errors())
                        .data("key", UUID.randomUUID().toString()));
    }

    /**
     * A file of the list.
     *
     * @param state how far it has come
     * @param next where its next step is
     */
    public record Listed(RecordFileView file, RecordFileStanding standing, String state, String next) {
        static Listed of(RecordFileView file, RecordFileStanding standing) {
            String trial = "/records/trials/" + standing.trialId();
            String taking = "/records/trials/" + standing.takingTrialId();
            String own = "/records/" + file.id();
            if (file.calledOffAt() != null) {
                return new Listed(file, standing, "calledOff", own);
            }
            if (standing.isBeingTaken() || standing.isTaken()) {
                return new Listed(file, standing, standing.isBeingTaken() ? "beingTaken" : "taken", taking);
            }
            if (file.erasedAt() != null) {
                return new Listed(file, standing, "erased", own);
            }
            if (standing.isBeingTried()) {
                return new Listed(file, standing, "beingTried", trial);
            }
            if (standing.trialId() == null) {
                return new Listed(file, standing, file.readingId() == null ? "brought" : "decided", own);
            }
            if (standing.trialId().equals(standing.takingTrialId())) {
                return new Listed(file, standing, "takingFailed", taking);
            }
            return new Listed(file, standing, "done".equals(standing.trialState()) ? "tried" : "trialFailed", trial);
        }
    }

    private Response list(int status, @Nullable String before, List<FieldError> errors) {
        Page<RecordFileView> found =
                files.listFiles(SHOWN, before == null || before.isBlank() ? null : Paging.uuid("before", before));
        Map<UUID, RecordFileStanding> standing =
                standings.of(found.items().stream().map(RecordFileView::id).toList());
        List<Listed> listed = found.items().stream()
                .map(file -> Listed.of(file, standing.getOrDefault(file.id(), RecordStandings.NOWHERE)))
                .toList();
        return PageForms.html(
                status,
                list.data("files", listed)
                        .data("older", found.next())
                        .data("errors", errors)
                        .data("key", UUID.randomUUID().toString()));
    }
}
