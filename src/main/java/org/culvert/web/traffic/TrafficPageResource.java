package org.culvert.web.traffic;

import com.fasterxml.jackson.databind.ObjectMapper;
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
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.road.SaidPlaces;
import org.culvert.road.traffic.TrafficCountKind;
import org.culvert.road.traffic.TrafficCountService;
import org.culvert.road.traffic.TrafficCountService.TrafficCountEntry;
import org.culvert.road.traffic.TrafficCountService.TrafficCountView;
import org.culvert.road.traffic.TrafficDirections;
import org.culvert.road.traffic.TrafficFileService;
import org.culvert.road.traffic.TrafficFileTrial;
import org.culvert.road.traffic.TrafficFileView;
import org.culvert.road.traffic.TrafficMeasure;
import org.culvert.web.PageForms;
import org.culvert.web.Typed;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** How many vehicles go where: what is known, counts that somebody types, and files of counts, tried before they are entered. */
@OwnForm
@Path("/traffic")
@Produces(MediaType.TEXT_HTML)
public class TrafficPageResource {
    private static final int SHOWN = 50;

    private final Template list;
    private final Template tried;
    private final TrafficCountService counts;
    private final TrafficFileService files;
    private final SaidPlaces said;
    private final FormBodies bodies;
    private final ObjectMapper mapper;
    private final PageForms forms;

    TrafficPageResource(
            @Location("traffic.html") Template list,
            @Location("traffic-trial.html") Template tried,
            TrafficCountService counts,
            TrafficFileService files,
            SaidPlaces said,
            FormBodies bodies,
            ObjectMapper mapper,
            PageForms forms) {
        this.list = list;
        this.tried = tried;
        this.counts = counts;
        this.files = files;
        this.said = said;
        this.bodies = bodies;
        this.mapper = mapper;
        this.forms = forms;
    }

    /** A count in a row of the table. */
    public record Row(TrafficCountView count, String kilometres) {
        static Row of(TrafficCountView count) {
            return new Row(count, TrafficTrialPage.kilometres(count.fromChainageMetres(), count.toChainageMetres()));
        }
    }

