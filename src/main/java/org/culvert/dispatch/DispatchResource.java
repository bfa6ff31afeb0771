package org.culvert.dispatch;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.KeepsNothing;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;

/** Who can go, the gate, and attendances. */
@Ledgered
@Path("/api")
public class DispatchResource {
    /** Identifier of what was kept. */
    public record Kept(UUID id) {}

    private final DispatchService service;
    private final ClosingService closings;
    private final GateKeeper gate;
    private final Clock clock;

    DispatchResource(DispatchService service, ClosingService closings, GateKeeper gate, Clock clock) {
        this.service = service;
        this.closings = closings;
        this.gate = gate;
        this.clock = clock;
    }

    @GET
    @Path("/incidents/{id}/who-can-go")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public List<GateKeeper.Candidate> whoCanGo(@PathParam("id") String id) {
        return gate.whoCanGo(Paging.uuid("id", id), clock.instant());
    }

    @POST
    @KeepsNothing
    @Path("/incidents/{id}/gate-questions")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public DispatchService.GateView askGate(
            @PathParam("id") String id, @NotNull @Valid DispatchService.AttendanceEntry entry) {
        return service.askGate(Paging.uuid("id", id), entry);
    }

    @POST
    @Path("/incidents/{id}/attendances")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public RestResponse<DispatchService.AttendanceView> send(
            @PathParam("id") String id, @NotNull @Valid DispatchService.AttendanceEntry entry) {
        DispatchService.AttendanceView view = service.send(Paging.uuid("id", id), entry);
        return RestResponse.ResponseBuilder.<DispatchService.AttendanceView>created(
                        URI.create("/api/attendances/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/incidents/{id}/attendances")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<DispatchService.AttendanceView> listAttendances(@PathParam("id") String id) {
        return service.listAttendances(Paging.uuid("id", id));
    }

    @POST
    @Path("/incidents/{id}/closings")
    @ResponseStatus(201)
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public Kept close(@PathParam("id") String id, @NotNull @Valid ClosingService.ClosingEntry entry) {
        return new Kept(closings.close(Paging.uuid("id", id), entry));
    }

    @GET
    @Path("/incidents/{id}/closings")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.OFFICER})
    public List<ClosingService.ClosingView> listClosings(@PathParam("id") String id) {
        return closings.list(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/closings/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.OFFICER})
    public ClosingService.ClosingView getClosing(@PathParam("id") String id) {
        return closings.get(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("closing")
    @Path("/closings/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public ClosingService.ClosingView correctClosing(
            @PathParam("id") String id, @NotNull @Valid ClosingService.ClosingCorrection correction) {
        return closings.correct(Paging.uuid("id", id), correction);
    }

    @GET
    @Tagged
    @Path("/attendances/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public DispatchService.AttendanceView getAttendance(@PathParam("id") String id) {
        return service.getAttendance(Paging.uuid("id", id));
    }

    @POST
    @NeedsTag("attendance")
    @Path("/attendances/{id}/acceptance")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER})
    public DispatchService.AttendanceView accept(
            @PathParam("id") String id, @NotNull @Valid DispatchService.StepEntry step) {
        return service.accept(Paging.uuid("id", id), step);
    }

    @POST
    @NeedsTag("attendance")
    @Path("/attendances/{id}/departure")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER})
    public DispatchService.AttendanceView depart(
            @PathParam("id") String id, @NotNull @Valid DispatchService.StepEntry step) {
        return service.depart(Paging.uuid("id", id), step);
    }

    @POST
    @NeedsTag("attendance")
    @Path("/attendances/{id}/arrival")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER})
    public DispatchService.AttendanceView arrive(
            @PathParam("id") String id, @NotNull @Valid DispatchService.StepEntry step) {
        return service.arrive(Paging.uuid("id", id), step);
    }

    @POST
    @NeedsTag("attendance")
    @Path("/attendances/{id}/outcome")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER})
    public DispatchService.AttendanceView end(
            @PathParam("id") String id, @NotNull @Valid DispatchService.OutcomeEntry entry) {
        return service.end(Paging.uuid("id", id), entry);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("attendance")
    @Path("/attendances/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER})
    public DispatchService.AttendanceView correct(
            @PathParam("id") String id, @NotNull @Valid DispatchService.AttendanceCorrection correction) {
        return service.correct(Paging.uuid("id", id), correction);
    }
}
