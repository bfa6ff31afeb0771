package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.culvert.platform.Region;
import org.culvert.platform.RegionService;

/** The first page. */
@Path("/")
@PermitAll
@Produces(MediaType.TEXT_HTML)
public class StartPageResource {
    private final Template start;
    private final RegionService region;

    StartPageResource(@Location("start.html") Template start, RegionService region) {
        this.start = start;
        this.region = region;
    }

    @GET
    public TemplateInstance show() {
        return start.data("regionName", region.findRegion().map(Region::name).orElse("A region yet to be named"))
                .data("demo", region.findRegion().map(Region::demo).orElse(false));
    }
}
