package org.culvert.exchange.tiles;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import org.culvert.geo.Bounds;
import org.culvert.geo.MercatorTile;
import org.culvert.platform.InvalidException;
import org.culvert.platform.PublicAddress;
import org.culvert.platform.RegionService;
import org.culvert.platform.RegionService.RegionDescription;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.jspecify.annotations.Nullable;

/** Roads of the current network as vector tiles. */
@Path("/tiles/roads")
public class RoadTileResource {
    private static final String MVT = "application/vnd.mapbox-vector-tile";

    /** From here on one tile has no more links than a map can draw. */
    private static final int SHALLOWEST = 6;

    /** Beyond it a map draws the tiles of this zoom larger: a unit is 9 mm at the equator. */
    private static final int DEEPEST = 16;

    private final RoadService roads;
    private final RegionService regions;
    private final PublicAddress address;

    RoadTileResource(RoadService roads, RegionService regions, PublicAddress address) {
        this.roads = roads;
        this.regions = regions;
        this.address = address;
    }

    /** What tiles there are (TileJSON 3.0.0): their address, their zooms, the box of the network, and what they tell of a link. */
    @GET
    @Path("/tiles.json")
    @Produces(MediaType.APPLICATION_JSON)
    @RolesAllowed("**")
    @APIResponse(
            responseCode = "200",
            description = "TileJSON 3.0.0",
            content = @Content(mediaType = MediaType.APPLICATION_JSON, schema = @Schema(type = SchemaType.OBJECT)))
    public String describe(@Context UriInfo uri) {
        CurrentRoads current = roads.current();
        String region = regions.findDescription().map(RegionDescription::name).orElse("Roads");
        ObjectNode told = JsonNodeFactory.instance
                .objectNode()
                .put("tilejson", "3.0.0")
                .put("name", region + ": roads")
                .put("version", current.number() + ".0.0")
                .put("minzoom", SHALLOWEST)
                .put("maxzoom", DEEPEST);
        told.putArray("tiles").add(address.of(uri.getBaseUri()) + "/tiles/roads/{z}/{x}/{y}.mvt");
        Bounds box = current.network().bounds();
        told.putArray("bounds").add(box.west()).add(box.south()).add(box.east()).add(box.north());
        ObjectNode fields = told.putArray("vector_layers")
                .addObject()
                .put("id", RoadTiles.LAYER)
                .put("description", "Links of the current network")
                .putObject("fields");
        RoadTiles.fields().forEach(fields::put);
        return told.toString();
    }

    /** A tile; one without any road is empty. */
    @GET
    @Path("/{z}/{x}/{y}.mvt")
    @Produces(MVT)
    @RolesAllowed("**")
    public Response getTile(
            @PathParam("z") String z, @PathParam("x") String x, @PathParam("y") String y, @Context Request request) {
        MercatorTile tile = tile(number("z", z), number("x", x), number("y", y));
        CurrentRoads current = roads.current();
        var tag = new EntityTag(current.networkId() + "-" + z + "-" + x + "-" + y);
        Response.ResponseBuilder same = request.evaluatePreconditions(tag);
        return (same != null ? same : Response.ok(RoadTiles.draw(current, tile)))
                .tag(tag)
                .header(HttpHeaders.CACHE_CONTROL, "private, no-cache")
                .header(HttpHeaders.VARY, "Authorization, Cookie")
                .build();
    }

    private static MercatorTile tile(int z, int x, int y) {
        if (z < SHALLOWEST || z > DEEPEST) {
            throw InvalidException.of("z", "There are no tiles of this zoom.", SHALLOWEST + " to " + DEEPEST);
        }
        int last = (1 << z) - 1;
        if (x > last || y > last) {
            throw InvalidException.of(x > last ? "x" : "y", "There is no such tile at zoom " + z + ".", "0 to " + last);
        }
        return new MercatorTile(z, x, y);
    }

    private static int number(String field, @Nullable String text) {
        if (text == null || !text.matches("[0-9]{1,7}")) {
            throw InvalidException.of(field, "This is no number of a tile.", "digits alone, as in 12/3753/2431");
        }
        return Integer.parseInt(text);
    }
}
