package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.culvert.support.Answer;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The API document, by OpenAPI 3.0.3 (https://spec.openapis.org/oas/v3.0.3) and by what GIS programs read off it. */
@QuarkusTest
class ApiDocumentResourceTest {
    private static final Set<String> IN = Set.of("query", "path");
    private static final Set<String> SCALARS = Set.of("string", "integer", "number", "boolean");

    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    private static JsonNode document(String role) throws IOException {
        Answer answer = Layers.by(role)
                .accept("application/vnd.oai.openapi+json;version=3.0, application/json")
                .get(Layers.root() + "/api");
        assertThat(answer.contentType().replace(" ", "")).startsWith("application/vnd.oai.openapi+json;version=3.0");
        return new ObjectMapper().readTree(answer.asByteArray());
    }

    @Test
    void req_oas30_oas_definition_2_is_well_formed() throws IOException {
        JsonNode api = document(COORDINATOR);
        assertThat(api.path("openapi").asText()).isEqualTo("3.0.3");
        assertThat(api.at("/info/title").asText()).isNotBlank();
        assertThat(api.at("/info/version").asText()).isNotBlank();
        Set<String> operations = new HashSet<>();
        api.get("paths").properties().forEach(path -> {
            assertThat(path.getKey()).startsWith("/");
            assertThat(path.getValue().properties())
                    .extracting(one -> one.getKey())
                    .containsExactly("get");
            JsonNode get = path.getValue().get("get");
            assertThat(operations.add(get.path("operationId").asText())).isTrue();
            Set<String> names = new HashSet<>();
            get.path("parameters").forEach(told -> {
                JsonNode parameter = resolved(api, told);
                assertThat(names.add(parameter.path("in").asText()
                                + parameter.path("name").asText()))
                        .isTrue();
                assertThat(IN).contains(parameter.path("in").asText());
                assertThat(parameter.path("schema").path("type").isTextual()).isTrue();
                if (parameter.path("in").asText().equals("path")) {
                    assertThat(parameter.path("required").asBoolean()).isTrue();
                    assertThat(path.getKey())
                            .contains("{" + parameter.path("name").asText() + "}");
                }
            });
            get.path("responses").properties().forEach(response -> {
                assertThat(response.getKey()).matches("[1-5]\\d\\d");
                assertThat(response.getValue().path("description").asText()).isNotBlank();
            });
            assertThat(get.path("responses").has("200")).isTrue();
        });
        api.findValues("$ref")
                .forEach(reference -> assertThat(
                                api.at(reference.asText().substring(1)).isMissingNode())
                        .as(reference.asText())
                        .isFalse());
        api.get("security")
                .forEach(one -> one.fieldNames()
                        .forEachRemaining(name -> assertThat(api.at("/components/securitySchemes/" + name)
                                        .isMissingNode())
                                .isFalse()));
    }

    private static JsonNode resolved(JsonNode api, JsonNode told) {
        return told.has("$ref") ? api.at(told.get("$ref").asText().substring(1)) : told;
    }

    @Test
    void req_oas30_completeness_has_every_collection_by_its_literal_address() throws IOException {
        JsonNode api = document(COORDINATOR);
        List<String> collections = Layers.get(COORDINATOR, "/collections").getList("collections.id");
        for (String id : collections) {
            JsonNode items =
                    api.get("paths").path("/collections/" + id + "/items").path("get");
            assertThat(items.isMissingNode()).as(id).isFalse();
            assertThat(api.get("paths").has("/collections/" + id + "/items/{featureId}"))
                    .isTrue();
            Set<String> filters = new HashSet<>();
            items.path("parameters").forEach(told -> {
                if (!told.has("$ref")) {
                    assertThat(told.path("style").asText()).isEqualTo("form");
                    assertThat(told.path("explode").isBoolean()
                                    && !told.path("explode").asBoolean())
                            .isTrue();
                    assertThat(SCALARS).contains(told.at("/schema/type").asText());
                    filters.add(told.path("name").asText());
                }
            });
            assertThat(filters).as(id).isNotEmpty();
            // What it names is known, and of the type that it says
            for (String filter : filters) {
                assertThat(Layers.status(
                                COORDINATOR,
                                "/collections/" + id + "/items?limit=1&" + filter + "=" + value(items, filter)))
                        .as(filter)
                        .isEqualTo(200);
            }
        }
        JsonNode ofAuthority = document(ROADS_AUTHORITY);
        assertThat(ofAuthority.get("paths").has("/collections/works/items")).isTrue();
        assertThat(ofAuthority.get("paths").has("/collections/incidents/items")).isFalse();
        assertThat(api.at("/servers/0/url").asText()).isEqualTo(Layers.root());
    }

    private static String value(JsonNode items, String name) {
        for (JsonNode told : items.path("parameters")) {
            if (told.path("name").asText().equals(name)) {
                return switch (told.at("/schema/type").asText()) {
                    case "boolean" -> "true";
                    case "string" -> "some";
                    default -> "1";
                };
            }
        }
        throw new IllegalArgumentException(name);
    }

    @Test
    void req_core_fc_limit_definition_and_bbox_and_time_definition() throws IOException {
        JsonNode parameters = document(null).at("/components/parameters");
        JsonNode limit = parameters.path("limit");
        assertThat(limit.at("/schema/minimum").asInt()).isEqualTo(1);
        assertThat(limit.at("/schema/maximum").asInt()).isEqualTo(10_000);
        assertThat(limit.at("/schema/default").asInt()).isEqualTo(100);
        assertThat(limit.at("/schema/type").asText()).isEqualTo("integer");
        JsonNode bbox = parameters.path("bbox");
        assertThat(bbox.at("/schema/type").asText()).isEqualTo("array");
        assertThat(bbox.at("/schema/items/type").asText()).isEqualTo("number");
        assertThat(bbox.path("explode").asBoolean()).isFalse();
        assertThat(parameters.at("/datetime/schema/type").asText()).isEqualTo("string");
        for (String name : List.of("limit", "bbox", "datetime", "cursor")) {
            assertThat(parameters.at("/" + name + "/name").asText()).isEqualTo(name);
            assertThat(parameters.at("/" + name + "/in").asText()).isEqualTo("query");
            assertThat(parameters.at("/" + name + "/required").asBoolean()).isFalse();
        }
    }
}
