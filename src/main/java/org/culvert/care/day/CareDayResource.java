package org.culvert.care.day;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.net.URI;
import java.util.List;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** A carer's day, and the tasks that a coordinator hears of. */
@Ledgered
@Path("/api")
public class CareDayResource {
    private final CareDayService days;
    private final MissedTaskService missed;

    CareDayResource(CareDayService days, MissedTaskService missed) {
        this.days = days;
        this.missed = missed;
    }

    /** Each animal that a member holds on a day, and what is to be done: their own, or as far as a clinic sees them. */
    @GET
    @Path("/members/{id}/care-day")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public CareDayView getDay(@PathParam("id") String id, @QueryParam("date") @Nullable String date) {
        return days.getDay(Paging.uuid("id", id), date == null ? null : Paging.day("date", date));
    }

    /** Steps that were missed, and of which nothing was done or skipped since, as far as a rule tells of them. */
    @GET
    @Path("/missed-tasks")
    @RolesAllowed(Role.COORDINATOR)
    public Page<MissedTaskService.MissedTaskView> listMissed(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return missed.listMissed(Paging.limit(limit), cursor);
    }

    @GET
    @Path("/missed-task-rules")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public List<MissedTaskService.MissedTaskRuleView> listRules() {
        return missed.listRules();
    }

    @POST
    @Path("/missed-task-rules")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<MissedTaskService.MissedTaskRuleView> enterRule(
            @NotNull @Valid MissedTaskService.MissedTaskRuleEntry entry) {
        MissedTaskService.MissedTaskRuleView view = missed.enter(entry);
        return RestResponse.ResponseBuilder.<MissedTaskService.MissedTaskRuleView>created(
                        URI.create("/api/missed-task-rules/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Tagged
    @Path("/missed-task-rules/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public MissedTaskService.MissedTaskRuleView getRule(@PathParam("id") String id) {
        return missed.getRule(Paging.uuid("id", id));
    }

    @POST
    @NeedsTag("missed-task-rule")
    @Path("/missed-task-rules/{id}/ending")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public MissedTaskService.MissedTaskRuleView endRule(
            @PathParam("id") String id, @NotNull @Valid MissedTaskService.MissedTaskRuleEnding ending) {
        return missed.end(Paging.uuid("id", id), ending);
    }
}
