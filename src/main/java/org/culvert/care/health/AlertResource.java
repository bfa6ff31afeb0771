package org.culvert.care.health;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Alerts where animals with one syndrome are near in place and time. */
@Ledgered
@Path("/api/health-alerts")
public class AlertResource {
    private final AlertService alerts;

    AlertResource(AlertService alerts) {
        this.alerts = alerts;
    }

    /** Alerts, newest first; with {@code unread}, those that nobody has read, or not since they grew. */
    @GET
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR, Role.OFFICER})
    public Page<HealthAlertView> listAlerts(
            @QueryParam("unread") @DefaultValue("false") boolean unread,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return alerts.listAlerts(unread, Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR, Role.OFFICER})
    public HealthAlertView getAlert(@PathParam("id") String id) {
        return alerts.getAlert(Paging.uuid("id", id));
    }

    /** Says that somebody has read it, and what they say to it; it stands all the same. */
    @POST
    @Path("/{id}/acknowledgements")
    @ResponseStatus(201)
    @RolesAllowed({Role.CLINIC, Role.COORDINATOR, Role.OFFICER})
    public HealthAlertView acknowledge(
            @PathParam("id") String id, @NotNull @Valid SyndromeEntries.AcknowledgementEntry entry) {
        return alerts.acknowledge(Paging.uuid("id", id), entry);
    }
}
