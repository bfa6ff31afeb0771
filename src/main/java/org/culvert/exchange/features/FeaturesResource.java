package org.culvert.exchange.features;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.Map;
import java.util.Set;
import org.culvert.platform.PublicAddress;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jspecify.annotations.Nullable;

/**
 * Layers for GIS programs by OGC API - Features. Every operation is open to everybody; of collections each is told what they
 * may see, and who asks for another is refused. The form of an answer is chosen here, since a parameter may say it too.
 */
@Path("/ogc")
public class FeaturesResource {
    private static final String PATH = "/ogc";

    private final FeatureService service;
    private final OpenCollections collections;
    private final QueryReader reader;
    private final ApiDocument api;
    private final SchemaDocument schemas;
    private final PublicAddress address;
    private final UriInfo uri;
    private final HttpHeaders headers;

    FeaturesResource(
            FeatureService service,
            OpenCollections collections,
            QueryReader reader,
            ApiDocument api,
            SchemaDocument schemas,
            PublicAddress address,
            UriInfo uri,
            HttpHeaders headers) {
        this.service = service;
        this.collections = collections;
        this.reader = reader;
        this.api = api;
        this.schemas = schemas;
        this.address = address;
        this.uri = uri;
        this.headers = headers;
    }

    @GET
    @PermitAll
    @APIResponseSchema(value = LandingPage.class, responseDescription = "Where programs begin")
    public Response getLandingPage(@QueryParam("f") @Nullable String format) {
        LinkMaker links = links("", Set.of(), format);
        return answer(service.landing(links), WebLink.JSON, links);
    }

    @GET
    @Path("/conformance")
    @PermitAll
    @APIResponseSchema(value = Conformance.class, responseDescription = "Standards that are kept")
    public Response getConformance(@QueryParam("f") @Nullable String format) {
        return answer(Conformance.HERE, WebLink.JSON, links("/conformance", Set.of(), format));
    }

    /** What can be asked of the collections that the asker may see, as OpenAPI 3.0.3. */
    @GET
    @Path("/api")
    @PermitAll
    @APIResponseSchema(value = String.class, responseDescription = "OpenAPI 3.0.3")
    public Response getApi(@QueryParam("f") @Nullable String format) {
        LinkMaker links = links("/api", Set.of(), format);
        return text(api.of(links), WebLink.OPENAPI, links);
    }

    @GET
    @Path("/collections")
    @PermitAll
    @APIResponseSchema(value = CollectionList.class, responseDescription = "Collections that the asker may see")
    public Response listCollections(@QueryParam("f") @Nullable String format) {
        LinkMaker links = links("/collections", Set.of(), format);
        return answer(service.collections(links), WebLink.JSON, links);
    }

    @GET
    @Path("/collections/{collectionId}")
    @PermitAll
    @APIResponseSchema(value = CollectionDescription.class, responseDescription = "The collection")
    public Response getCollection(
            @PathParam("collectionId") String collectionId, @QueryParam("f") @Nullable String format) {
        FeatureSource source = collections.require(collectionId);
        LinkMaker links = links(LinkMaker.collection(source.id()), Set.of(), format);
        return answer(service.describe(links, source), WebLink.JSON, links);
    }

    /** What each property is, as JSON Schema. */
    @GET
    @Path("/collections/{collectionId}/schema")
    @PermitAll
    @APIResponseSchema(value = String.class, responseDescription = "JSON Schema")
    public Response getSchema(
            @PathParam("collectionId") String collectionId, @QueryParam("f") @Nullable String format) {
        FeatureSource source = collections.require(collectionId);
        String path = LinkMaker.collection(source.id()) + "/schema";
        LinkMaker links = links(path, Set.of(), format);
        return text(schemas.of(source, links.to(path)), WebLink.SCHEMA, links);
    }

    /**
     * A page of features. Each property that the collection's schema and the document at {@code /ogc/api} name as such can be
     * asked for by {@code name=value}.
     *
     * @param limit 1 to 10000; 100 when left out, and 10000 where it is greater
     * @param bbox west, south, east, north in degrees
     * @param datetime an instant or an interval of RFC 3339
     * @param cursor as the next link of the page before has it
     */
    @GET
    @Path("/collections/{collectionId}/items")
    @PermitAll
    @APIResponseSchema(value = FeaturePage.class, responseDescription = "A page of features")
    public Response listFeatures(
            @PathParam("collectionId") String collectionId,
            @QueryParam("limit") @Nullable String limit,
            @QueryParam("bbox") @Nullable String bbox,
            @QueryParam("datetime") @Nullable String datetime,
            @QueryParam("cursor") @Nullable String cursor,
            @QueryParam("f") @Nullable String format) {
        FeatureSource source = collections.require(collectionId);
        LinkMaker links = links(LinkMaker.items(source.id()), reader.names(source), format);
        return answer(service.items(links, source, links.parameters()), WebLink.GEO_JSON, links);
    }

    @GET
    @Path("/collections/{collectionId}/items/{featureId}")
    @PermitAll
    @APIResponseSchema(value = MapFeature.class, responseDescription = "The feature")
    public Response getFeature(
            @PathParam("collectionId") String collectionId,
            @PathParam("featureId") String featureId,
            @QueryParam("f") @Nullable String format) {
        FeatureSource source = collections.require(collectionId);
        LinkMaker links = links(LinkMaker.item(source.id(), featureId), Set.of(), format);
        return answer(service.item(links, source, featureId), WebLink.GEO_JSON, links);
    }

    private LinkMaker links(String path, Set<String> known, @Nullable String format) {
        Map<String, String> parameters = QueryReader.read(uri.getQueryParameters(), known);
        return new LinkMaker(
                address.of(uri.getBaseUri()) + PATH,
                path,
                parameters,
                QueryReader.wantsPage(format, headers.getHeaderString(HttpHeaders.ACCEPT)));
    }

    private static Response text(ObjectNode document, String type, LinkMaker links) {
        return answer(document.toPrettyString(), type, links);
    }

    /** As a page it is drawn by the room of pages, from what a program would be answered. */
    private static Response answer(Object told, String type, LinkMaker links) {
        return Response.ok(told, MediaType.valueOf(links.html() ? WebLink.HTML : type))
                .header(HttpHeaders.VARY, "Accept, Authorization")
                .build();
    }
}
