package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.jspecify.annotations.Nullable;

/** Layers as a program reads them: by the links that it is given. */
final class Layers {
    static final String GEO_JSON = "application/geo+json";

    private Layers() {}

    static String root() {
        return Request.server() + "/ogc";
    }

    /** Whoever has a role, or nobody. */
    static Request by(@Nullable String role) {
        return (role == null ? Request.given() : Request.given().basic("test-" + role, Api.token(role)))
                .accept("application/geo+json, application/json")
                .withoutRedirects();
    }

    static Json get(@Nullable String role, String address) {
        return by(role).get(address.startsWith("/") ? root() + address : address)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
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
            Json page = get(role, next);
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
    static String link(Json document, String relation) {
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
