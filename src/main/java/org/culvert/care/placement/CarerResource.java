package org.culvert.care.placement;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.util.List;
import org.culvert.animal.CaseCorrections;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** What carers can take, when they are away, and what is kept apart. */
@Ledgered
@Path("/api")
public class CarerResource {
    private final CarerService carers;

    CarerResource(CarerService carers) {
        this.carers = carers;
    }

    @POST
    @Path("/carer-profiles")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<CarerService.CarerProfileView> enterProfile(
            @NotNull @Valid CarerService.CarerProfileEntry entry) {
        CarerService.CarerProfileView view = carers.enterProfile(entry);
        return RestResponse.ResponseBuilder.<CarerService.CarerProfileView>created(
                        URI.create("/api/carer-profiles/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/carer-profiles")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public List<CarerService.CarerProfileView> listProfiles(@QueryParam("memberId") @Nullable String memberId) {
        return carers.listProfiles(memberId == null ? null : Paging.uuid("memberId", memberId));
    }

    @GET
    @Tagged
    @Path("/carer-profiles/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public CarerService.CarerProfileView getProfile(@PathParam("id") String id) {
        return carers.getProfile(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("carer-profile")
    @Path("/carer-profiles/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public CarerService.CarerProfileView correctProfile(
            @PathParam("id") String id, @NotNull @Valid CarerService.CarerProfileCorrection correction) {
        return carers.correctProfile(Paging.uuid("id", id), correction);
    }

    @POST
    @Path("/members/{id}/absences")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<CarerService.AbsenceView> addAbsence(
            @PathParam("id") String id, @NotNull @Valid CarerService.AbsenceEntry entry) {
        CarerService.AbsenceView view = carers.addAbsence(Paging.uuid("id", id), entry);
        return RestResponse.ResponseBuilder.<CarerService.AbsenceView>created(URI.create("/api/absences/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/members/{id}/absences")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public List<CarerService.AbsenceView> listAbsences(@PathParam("id") String id) {
        return carers.listAbsences(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/absences/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public CarerService.AbsenceView getAbsence(@PathParam("id") String id) {
        return carers.getAbsence(Paging.uuid("id", id));
    }

    /** The carer is not away after all. */
    @POST
    @NeedsTag("absence")
    @Path("/absences/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public CarerService.AbsenceView withdrawAbsence(
            @PathParam("id") String id, @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return carers.withdrawAbsence(Paging.uuid("id", id), withdrawal.reason());
    }

    @POST
    @Path("/keeping-rules")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<CarerService.KeepingRuleView> enterRule(@NotNull @Valid CarerService.KeepingRuleEntry entry) {
        CarerService.KeepingRuleView view = carers.enterRule(entry);
        return RestResponse.ResponseBuilder.<CarerService.KeepingRuleView>created(
                        URI.create("/api/keeping-rules/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/keeping-rules")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN, Role.CARER, Role.CLINIC, Role.OFFICER})
    public List<CarerService.KeepingRuleView> listRules() {
        return carers.listRules();
    }

    @GET
    @Tagged
    @Path("/keeping-rules/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN, Role.CARER, Role.CLINIC, Role.OFFICER})
    public CarerService.KeepingRuleView getRule(@PathParam("id") String id) {
        return carers.getRule(Paging.uuid("id", id));
    }

    /** The rule does not stand any more. */
    @POST
    @NeedsTag("keeping-rule")
    @Path("/keeping-rules/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public CarerService.KeepingRuleView withdrawRule(
            @PathParam("id") String id, @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return carers.withdrawRule(Paging.uuid("id", id), withdrawal.reason());
    }
}
