package org.culvert.exchange.features;

import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import java.util.Map;
import org.culvert.platform.NotFoundException;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.jspecify.annotations.Nullable;

/**
 * Whole layers as files, for programs that would rather open one: all features of a collection that the asker may see, or those
 * that the parameters of its features ask for, with no pages.
 */
@Path("/ogc/collections/{collectionId}/layer.{form}")
public class LayerFileResource {
    private final LayerFileService service;
    private final OpenCollections collections;
    private final QueryReader reader;
    private final UriInfo uri;

    LayerFileResource(LayerFileService service, OpenCollections collections, QueryReader reader, UriInfo uri) {
        this.service = service;
        this.collections = collections;
        this.reader = reader;
        this.uri = uri;
    }

    /**
     * All features at once: as a GeoPackage with one layer (OGC 12-128), as GeoJSON (RFC 7946), or as a table (RFC 4180) in which
     * points have longitude and latitude, lines are well-known text, and words that a spreadsheet would take for a formula begin
     * with an apostrophe.
     *
     * @param form gpkg, geojson or csv
     * @param bbox west, south, east, north in degrees
     * @param datetime an instant or an interval of RFC 3339
     */
    @GET
    @PermitAll
    @APIResponse(
            responseCode = "200",
            description = "The layer",
            content = {
                @Content(mediaType = WebLink.GEOPACKAGE, schema = @Schema(type = SchemaType.STRING, format = "binary")),
                @Content(mediaType = WebLink.GEO_JSON, schema = @Schema(type = SchemaType.OBJECT)),
                @Content(mediaType = WebLink.CSV, schema = @Schema(type = SchemaType.STRING))
            })
    public Response getLayer(
            @PathParam("collectionId") String collectionId,
            @PathParam("form") String form,
            @QueryParam("bbox") @Nullable String bbox,
            @QueryParam("datetime") @Nullable String datetime) {
        FeatureSource source = collections.require(collectionId);
        Map<String, String> parameters = QueryReader.read(uri.getQueryParameters(), reader.namesOfFiles(source));
        return switch (form) {
            case "gpkg" -> answer(service.geoPackage(source, parameters), WebLink.GEOPACKAGE, source, form);
            case "geojson" -> answer(service.geoJson(source, parameters), WebLink.GEO_JSON, source, form);
            case "csv" -> answer(service.table(source, parameters), WebLink.CSV, source, form);
            default -> throw new NotFoundException("form of a layer (gpkg, geojson or csv)", form);
        };
    }

    private static Response answer(InputStream file, String type, FeatureSource source, String form) {
        return Response.ok(file, MediaType.valueOf(type))
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + source.id() + "." + form + '"')
                .header(HttpHeaders.VARY, "Authorization")
                .build();
    }
}
