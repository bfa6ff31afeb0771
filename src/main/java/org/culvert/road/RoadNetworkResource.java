package org.culvert.road;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.io.InputStream;
import java.util.List;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.road.RoadNetworkService.Format;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Road networks: import, versions, links for maps. */
@Ledgered
@Path("/api/road-networks")
public class RoadNetworkResource {
    static final String GEO_JSON = "application/geo+json";

    /** Registered with IANA. */
    static final String GEO_PACKAGE = "application/geopackage+sqlite3";

    /** Not registered; used for extracts of OpenStreetMap in its protocol buffers. */
    static final String OPEN_STREET_MAP = "application/x-osm-pbf";

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

        @QueryParam("oneWay")
        @Nullable
        String oneWay;

        @QueryParam("lanes")
        @Nullable
        String lanes;

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
                    startMeasureUnit,
                    oneWay,
                    lanes);
        }
    }

    @GET
    @RolesAllowed("**")
    public List<RoadNetworkView> listNetworks() {
        return networks.listNetworks();
    }

    /** Takes GeoJSON, a GeoPackage or an extract of OpenStreetMap (.osm.pbf), told apart by the type of what is sent. */
    @POST
    @Consumes({GEO_JSON, MediaType.APPLICATION_JSON, GEO_PACKAGE, OPEN_STREET_MAP})
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public RoadNetworkView importNetwork(
            @QueryParam("name") @Nullable String name,
            @QueryParam("crs") @Nullable String crs,
            @QueryParam("layer") @Nullable String layer,
            @BeanParam Attributes attributes,
            @Context HttpHeaders headers,
            InputStream file) {
        return networks.importNetwork(
                format(headers.getMediaType()), name == null ? "roads" : name, crs, layer, attributes.names(), file);
    }

    private static Format format(MediaType type) {
        return switch (type.getType() + "/" + type.getSubtype()) {
            case GEO_PACKAGE -> Format.GEO_PACKAGE;
            case OPEN_STREET_MAP -> Format.OPEN_STREET_MAP;
            default -> Format.GEO_JSON;
        };
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
