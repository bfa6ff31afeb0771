package org.culvert.care.calendar;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.ShownOnce;
import org.jboss.resteasy.reactive.ResponseStatus;

/** Addresses at which a member's own programs read their tasks as a calendar. */
@Ledgered
@Path("/api/members/{id}/calendars")
public class CareCalendarResource {
    private final CalendarService service;

    CareCalendarResource(CalendarService service) {
        this.service = service;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CARER})
    public List<CalendarService.CareCalendarView> listCalendars(@PathParam("id") String id) {
        return service.listCalendars(Paging.uuid("id", id));
    }

    /** Makes an address, which is shown this once; a member has one at a time. */
    @POST
    @ShownOnce
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CARER})
    public CalendarService.CareCalendarMade makeCalendar(@PathParam("id") String id) {
        return service.make(Paging.uuid("id", id));
    }

    /** Revokes an address: from now on it answers 404. */
    @POST
    @Path("/{calendarId}/revocation")
    @RolesAllowed({Role.COORDINATOR, Role.CARER})
    public CalendarService.CareCalendarView revokeCalendar(
            @PathParam("id") String id, @PathParam("calendarId") String calendarId) {
        return service.revoke(Paging.uuid("id", id), Paging.uuid("calendarId", calendarId));
    }
}
