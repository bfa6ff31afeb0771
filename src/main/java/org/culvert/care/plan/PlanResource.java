package org.culvert.care.plan;

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
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Aftercare plans of cases, and what was done of them. */
@Ledgered
@Path("/api")
public class PlanResource {
    private final PlanService plans;
    private final CareEntryService entries;

    PlanResource(PlanService plans, CareEntryService entries) {
        this.plans = plans;
        this.entries = entries;
    }

    @POST
    @Path("/cases/{id}/aftercare-plans")
    @RolesAllowed(Role.CLINIC)
    public RestResponse<AftercarePlanView> make(
            @PathParam("id") String id, @NotNull @Valid PlanEntries.PlanEntry entry) {
        AftercarePlanView view = plans.make(Paging.uuid("id", id), entry);
        return RestResponse.ResponseBuilder.<AftercarePlanView>created(URI.create("/api/aftercare-plans/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/cases/{id}/aftercare-plans")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<AftercarePlanView> listPlans(@PathParam("id") String id) {
        return plans.listPlans(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/aftercare-plans/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public AftercarePlanView getPlan(@PathParam("id") String id) {
        return plans.getPlan(Paging.uuid("id", id));
    }

    /** New steps from a day on; what was done stays done. */
    @POST
    @NeedsTag("aftercare-plan")
    @Path("/aftercare-plans/{id}/changes")
    @RolesAllowed(Role.CLINIC)
    public AftercarePlanView change(@PathParam("id") String id, @NotNull @Valid PlanEntries.ChangeEntry entry) {
        return plans.change(Paging.uuid("id", id), entry);
    }

    @POST
    @NeedsTag("aftercare-plan")
    @Path("/aftercare-plans/{id}/ending")
    @RolesAllowed(Role.CLINIC)
    public AftercarePlanView end(@PathParam("id") String id, @NotNull @Valid PlanEntries.PlanEndingEntry entry) {
        return plans.end(Paging.uuid("id", id), entry);
    }

    /** Ticks a task, skips it with a reason, or adds what was seen beside the plan. */
    @POST
    @Path("/cases/{id}/care-entries")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public RestResponse<CareEntryView> addEntry(
            @PathParam("id") String id, @NotNull @Valid PlanEntries.CareEntryEntry entry) {
        CareEntryView view = entries.add(Paging.uuid("id", id), entry);
        return RestResponse.ResponseBuilder.<CareEntryView>created(URI.create("/api/care-entries/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/cases/{id}/care-entries")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<CareEntryView> listEntries(
            @PathParam("id") String id,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return entries.listEntries(Paging.uuid("id", id), Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/care-entries/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public CareEntryView getEntry(@PathParam("id") String id) {
        return entries.getEntry(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("care-entry")
    @Path("/care-entries/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public CareEntryView correctEntry(
            @PathParam("id") String id, @NotNull @Valid PlanEntries.CareEntryCorrection correction) {
        return entries.correct(Paging.uuid("id", id), correction);
    }

    /** Takes an entry back: its task is open again. */
    @POST
    @NeedsTag("care-entry")
    @Path("/care-entries/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public CareEntryView withdrawEntry(
            @PathParam("id") String id, @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return entries.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }
}