    /**
     * What is known, newest first.
     *
     * @param entered how many counts a file has just brought
     * @param leftOut how many of its rows were left out
     */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ROADS_AUTHORITY, Role.OFFICER, Role.ADMIN})
    public Response show(
            @QueryParam("road") @Nullable String road,
            @QueryParam("year") @Nullable String year,
            @QueryParam("cursor") @Nullable String cursor,
            @QueryParam("entered") @Nullable Integer entered,
            @QueryParam("leftOut") @Nullable Integer leftOut) {
        return forms.shown(
                () -> page(200, road, year, cursor, new TrafficCountForm(), entered, leftOut, List.of()),
                (why, errors) -> page(why.status(), null, null, null, new TrafficCountForm(), null, null, errors));
    }

    /** Keeps a count that somebody typed. */
    @POST
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response enter(@BeanParam TrafficCountForm form, @FormParam("csrf") @Nullable String csrf) {
        return forms.tried(
                () -> {
                    TrafficCountEntry entry = form.entry(mapper, said, bodies);
                    return forms.take("/traffic", form.key, entry, () -> {
                        counts.enter(entry);
                        return URI.create("/traffic?entered=1");
                    });
                },
                (why, errors) -> page(why.status(), null, null, null, form, null, null, errors));
    }

    /** Takes a count back. */
    @POST
    @Path("/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response withdraw(
            @PathParam("id") String id,
            @FormParam("reason") @Nullable String reason,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID count = Paging.uuid("id", id);
        String because = Objects.requireNonNullElse(Typed.given(reason), "");
        return forms.tried(
                () -> {
                    var withdrawal = bodies.read(
                            mapper.createObjectNode().put("reason", because),
                            TrafficCountService.TrafficCountWithdrawal.class);
                    return forms.take("/traffic/" + count + "/withdrawal", key, because, () -> {
                        counts.withdraw(count, withdrawal.reason());
                        return URI.create("/traffic");
                    });
                },
                (why, errors) -> page(why.status(), null, null, null, new TrafficCountForm(), null, null, errors));
    }

    /** Tries a file of counts, of which nothing is kept; or enters the one that was tried. */
    @POST
    @Path("/files")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response takeFile(
            @BeanParam TrafficFileForm form,
            @RestForm("file") @Nullable FileUpload file,
            @FormParam("csrf") @Nullable String csrf) {
        if ("enter".equals(form.act)) {
            return forms.tried(
                    () -> enterFile(form, SentCounts.of(file)),
                    (why, errors) -> trial(why.status(), form, triedAgain(form, file), errors));
        }
        return forms.shown(
                () -> {
                    SentCounts sent = SentCounts.of(file);
                    form.sha256 = sent.sha256();
                    return trial(200, form, tryFile(form, sent), List.of());
                },
                (why, errors) -> trial(why.status(), form, null, errors));
    }

    private TrafficFileTrial tryFile(TrafficFileForm form, SentCounts sent) {
        return sent.read(Typed.given(form.crs), Typed.given(form.layer), octets -> files.tryFile(form.said(), octets));
    }

    /** What the trial had found, where the very file came again; else null. */
    private @Nullable TrafficFileTrial triedAgain(TrafficFileForm form, @Nullable FileUpload file) {
        if (file == null || file.fileName() == null || file.fileName().isBlank()) {
            return null;
        }
        SentCounts sent = SentCounts.of(file);
        try {
            return sent.sha256().equals(form.sha256) ? tryFile(form, sent) : null;
        } catch (InvalidException saidAlready) {
            return null;
        }
    }

    private URI enterFile(TrafficFileForm form, SentCounts sent) {
        sent.requireTried(form.sha256);
        return forms.take("/traffic/files", form.key, List.of(sent.sha256(), form.said()), () -> {
            TrafficFileView done = sent.read(
                    Typed.given(form.crs), Typed.given(form.layer), octets -> files.enter(form.said(), octets));
            return URI.create("/traffic?entered=" + done.entered() + "&leftOut=" + (done.features() - done.entered()));
        });
    }

    private Response trial(
            int status, TrafficFileForm form, @Nullable TrafficFileTrial found, List<FieldError> errors) {
        return PageForms.html(
                status,
                tried.data("page", TrafficTrialPage.of(form, found))
                        .data("form", form)
                        .data("sha256", Objects.requireNonNullElse(form.sha256, ""))
                        .data("errors", errors)
                        .data("measures", names(TrafficMeasure.values()))
                        .data("kinds", names(TrafficCountKind.values()))
                        .data("directions", names(TrafficDirections.values()))
                        .data("key", UUID.randomUUID().toString()));
    }

    private Response page(
            int status,
            @Nullable String road,
            @Nullable String year,
            @Nullable String cursor,
            TrafficCountForm form,
            @Nullable Integer entered,
            @Nullable Integer leftOut,
            List<FieldError> errors) {
        String ofYear = Typed.given(year);
        Integer asked = null;
        if (ofYear != null) {
            if (!ofYear.matches("\\d{4}")) {
                throw InvalidException.of("year", "No such year is meant.", "a calendar year such as 2024");
            }
            asked = Integer.valueOf(ofYear);
        }
        Page<TrafficCountView> found =
                counts.listCounts(Typed.given(road), asked, null, null, null, SHOWN, Paging.cursor(cursor));
        return PageForms.html(
                status,
                list.data("counts", found.items().stream().map(Row::of).toList())
                        .data("next", found.next())
                        .data("road", Objects.requireNonNullElse(Typed.given(road), ""))
                        .data("year", Objects.requireNonNullElse(ofYear, ""))
                        .data("entered", entered)
                        .data("leftOut", leftOut)
                        .data("form", form)
                        .data("errors", errors)
                        .data("measures", names(TrafficMeasure.values()))
                        .data("kinds", names(TrafficCountKind.values()))
                        .data("directions", names(TrafficDirections.values()))
                        .data("key", UUID.randomUUID().toString()));
    }

    private static List<String> names(Enum<?>[] values) {
        return Stream.of(values).map(Enum::name).toList();
    }
}
