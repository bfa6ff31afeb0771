package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;

import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.specification.RequestSpecification;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.support.Api;
import org.jspecify.annotations.Nullable;

/** Layers as a program reads them: by the links that it is given. */
final class Layers {
    static final String GEO_JSON = "application/geo+json";

    private Layers() {}

    static String root() {
        return "http://localhost:" + RestAssured.port + "/ogc";
    }

    /** Whoever has a role, or nobody. */
    static RequestSpecification by(@Nullable String role) {
        return (role == null
                        ? RestAssured.given()
                        : RestAssured.given().auth().preemptive().basic("test-" + role, Api.token(role)))
                .accept("application/geo+json, application/json")
                .urlEncodingEnabled(false)
                .redirects()
                .follow(false);
    }

    static JsonPath get(@Nullable String role, String address) {
        return by(role).get(address.startsWith("/") ? root() + address : address)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath(JsonPathConfig.jsonPathConfig().numberReturnType(NumberReturnType.DOUBLE));
    }

    static int status(@Nullable String role, String path) {
        return by(role).get(root() + path).statusCode();
    }

    /** All features, from page to page by the next links, whose number is that which each page told. */
    static List<Map<String, Object>> all(@Nullable String role, String collection, String query) {
        List<Map<String, Object>> all = new ArrayList<>();
        String next = "/collections/" + collection + "/items" + (query.isEmpty() ? "" : "?" + query);
        int matched = -1;
        while (next != null) {
            JsonPath page = get(role, next);
            List<Map<String, Object>> features = page.getList("features");
            assertThat(page.getInt("numberReturned")).isEqualTo(features.size());
            assertThat(matched < 0 || matched == page.getInt("numberMatched"))
                    .as("numberMatched stays from page to page")
                    .isTrue();
            matched = page.getInt("numberMatched");
            all.addAll(features);
            next = link(page, "next");
            assertThat(next == null || !features.isEmpty())
                    .as("no next link after nothing")
                    .isTrue();
        }
        assertThat(all).hasSize(matched).doesNotHaveDuplicates();
        return all;
    }

    @Nullable
    static String link(JsonPath document, String relation) {
        return document.getString("links.find { it.rel == '" + relation + "' }.href");
    }

    static int linksOfTheNetwork() {
        return Api.get(ADMIN, "/api/road-networks/current/links?limit=10000")
                .getList("features")
                .size();
    }

    @SuppressWarnings("unchecked")
    static Map<String, Object> properties(Map<String, Object> feature) {
        return (Map<String, Object>) feature.get("properties");
    }
}
