package org.culvert.exchange.geopackage;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import java.util.UUID;
import org.culvert.hotspot.HotspotRunService;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.RestResponse;

/** Hotspots as a GeoPackage. */
@Ledgered
@Path("/api/hotspot-runs/{id}/hotspots.gpkg")
public class HotspotGeoPackageResource {
    /** Registered with IANA. */
    private static final String GEOPACKAGE = "application/geopackage+sqlite3";

    private final HotspotRunService runs;

    HotspotGeoPackageResource(HotspotRunService runs) {
        this.runs = runs;
    }

    /** What the GeoJSON of the same report says, in one layer. */
    @GET
    @Produces(GEOPACKAGE)
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public RestResponse<byte[]> getGeoPackage(@PathParam("id") String id) {
        UUID run = Paging.uuid("id", id);
        return RestResponse.ResponseBuilder.ok(HotspotGeoPackage.of(
                        runs.getReport(run), runs.getRun(run).requestedAt()))
                .header("Content-Disposition", "attachment; filename=\"hotspots.gpkg\"")
                .build();
    }
}
