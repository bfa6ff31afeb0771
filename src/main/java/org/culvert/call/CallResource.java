package org.culvert.call;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.util.UUID;
import org.culvert.platform.Actor;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.culvert.road.PlaceAsGiven;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Calls and incidents. Callers and their words are shown to dispatchers and coordinators only. */
@Ledgered
@Path("/api")
public class CallResource {
    /** Joins another incident to this one. */
    public record JoinEntry(
            @NotNull UUID incidentId, @NotBlank String reason) {}

    /** Why something is taken back or changed. */
    public record Reason(@NotBlank String reason) {}

    /** Another place for an incident, and why. */
    public record PlaceChange(
            @NotNull PlaceAsGiven place, @NotBlank String reason) {}

    private final CallService calls;
    private final CallReader reader;
    private final IncidentService incidents;
    private final CallCorrector corrector;
    private final Actor actor;

    CallResource(
            CallService calls, CallReader reader, IncidentService incidents, CallCorrector corrector, Actor actor) {
        this.calls = calls;
        this.reader = reader;
        this.incidents = incidents;
        this.corrector = corrector;
        this.actor = actor;
    }

    @POST
    @Path("/calls")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public RestResponse<CallReceipt> receive(@NotNull @Valid CallEntry entry) {
        CallReceipt receipt = calls.receive(entry);
        return RestResponse.ResponseBuilder.<CallReceipt>created(URI.create("/api/calls/" + receipt.callId()))
                .entity(receipt)
                .build();
    }

    @GET
    @Tagged
    @Path("/calls/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public CallView getCall(@PathParam("id") String id) {
        return reader.getCall(Paging.uuid("id", id), mayShowPeople());
    }

    /** Animals of a further kind that the caller tells of. */
    @POST
    @Path("/calls/{id}/animals")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public RestResponse<CallView> addAnimal(@PathParam("id") String id, @NotNull @Valid CallEntry.Animal animal) {
        UUID call = Paging.uuid("id", id);
        calls.addAnimal(call, animal);
        return RestResponse.ResponseBuilder.<CallView>created(URI.create("/api/calls/" + call))
                .entity(reader.getCall(call, mayShowPeople()))
                .build();
    }

    @GET
    @Path("/incidents")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<IncidentView> listIncidents(
            @QueryParam("late") @DefaultValue("false") boolean late,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return incidents.listIncidents(Paging.limit(limit), Paging.cursor(cursor), late, mayShowPeople());
    }

    @GET
    @Tagged
    @Path("/incidents/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public IncidentView getIncident(@PathParam("id") String id) {
        return incidents.getIncident(Paging.uuid("id", id), mayShowPeople());
    }

    @PUT
    @NeedsTag("incident")
    @Path("/incidents/{id}/place")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public IncidentView movePlace(@PathParam("id") String id, @NotNull @Valid PlaceChange change) {
        return incidents.movePlace(Paging.uuid("id", id), change.place(), change.reason(), mayShowPeople());
    }

    @POST
    @Path("/incidents/{id}/joins")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public IncidentView join(@PathParam("id") String id, @NotNull @Valid JoinEntry entry) {
        return incidents.join(Paging.uuid("id", id), entry.incidentId(), entry.reason(), mayShowPeople());
    }

    @GET
    @Tagged
    @Path("/joins/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public IncidentView.JoinView getJoin(@PathParam("id") String id) {
        return incidents.getJoin(Paging.uuid("id", id));
    }

    @POST
    @NeedsTag("join")
    @Path("/joins/{id}/undoing")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public IncidentView undoJoin(@PathParam("id") String id, @NotNull @Valid Reason reason) {
        return incidents.undoJoin(Paging.uuid("id", id), reason.reason(), mayShowPeople());
    }

    private boolean mayShowPeople() {
        return actor.hasRole(Role.DISPATCHER) || actor.hasRole(Role.COORDINATOR);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("incident")
    @Path("/incidents/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public IncidentView correctIncident(
            @PathParam("id") String id, @NotNull @Valid CallCorrections.IncidentCorrection correction) {
        corrector.correctIncident(Paging.uuid("id", id), correction);
        return incidents.getIncident(Paging.uuid("id", id), mayShowPeople());
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("call")
    @Path("/calls/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public CallView correctCall(@PathParam("id") String id, @NotNull @Valid CallCorrections.CallCorrection correction) {
        corrector.correctCall(Paging.uuid("id", id), correction);
        return reader.getCall(Paging.uuid("id", id), mayShowPeople());
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("call")
    @Path("/calls/{id}/animals/{animalId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public CallView correctReportedAnimal(
            @PathParam("id") String id,
            @PathParam("animalId") String animalId,
            @NotNull @Valid CallCorrections.ReportedAnimalCorrection correction) {
        corrector.correctAnimal(Paging.uuid("id", id), Paging.uuid("animalId", animalId), correction);
        return reader.getCall(Paging.uuid("id", id), mayShowPeople());
    }
}
