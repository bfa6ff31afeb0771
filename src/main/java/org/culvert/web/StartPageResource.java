package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.culvert.platform.RegionService;

/** The first page. */
@Path("/")
@PermitAll
@Produces(MediaType.TEXT_HTML)
public class StartPageResource {
    private final Template start;
    private final RegionService regions;

    StartPageResource(@Location("start.html") Template start, RegionService regions) {
        this.start = start;
        this.regions = regions;
    }

    @GET
    public TemplateInstance show() {
        var told = regions.findDescription();
        return start.data("regionName", told.map(region -> region.name()).orElse("A region yet to be named"));
    }
}
