package org.culvert.care.clock;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import org.culvert.care.clock.limit.Running.State;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;
import org.jspecify.annotations.Nullable;

/** Clocks of cases, what extends them, and notices that end them. */
@Ledgered
@Path("/api")
public class ClockResource {
    private final ClockService clocks;
    private final ExtensionService extensions;
    private final NoticeService notices;

    ClockResource(ClockService clocks, ExtensionService extensions, NoticeService notices) {
        this.clocks = clocks;
        this.extensions = extensions;
        this.notices = notices;
    }

    /** How the limits of time stand for a case, computed when it is asked. */
    @GET
    @Path("/cases/{id}/clocks")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public ClockViews.CaseClocksView ofCase(@PathParam("id") String id) {
        return clocks.ofCase(Paging.uuid("id", id));
    }

    /**
     * Clocks of open cases, and of ended ones of which an authority is still to be told, by when they are due; those of
     * which that is not known last.
     *
     * @param state one state; left out: all that have not ended
     */
    @GET
    @Path("/clocks")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public Page<ClockViews.CaseClockView> listClocks(
            @QueryParam("state")
                    @Nullable
                    @Pattern(
                            regexp = "running|warned|overdue|endedInTime|endedLate|cantTell",
                            message = "must be running, warned, overdue, endedInTime, endedLate or cantTell")
                    String state,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return clocks.listClocks(state == null ? null : State.valueOf(state), Paging.limit(limit), cursor);
    }

    @POST
    @Path("/cases/{id}/clock-extensions")
    @RolesAllowed(Role.COORDINATOR)
    public RestResponse<ClockViews.ClockExtensionView> extend(
            @PathParam("id") String id, @NotNull @Valid ClockEntries.ClockExtensionEntry entry) {
        ClockViews.ClockExtensionView extension = extensions.extend(Paging.uuid("id", id), entry);
        return ResponseBuilder.<ClockViews.ClockExtensionView>created(
                        URI.create("/api/clock-extensions/" + extension.id()))
                .entity(extension)
                .build();
    }

    /** Extends one limit for many cases by an order: all that it binds, or, where anything is wrong, none. */
    @POST
    @ResponseStatus(201)
    @Path("/clock-extensions")
    @RolesAllowed(Role.COORDINATOR)
    public ClockViews.OrderDoneView extendMany(@NotNull @Valid ClockEntries.OrderForManyEntry entry) {
        return extensions.extendMany(entry);
    }

    @GET
    @Tagged
    @Path("/clock-extensions/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public ClockViews.ClockExtensionView getExtension(@PathParam("id") String id) {
        return extensions.getExtension(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clock-extension")
    @Path("/clock-extensions/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed(Role.COORDINATOR)
    public ClockViews.ClockExtensionView correctExtension(
            @PathParam("id") String id, @NotNull @Valid ClockEntries.ClockExtensionCorrection correction) {
        return extensions.correct(Paging.uuid("id", id), correction);
    }

    /** Takes an extension back: it is kept and shown, and the limit ends as if it had not been. */
    @POST
    @NeedsTag("clock-extension")
    @Path("/clock-extensions/{id}/withdrawal")
    @RolesAllowed(Role.COORDINATOR)
    public ClockViews.ClockExtensionView withdrawExtension(
            @PathParam("id") String id, @NotNull @Valid ClockEntries.ClockWithdrawal withdrawal) {
        return extensions.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }

    /** Records that an authority was told what a limit asks to be told. */
    @POST
    @Path("/cases/{id}/notices")
    @RolesAllowed({Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public RestResponse<ClockViews.ClockNoticeView> notice(
            @PathParam("id") String id, @NotNull @Valid ClockEntries.ClockNoticeEntry entry) {
        ClockViews.ClockNoticeView notice = notices.record(Paging.uuid("id", id), entry);
        return ResponseBuilder.<ClockViews.ClockNoticeView>created(URI.create("/api/clock-notices/" + notice.id()))
                .entity(notice)
                .build();
    }

    @GET
    @Tagged
    @Path("/clock-notices/{id}")
    @RolesAllowed({Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public ClockViews.ClockNoticeView getNotice(@PathParam("id") String id) {
        return notices.getNotice(Paging.uuid("id", id));
    }

    /** Takes back that somebody was told: it is kept and shown, and ends nothing. */
    @POST
    @NeedsTag("clock-notice")
    @Path("/clock-notices/{id}/withdrawal")
    @RolesAllowed({Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public ClockViews.ClockNoticeView withdrawNotice(
            @PathParam("id") String id, @NotNull @Valid ClockEntries.ClockWithdrawal withdrawal) {
        return notices.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }
}
