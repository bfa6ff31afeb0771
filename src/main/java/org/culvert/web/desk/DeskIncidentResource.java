package org.culvert.web.desk;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
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
import java.util.function.Supplier;
import org.culvert.call.IncidentService;
import org.culvert.dispatch.ClosingService;
import org.culvert.dispatch.DispatchService;
import org.culvert.dispatch.DispatchService.GateView;
import org.culvert.dispatch.DispatchService.StepEntry;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.RefusedException;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.road.PlaceAsGiven;
import org.culvert.web.PageForms;
import org.culvert.web.SceneForm;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** An incident at the desk, from the call to its end. */
@OwnForm
@Path("/desk/incidents/{id}")
@Produces(MediaType.TEXT_HTML)
public class DeskIncidentResource {
    private final Template template;
    private final DeskIncidentPages pages;
    private final DeskKeeper keeper;
    private final IncidentService incidents;
    private final DispatchService dispatch;
    private final ClosingService closings;
    private final PageForms forms;

    DeskIncidentResource(
            @Location("desk-incident.html") Template template,
            DeskIncidentPages pages,
            DeskKeeper keeper,
            IncidentService incidents,
            DispatchService dispatch,
            ClosingService closings,
            PageForms forms) {
        this.template = template;
        this.pages = pages;
        this.keeper = keeper;
        this.incidents = incidents;
        this.dispatch = dispatch;
        this.closings = closings;
        this.forms = forms;
    }

    @GET
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response show(@PathParam("id") String id, @QueryParam("call") @Nullable String call) {
        return page(200, id, call, null, null, null, List.of());
    }

    /** What the caller tells further. */
    @POST
    @Path("/calls/{callId}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response keep(
            @PathParam("id") String id,
            @PathParam("callId") String callId,
            @BeanParam DeskCall typed,
            @FormParam("csrf") @Nullable String csrf) {
        UUID incident = Paging.uuid("id", id);
        UUID call = Paging.uuid("callId", callId);
        return tried(
                id,
                callId,
                typed,
                null,
                () -> forms.take("/desk/incidents/" + id + "/calls/" + callId, typed.key, DeskTold.of(typed), () -> {
                    keeper.keep(incident, call, typed);
                    return next(incident, call, "told");
                }));
    }

    /** A sentence was said to the caller. */
    @POST
    @Path("/calls/{callId}/told")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response tell(
            @PathParam("id") String id,
            @PathParam("callId") String callId,
            @FormParam("words") @Nullable String words,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID incident = Paging.uuid("id", id);
        UUID call = Paging.uuid("callId", callId);
        String said = words == null ? "" : words;
        return tried(
                id,
                callId,
                null,
                null,
                () -> forms.take("/desk/incidents/" + id + "/calls/" + callId + "/told", key, said, () -> {
                    keeper.tell(incident, call, said);
                    return next(incident, call, "say");
                }));
    }

    /** It is on another of the roads that it may be on. */
    @POST
    @Path("/road")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response chooseRoad(
            @PathParam("id") String id,
            @FormParam("road") @Nullable String road,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID incident = Paging.uuid("id", id);
        String chosen = road == null ? "" : road;
        return tried(
                id,
                null,
                null,
                null,
                () -> forms.take("/desk/incidents/" + id + "/road", key, chosen, () -> {
                    PlaceAsGiven place = pages.sameButOn(incident, chosen);
                    incidents.movePlace(incident, place, "the caller says which road", true);
                    return next(incident, null, "where-it-is");
                }));
    }

    /** Another incident is this one. */
    @POST
    @Path("/joins")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response join(
            @PathParam("id") String id,
            @FormParam("incidentId") @Nullable String other,
            @FormParam("because") @Nullable String because,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID incident = Paging.uuid("id", id);
        UUID joined = Paging.uuid("incidentId", other == null ? "" : other);
        String reason = Typed.given(because);
        return tried(id, null, null, null, () -> {
            if (reason == null) {
                throw InvalidException.of("because", "It is not said why they are one.", "some words");
            }
            return forms.take("/desk/incidents/" + id + "/joins", key, List.of(joined, reason), () -> {
                incidents.join(joined, incident, reason, true);
                return next(joined, null, "call");
            });
        });
    }

