package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.culvert.platform.RegionService;

/**
 * The first page, which says what each place is for, and the way to the place where somebody's work waits. Whoever signs in
 * is led there; the page itself leads nobody on, so that it can be looked at.
 */
@Path("/")
@PermitAll
@Produces(MediaType.TEXT_HTML)
public class StartPageResource {
    /** What is done today first, programs last. */
    private static final List<String> ORDER = List.of("now", "animals", "roads", "papers", "network", "programs");

    private final Template start;
    private final RegionService regions;
    private final Places places;

    StartPageResource(@Location("start.html") Template start, RegionService regions, Places places) {
        this.start = start;
        this.regions = regions;
        this.places = places;
    }

    /** Places that belong together. */
    public record Group(String key, List<Places.Place> places) {}

    @GET
    public TemplateInstance show() {
        Map<String, List<Places.Place>> groups = new LinkedHashMap<>();
        ORDER.forEach(group -> groups.put(group, new ArrayList<>()));
        places.open()
                .forEach(place -> groups.computeIfAbsent(place.group(), group -> new ArrayList<>())
                        .add(place));
        return start.data(
                        "regionName",
                        regions.findDescription()
                                .map(RegionService.RegionDescription::name)
                                .orElse(""))
                .data("first", places.first())
                .data(
                        "groups",
                        groups.entrySet().stream()
                                .filter(group -> !group.getValue().isEmpty())
                                .map(group -> new Group(group.getKey(), group.getValue()))
                                .toList());
    }

    /** To the place where the work of whoever has just signed in waits. */
    @GET
    @Path("first")
    public Response goOn() {
        Places.Place first = places.first();
        return Response.seeOther(URI.create(first == null ? "/" : first.path())).build();
    }
}
