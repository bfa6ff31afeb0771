package org.culvert.web.traffic;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.road.SaidPlaces;
import org.culvert.road.traffic.TrafficCountKind;
import org.culvert.road.traffic.TrafficCountService;
import org.culvert.road.traffic.TrafficCountService.TrafficCountEntry;
import org.culvert.road.traffic.TrafficCountService.TrafficCountView;
import org.culvert.road.traffic.TrafficDirections;
import org.culvert.road.traffic.TrafficMeasure;
import org.culvert.web.PageForms;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** How many vehicles go where: what is known, and counts that somebody types. */
@OwnForm
@Path("/traffic")
@Produces(MediaType.TEXT_HTML)
public class TrafficPageResource {
    private static final int SHOWN = 50;

    private final Template list;
    private final TrafficCountService counts;
    private final SaidPlaces said;
    private final FormBodies bodies;
    private final ObjectMapper mapper;
    private final PageForms forms;

    TrafficPageResource(
            @Location("traffic.html") Template list,
            TrafficCountService counts,
            SaidPlaces said,
            FormBodies bodies,
            ObjectMapper mapper,
            PageForms forms) {
        this.list = list;
        this.counts = counts;
        this.said = said;
        this.bodies = bodies;
        this.mapper = mapper;
        this.forms = forms;
    }

    /** A count in a row of the table. */
    public record Row(TrafficCountView count, String kilometres) {
        static Row of(TrafficCountView count) {
            return new Row(count, TriedCounts.kilometres(count.fromChainageMetres(), count.toChainageMetres()));
        }
    }

    /**
     * What is known, newest first.
     *
     * @param entered how many counts somebody has just typed
     */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ROADS_AUTHORITY, Role.OFFICER, Role.ADMIN})
    public Response show(
            @QueryParam("road") @Nullable String road,
            @QueryParam("year") @Nullable String year,
            @QueryParam("cursor") @Nullable String cursor,
            @QueryParam("entered") @Nullable Integer entered) {
        return forms.shown(
                () -> page(200, road, year, cursor, new TrafficCountForm(), entered, List.of()),
                (why, errors) -> page(why.status(), null, null, null, new TrafficCountForm(), null, errors));
    }

    /** Keeps a count that somebody typed. */
    @POST
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response enter(@BeanParam TrafficCountForm form, @FormParam("csrf") @Nullable String csrf) {
        return forms.tried(
                () -> {
                    TrafficCountEntry entry = form.entry(mapper, said, bodies);
                    return forms.take("/traffic", form.key, entry, () -> {
                        counts.enter(entry);
                        return URI.create("/traffic?entered=1");
                    });
                },
                (why, errors) -> page(why.status(), null, null, null, form, null, errors));
    }

    /** Takes a count back. */
    @POST
    @Path("/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response withdraw(
            @PathParam("id") String id,
            @FormParam("reason") @Nullable String reason,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID count = Paging.uuid("id", id);
        String because = Objects.requireNonNullElse(Typed.given(reason), "");
        return forms.tried(
                () -> {
                    var withdrawal = bodies.read(
                            mapper.createObjectNode().put("reason", because),
                            TrafficCountService.TrafficCountWithdrawal.class);
                    return forms.take("/traffic/" + count + "/withdrawal", key, because, () -> {
                        counts.withdraw(count, withdrawal.reason());
                        return URI.create("/traffic");
                    });
                },
                (why, errors) -> page(why.status(), null, null, null, new TrafficCountForm(), null, errors));
    }

    private Response page(
            int status,
            @Nullable String road,
            @Nullable String year,
            @Nullable String cursor,
            TrafficCountForm form,
            @Nullable Integer entered,
            List<FieldError> errors) {
        String ofYear = Typed.given(year);
        Integer asked = null;
        if (ofYear != null) {
            if (!ofYear.matches("\\d{4}")) {
                throw InvalidException.of("year", "No such year is meant.", "a calendar year such as 2024");
            }
            asked = Integer.valueOf(ofYear);
        }
        Page<TrafficCountView> found =
                counts.listCounts(Typed.given(road), asked, null, null, null, SHOWN, Paging.cursor(cursor));
        return PageForms.html(
                status,
                list.data("counts", found.items().stream().map(Row::of).toList())
                        .data("next", found.next())
                        .data("road", Objects.requireNonNullElse(Typed.given(road), ""))
                        .data("year", Objects.requireNonNullElse(ofYear, ""))
                        .data("entered", entered)
                        .data("form", form)
                        .data("errors", errors)
                        .data("measures", names(TrafficMeasure.values()))
                        .data("kinds", names(TrafficCountKind.values()))
                        .data("directions", names(TrafficDirections.values()))
                        .data("key", UUID.randomUUID().toString()));
    }

    private static List<String> names(Enum<?>[] values) {
        return Stream.of(values).map(Enum::name).toList();
    }
}
