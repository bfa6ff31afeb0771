package org.culvert.road;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.io.InputStream;
import java.util.List;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Road networks: import, versions, links for maps. */
@Ledgered
@Path("/api/road-networks")
public class RoadNetworkResource {
    static final String GEO_JSON = "application/geo+json";

    private final RoadNetworkService networks;
    private final RoadLinkReader links;

    RoadNetworkResource(RoadNetworkService networks, RoadLinkReader links) {
        this.networks = networks;
        this.links = links;
    }

    /** Which attribute of the file holds what; leave out what it does not have. */
    public static class Attributes {
        @QueryParam("roadName")
        @Nullable
        String roadName;

        @QueryParam("ref")
        @Nullable
        String ref;

        @QueryParam("roadClass")
        @Nullable
        String roadClass;

        @QueryParam("speedLimit")
        @Nullable
        String speedLimit;

        @QueryParam("speedUnit")
        @Nullable
        String speedUnit;

        @QueryParam("aadt")
        @Nullable
        String aadt;

        @QueryParam("owner")
        @Nullable
        String owner;

        @QueryParam("carriageway")
        @Nullable
        String carriageway;

        @QueryParam("level")
        @Nullable
        String level;

        @QueryParam("bridge")
        @Nullable
        String bridge;

        @QueryParam("tunnel")
        @Nullable
        String tunnel;

        @QueryParam("startMeasure")
        @Nullable
        String startMeasure;

        @QueryParam("startMeasureUnit")
        @Nullable
        String startMeasureUnit;

        AttributeNames names() {
            return new AttributeNames(
                    roadName,
                    ref,
                    roadClass,
                    speedLimit,
                    speedUnit,
                    aadt,
                    owner,
                    carriageway,
                    level,
                    bridge,
                    tunnel,
                    startMeasure,
                    startMeasureUnit);
        }
    }

    @GET
    @RolesAllowed("**")
    public List<RoadNetworkView> listNetworks() {
        return networks.listNetworks();
    }

    @POST
    @Consumes({GEO_JSON, MediaType.APPLICATION_JSON})
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public RoadNetworkView importNetwork(
            @QueryParam("name") @Nullable String name,
            @QueryParam("crs") @Nullable String crs,
            @BeanParam Attributes attributes,
            InputStream geoJson) {
        return networks.importNetwork(name == null ? "roads" : name, crs, attributes.names(), geoJson);
    }

    @GET
    @Path("/current/links")
    @Produces(GEO_JSON)
    @RolesAllowed("**")
    public RoadLinkFeatures listLinks(
            @QueryParam("bbox") @Nullable String bbox,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return links.listLinks(bbox, limit, cursor);
    }
}
