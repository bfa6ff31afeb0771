package org.culvert.care.calendar;

import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.util.HexFormat;
import org.culvert.platform.account.Secrets;

/** Calendars for programs that read them again and again: the address is the right, and nobody signs in. */
@Path("/calendars")
public class CalendarFeedResource {
    /** Kept by the program that reads it, which asks each time whether it has changed or was revoked. */
    private static final String KEEPING = "private, no-cache";

    private final CalendarService service;

    CalendarFeedResource(CalendarService service) {
        this.service = service;
    }

    /** A member's tasks from 35 days back to 400 days ahead, as iCalendar. */
    @GET
    @PermitAll
    @Path("/{token}.ics")
    @Produces("text/calendar;charset=UTF-8")
    public Response read(@PathParam("token") String token, @Context Request request) {
        String text = service.read(token);
        var tag = new EntityTag(HexFormat.of().formatHex(Secrets.digest(text)));
        Response.ResponseBuilder known = request.evaluatePreconditions(tag);
        return (known == null ? Response.ok(text) : known)
                .tag(tag)
                .header("Cache-Control", KEEPING)
                .build();
    }
}
