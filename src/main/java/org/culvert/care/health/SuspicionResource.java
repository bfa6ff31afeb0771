package org.culvert.care.health;

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
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;

/** Diseases that must be notified, and suspicions of them. */
@Ledgered
@Path("/api")
public class SuspicionResource {
    private final SuspicionService suspicions;

    SuspicionResource(SuspicionService suspicions) {
        this.suspicions = suspicions;
    }

    /** Diseases of which one suspicion is rung through, with whom to ring. */
    @GET
    @Path("/notifiable-conditions")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public List<NotifiableConditionView> listConditions() {
        return suspicions.listConditions();
    }

    @POST
    @Path("/notifiable-conditions")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<NotifiableConditionView> enterCondition(@NotNull @Valid SuspicionEntries.ConditionEntry entry) {
        NotifiableConditionView condition = suspicions.enterCondition(entry);
        return ResponseBuilder.<NotifiableConditionView>created(
                        URI.create("/api/notifiable-conditions/" + condition.id()))
                .entity(condition)
                .build();
    }

    @GET
    @Tagged
    @Path("/notifiable-conditions/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public NotifiableConditionView getCondition(@PathParam("id") String id) {
        return suspicions.getCondition(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("notifiable-condition")
    @Path("/notifiable-conditions/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public NotifiableConditionView correctCondition(
            @PathParam("id") String id, @NotNull @Valid SuspicionEntries.ConditionCorrection correction) {
        return suspicions.correctCondition(Paging.uuid("id", id), correction);
    }

    /** Says whom to ring; the number that stood there before stays in the revisions. */
    @POST
    @NeedsTag("notifiable-condition")
    @Path("/notifiable-conditions/{id}/hotline")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public NotifiableConditionView enterHotline(
            @PathParam("id") String id, @NotNull @Valid SuspicionEntries.HotlineEntry hotline) {
        return suspicions.enterHotline(Paging.uuid("id", id), hotline);
    }

    /** One suspicion is enough: the animal is held from then on, and the answer says whom to ring. */
    @POST
    @Path("/cases/{id}/disease-suspicions")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public RestResponse<DiseaseSuspicionView> suspect(
            @PathParam("id") String id, @NotNull @Valid SuspicionEntries.SuspicionEntry entry) {
        DiseaseSuspicionView suspicion = suspicions.suspect(Paging.uuid("id", id), entry);
        return ResponseBuilder.<DiseaseSuspicionView>created(URI.create("/api/disease-suspicions/" + suspicion.id()))
                .entity(suspicion)
                .build();
    }

    @GET
    @Path("/cases/{id}/disease-suspicions")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public List<DiseaseSuspicionView> listSuspicions(@PathParam("id") String id) {
        return suspicions.listSuspicions(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/disease-suspicions/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public DiseaseSuspicionView getSuspicion(@PathParam("id") String id) {
        return suspicions.getSuspicion(Paging.uuid("id", id));
    }

    /** A correction; the hold stands whatever is corrected. */
    @PATCH
    @NeedsTag("disease-suspicion")
    @Path("/disease-suspicions/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public DiseaseSuspicionView correctSuspicion(
            @PathParam("id") String id, @NotNull @Valid SuspicionEntries.SuspicionCorrection correction) {
        return suspicions.correct(Paging.uuid("id", id), correction);
    }

    /** Records that the authority was told. */
    @POST
    @NeedsTag("disease-suspicion")
    @Path("/disease-suspicions/{id}/telling")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public DiseaseSuspicionView tellAuthority(
            @PathParam("id") String id, @NotNull @Valid SuspicionEntries.SuspicionTelling telling) {
        return suspicions.tell(Paging.uuid("id", id), telling);
    }
}
