package org.culvert.web.place;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.culvert.platform.InvalidException;
import org.culvert.web.desk.DeskReading;
import org.jspecify.annotations.Nullable;

/** A place as it is being typed into a form: what is meant by it, and how the line may go on. */
@Path("/places")
@Produces(MediaType.TEXT_HTML)
public class PlacePageResource {
    private static final String NAME = "[A-Za-z][A-Za-z0-9.-]{0,80}";

    private final Template where;
    private final DeskReading reading;

    PlacePageResource(@Location("desk-where.html") Template where, DeskReading reading) {
        this.where = where;
        this.reading = reading;
    }

    /**
     * Tells nothing of incidents near it, which the desk alone is shown.
     *
     * @param field by which the text is sent
     * @param list where on the page the suggestions stand
     */
    @GET
    @Path("/reading")
    @RolesAllowed("**")
    public TemplateInstance read(
            @QueryParam("field") @Nullable String field,
            @QueryParam("list") @Nullable String list,
            @Context UriInfo address) {
        String typed = address.getQueryParameters().getFirst(name("field", field));
        DeskReading.SoFar read = reading.read(typed, at -> List.of());
        return where.data("where", read.where())
                .data("placeErrors", read.errors())
                .data("suggested", read.suggested())
                .data("list", name("list", list))
                .data("fragment", true);
    }

    private static String name(String parameter, @Nullable String told) {
        if (told == null || !told.matches(NAME)) {
            throw InvalidException.of(parameter, "This is no name of a field.", "the name of a field of the form");
        }
        return told;
    }
}
