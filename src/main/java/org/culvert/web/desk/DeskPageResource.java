package org.culvert.web.desk;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.call.CallReceipt;
import org.culvert.call.CallService;
import org.culvert.dispatch.OpenIncidentService;
import org.culvert.dispatch.OpenIncidentService.OpenIncidentView;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.web.PageForms;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** The desk: a call as it is taken, where that is, and what else is open. */
@OwnForm
@Path("/desk")
@Produces(MediaType.TEXT_HTML)
public class DeskPageResource {
    private static final int MOST_OPEN = 40;

    private final Template desk;
    private final Template where;
    private final Template open;
    private final DeskCallReader reader;
    private final CallService calls;
    private final AnimalNames animals;
    private final OpenIncidentService incidents;
    private final DeskReading reading;
    private final PageForms forms;
    private final Clock clock;

    DeskPageResource(
            @Location("desk.html") Template desk,
            @Location("desk-where.html") Template where,
            @Location("desk-open.html") Template open,
            DeskCallReader reader,
            CallService calls,
            AnimalNames animals,
            OpenIncidentService incidents,
            DeskReading reading,
            PageForms forms,
            Clock clock) {
        this.desk = desk;
        this.where = where;
        this.open = open;
        this.reader = reader;
        this.calls = calls;
        this.animals = animals;
        this.incidents = incidents;
        this.reading = reading;
        this.forms = forms;
        this.clock = clock;
    }

    @GET
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response show() {
        return page(200, new DeskCall(), List.of());
    }

    @POST
    @Path("/calls")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response keep(@BeanParam DeskCall typed, @FormParam("csrf") @Nullable String csrf) {
        return forms.once(
                "/desk/calls",
                typed.key,
                DeskTold.of(typed),
                () -> {
                    CallReceipt receipt = calls.receive(reader.read(typed));
                    return URI.create("/desk/incidents/" + receipt.incidentId() + "?call=" + receipt.callId());
                },
                (why, errors) -> page(why.status(), typed, errors));
    }

    /** What is meant by a place as it is being typed, how the line may go on, and what is near; nothing is kept. */
    @GET
    @Path("/reading")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public TemplateInstance read(
            @QueryParam("place") @Nullable String place, @QueryParam("animal") @Nullable String animal) {
        DeskReading.SoFar read = reading.read(place, at -> {
            String called = Typed.given(animal);
            AnimalNames.Meant meant = called == null ? null : animals.find(called);
            Set<UUID> groups = meant == null || meant.groupOf() == null
                    ? Set.of()
                    : Set.of(meant.groupOf().id());
            return calls.listNear(
                    new Position(at.decimalLatitude(), at.decimalLongitude()),
                    at.coordinateUncertaintyInMeters(),
                    groups);
        });
        return where.data("where", read.where())
                .data("placeErrors", read.errors())
                .data("suggested", read.suggested())
                .data("list", "places")
                .data("ofCall", true)
                .data("fragment", true);
    }

    /** What is open, most pressing first. */
    @GET
    @Path("/open")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public TemplateInstance listOpen() {
        List<OpenIncidentView> all = incidents.listOpen();
        return open.data("open", all.subList(0, Math.min(MOST_OPEN, all.size())))
                .data("more", Math.max(0, all.size() - MOST_OPEN))
                .data("now", clock.instant());
    }

    private Response page(int status, DeskCall typed, List<FieldError> errors) {
        List<OpenIncidentView> all = incidents.listOpen();
        return PageForms.html(
                status,
                desk.data("typed", DeskTold.of(typed))
                        .data("errors", errors)
                        .data("key", UUID.randomUUID().toString())
                        .data("animals", animals.list())
                        .data("causes", calls.listCauses())
                        .data("open", all.subList(0, Math.min(MOST_OPEN, all.size())))
                        .data("more", Math.max(0, all.size() - MOST_OPEN))
                        .data("now", clock.instant())
                        .data("where", null)
                        .data("placeErrors", List.of())
                        .data("suggested", List.of()));
    }
}
