package org.culvert.exchange.features;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/**
 * What can be asked of the collections that the asker may see, as OpenAPI 3.0.3 with their literal addresses: GIS programs read
 * off it the sizes of pages and which properties they may filter by, and take neither templates nor later versions.
 */
@ApplicationScoped
class ApiDocument {
    private static final String LAST_PARAMETER = "format";

    private final FeatureCatalogue catalogue;
    private final FeatureService service;
    private final ObjectMapper mapper;

    ApiDocument(FeatureCatalogue catalogue, FeatureService service, ObjectMapper mapper) {
        this.catalogue = catalogue;
        this.service = service;
        this.mapper = mapper;
    }

    ObjectNode of(LinkMaker links) {
        ObjectNode api = mapper.createObjectNode();
        api.put("openapi", "3.0.3");
        ObjectNode info = api.putObject("info");
        info.put("title", service.title());
        info.put(
                "description",
                "Collections of features by OGC API - Features 1.0.1, with a token as the password of Basic.");
        info.put("version", "1");
        info.putObject("license").put("name", "Apache-2.0");
        api.putArray("servers").addObject().put("url", links.to(""));
        ArrayNode security = api.putArray("security");
        security.addObject();
        security.addObject().putArray("basic");
        security.addObject().putArray("bearer");
        ObjectNode paths = api.putObject("paths");
        get(paths, "/", "landingPage", "Where programs begin", WebLink.JSON, List.of());
        get(paths, "/conformance", "conformance", "Standards that are kept", WebLink.JSON, List.of());
        get(paths, "/api", "api", "This document", WebLink.OPENAPI, List.of());
        get(paths, "/collections", "collections", "Collections", WebLink.JSON, List.of());
        catalogue.listOpen().forEach(source -> add(paths, source));
        components(api.putObject("components"));
        return api;
    }

    private void add(ObjectNode paths, FeatureSource source) {
        String collection = LinkMaker.collection(source.id());
        String name = source.id().replace("-", "");
        get(paths, collection, name, source.title(), WebLink.JSON, List.of());
        get(
                paths,
                collection + "/schema",
                name + "Schema",
                "Properties of " + source.title(),
                WebLink.SCHEMA,
                List.of());
        ObjectNode items = get(
                paths,
                LinkMaker.items(source.id()),
                name + "Items",
                source.description(),
                WebLink.GEO_JSON,
                List.of("limit", "bbox", "datetime", "cursor"));
        ArrayNode parameters = (ArrayNode) items.get("parameters");
        for (FeatureProperty property : catalogue.filters(source)) {
            ObjectNode parameter = parameters.addObject();
            parameter.put("name", property.name());
            parameter.put("in", "query");
            parameter.put("description", property.description());
            parameter.put("required", false);
            parameter.put("style", "form");
            parameter.put("explode", false);
            parameter.putObject("schema").put("type", property.type());
        }
        ObjectNode item = get(
                paths,
                LinkMaker.items(source.id()) + "/{featureId}",
                name + "Item",
                "One feature of " + source.title(),
                WebLink.GEO_JSON,
                List.of("featureId"));
        response(item, "404", "Nothing is there, or nothing that the asker may see");
    }

    private static ObjectNode get(
            ObjectNode paths, String path, String name, String words, String type, List<String> parameters) {
        ObjectNode operation = paths.putObject(path).putObject("get");
        operation.put("operationId", name);
        operation.put("summary", words);
        ArrayNode told = operation.putArray("parameters");
        parameters.forEach(parameter -> told.addObject().put("$ref", "#/components/parameters/" + parameter));
        told.addObject().put("$ref", "#/components/parameters/" + LAST_PARAMETER);
        ObjectNode ok = operation.putObject("responses").putObject("200");
        ok.put("description", words);
        ObjectNode content = ok.putObject("content");
        content.putObject(type).putObject("schema").put("type", "object");
        content.putObject(WebLink.HTML).putObject("schema").put("type", "string");
        response(operation, "400", "A parameter is not known, or has no such value; the problem names it");
        response(operation, "401", "Nobody is signed in, or the token does not fit");
        response(operation, "403", "The role or the token does not reach that");
        response(operation, "500", "The server made a mistake");
        return operation;
    }

    private static void response(ObjectNode operation, String status, String words) {
        ObjectNode response = ((ObjectNode) operation.get("responses")).putObject(status);
        response.put("description", words);
        response.putObject("content")
                .putObject("application/problem+json")
                .putObject("schema")
                .put("$ref", "#/components/schemas/problem");
    }

    private static void components(ObjectNode components) {
        ObjectNode parameters = components.putObject("parameters");
        parameter(parameters, "limit", "limit", "How many features a page has at most")
                .put("type", "integer")
                .put("minimum", 1)
                .put("maximum", QueryReader.MAXIMUM_LIMIT)
                .put("default", QueryReader.DEFAULT_LIMIT);
        ObjectNode box = parameter(
                parameters,
                "bbox",
                "bbox",
                "Features that have a part in a box: west, south, east, north in degrees on WGS 84; those without a place too");
        box.put("type", "array").put("minItems", 4).put("maxItems", 6);
        box.putObject("items").put("type", "number");
        parameter(
                        parameters,
                        "datetime",
                        "datetime",
                        "Features of an instant or an interval, such as 2026-01-01T00:00:00Z/..; those without a time too")
                .put("type", "string");
        parameter(parameters, "cursor", "cursor", "Where a page begins, as the next link of the page before says")
                .put("type", "string");
        ObjectNode format = parameter(
                parameters,
                LAST_PARAMETER,
                LinkMaker.FORMAT,
                "Form of the answer, where the Accept header does not say it");
        format.put("type", "string").putArray("enum").add("json").add("html");
        ObjectNode id = parameters.putObject("featureId");
        id.put("name", "featureId")
                .put("in", "path")
                .put("description", "Identifier within the collection")
                .put("required", true);
        id.putObject("schema").put("type", "string");
        ObjectNode problem = components.putObject("schemas").putObject("problem");
        problem.put("type", "object").put("description", "A problem (RFC 9457)");
        ObjectNode fields = problem.putObject("properties");
        for (String field : List.of("type", "title", "detail", "instance")) {
            fields.putObject(field).put("type", "string");
        }
        fields.putObject("status").put("type", "integer");
        ObjectNode schemes = components.putObject("securitySchemes");
        schemes.putObject("basic")
                .put("type", "http")
                .put("scheme", "basic")
                .put("description", "The account's name, and a token of it as the password");
        schemes.putObject("bearer").put("type", "http").put("scheme", "bearer");
    }

    /** Answers the schema of the parameter. */
    private static ObjectNode parameter(ObjectNode parameters, String component, String name, String words) {
        ObjectNode parameter = parameters.putObject(component);
        parameter.put("name", name);
        parameter.put("in", "query");
        parameter.put("description", words);
        parameter.put("required", false);
        parameter.put("style", "form");
        parameter.put("explode", false);
        return parameter.putObject("schema");
    }
}