    /** Asks the gate, or sends people through it. */
    @POST
    @Path("/attendances")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response send(
            @PathParam("id") String id, @BeanParam DeskSending sending, @FormParam("csrf") @Nullable String csrf) {
        UUID incident = Paging.uuid("id", id);
        if (!"send".equals(sending.act)) {
            try {
                return page(200, id, null, null, sending, dispatch.askGate(incident, sending.entry()), List.of());
            } catch (InvalidException e) {
                return page(400, id, null, null, sending, null, e.errors());
            }
        }
        return tried(id, null, null, sending, () -> {
            DispatchService.AttendanceEntry entry = sending.entry();
            return forms.take("/desk/incidents/" + id + "/attendances", sending.key, entry, () -> {
                dispatch.send(incident, entry);
                return next(incident, null, "going");
            });
        });
    }

    /** A step of an attendance, told by telephone. */
    @POST
    @Path("/attendances/{attendanceId}/steps")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response step(
            @PathParam("id") String id,
            @PathParam("attendanceId") String attendanceId,
            @FormParam("act") @Nullable String act,
            @BeanParam SceneForm scene,
            @FormParam("csrf") @Nullable String csrf) {
        UUID incident = Paging.uuid("id", id);
        UUID attendance = pages.requireAttendance(incident, Paging.uuid("attendanceId", attendanceId));
        String path = "/desk/incidents/" + id + "/attendances/" + attendanceId + "/steps";
        return tried(id, null, null, null, () -> {
            DispatchService.OutcomeEntry outcome = "end".equals(act) ? scene.entry() : null;
            return forms.take(path, scene.key, outcome == null ? String.valueOf(act) : outcome, () -> {
                switch (String.valueOf(act)) {
                    case "accept" -> dispatch.accept(attendance, new StepEntry(null));
                    case "depart" -> dispatch.depart(attendance, new StepEntry(null));
                    case "arrive" -> dispatch.arrive(attendance, new StepEntry(null));
                    case "end" -> dispatch.end(attendance, Objects.requireNonNull(outcome));
                    default -> throw InvalidException.of("act", "There is no such step.", "a button of the page");
                }
                return next(incident, null, "going");
            });
        });
    }

    /** Nobody goes, for a reason. */
    @POST
    @Path("/closings")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Response close(
            @PathParam("id") String id, @BeanParam DeskClosing closing, @FormParam("csrf") @Nullable String csrf) {
        UUID incident = Paging.uuid("id", id);
        return tried(id, null, null, null, () -> {
            ClosingService.ClosingEntry entry = closing.entry();
            return forms.take("/desk/incidents/" + id + "/closings", closing.key, entry, () -> {
                closings.close(incident, entry);
                return next(incident, null, "call");
            });
        });
    }

    private static URI next(UUID incident, @Nullable UUID call, String part) {
        return URI.create("/desk/incidents/" + incident + (call == null ? "" : "?call=" + call) + "#" + part);
    }

    /** Does it and leads on; or shows the page again with what was wrong, and what was typed. */
    private Response tried(
            String id,
            @Nullable String call,
            @Nullable DeskCall typed,
            @Nullable DeskSending sending,
            Supplier<URI> change) {
        return forms.tried(change, (why, errors) -> {
            GateView gate = why instanceof RefusedException && sending != null
                    ? dispatch.askGate(Paging.uuid("id", id), sending.entry())
                    : null;
            return page(why.status(), id, call, typed, sending, gate, errors);
        });
    }

    private Response page(
            int status,
            String id,
            @Nullable String call,
            @Nullable DeskCall typed,
            @Nullable DeskSending sending,
            @Nullable GateView gate,
            List<FieldError> errors) {
        String callId = Typed.given(call);
        DeskIncidentPage page = pages.page(
                Paging.uuid("id", id), callId == null ? null : Paging.uuid("call", callId), typed, sending, gate);
        return PageForms.html(
                status,
                template.data("page", page)
                        .data("typed", page.typed())
                        .data("where", page.where())
                        .data("errors", errors)
                        .data("placeErrors", List.of())
                        .data("suggested", List.of())
                        .data("key", UUID.randomUUID().toString())
                        .data("animals", pages.listAnimals())
                        .data("causes", pages.listCauses())
                        .data("now", page.now()));
    }
}
