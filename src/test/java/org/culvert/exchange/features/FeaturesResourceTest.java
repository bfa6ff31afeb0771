package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The requirements of OGC API - Features - Part 1: Core 1.0.1 (OGC 17-069r4), by whose identifiers the tests are named:
 * {@code req_core_fc_limit_response_1} is /req/core/fc-limit-response-1.
 */
@QuarkusTest
class FeaturesResourceTest {
    private static final String CORE = "http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/";
    private static final String OPENAPI = "application/vnd.oai.openapi+json;version=3.0";

    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    private static String works(String builtFrom, int from, int to) {
        return Api.make(COORDINATOR, "/api/works", """
                        {"kind":"reflectors","words":"posts","road":"Mill Road","fromChainageMetres":%d,
                         "toChainageMetres":%d,"endsMetres":100,"builtFrom":"%s","builtUntil":"2015-12-31"}
                        """.formatted(from, to, builtFrom))
                .getString("id");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "/"})
    void req_core_root_op_and_root_success_with_and_without_the_slash(String slash) {
        Answer landing = Layers.by(null).accept("application/json").get(Layers.root() + slash);
        assertThat(landing.statusCode()).isEqualTo(200);
        assertThat(landing.contentType()).startsWith("application/json");
        Json page = landing.jsonPath();
        assertThat(page.getList("links.rel", String.class))
                .contains("self", "alternate", "service-desc", "service-doc", "conformance", "data");
        assertThat(page.getString("links.find { it.rel == 'service-desc' }.type"))
                .isEqualTo(OPENAPI);
        assertThat(Layers.link(page, "data")).isEqualTo(Layers.root() + "/collections");
        assertThat(page.getList("links.href", String.class)).allMatch(href -> href.startsWith(Layers.root()));
        for (String relation : List.of("self", "alternate", "service-desc", "conformance", "data")) {
            assertThat(Layers.by(null)
                            .accept("*/*")
                            .get(Layers.link(page, relation))
                            .statusCode())
                    .as(relation)
                    .isEqualTo(200);
        }
    }

    @Test
    void req_core_conformance_op_and_conformance_success() {
        assertThat(Layers.get(null, "/conformance").getList("conformsTo", String.class))
                .contains(CORE + "core", CORE + "oas30", CORE + "geojson", CORE + "html")
                .contains("http://www.opengis.net/spec/ogcapi-features-5/1.0/conf/schemas")
                .noneMatch(one -> one.contains("features-2") || one.contains("features-3") || one.contains("cql2"));
    }

    @Test
    void req_core_fc_md_op_lists_what_the_asker_may_see_and_nothing_else() {
        assertThat(ids(null)).containsExactly("collisions");
        assertThat(ids(CARER)).containsExactly("collisions", "incidents", "road-links");
        assertThat(ids(ROADS_AUTHORITY)).containsExactly("collisions", "hotspots", "road-links", "works");
        assertThat(ids(COORDINATOR)).containsExactly("collisions", "hotspots", "incidents", "road-links", "works");
        assertThat(ids(OFFICER)).containsExactly("collisions", "incidents", "road-links");
        for (String path : List.of("", "/items", "/schema", "/items/x")) {
            assertThat(Layers.status(null, "/collections/works" + path)).isEqualTo(401);
            assertThat(Layers.status(CARER, "/collections/works" + path)).isEqualTo(403);
            assertThat(Layers.status(COORDINATOR, "/collections/none" + path)).isEqualTo(404);
        }
        Layers.by(null)
                .get(Layers.root() + "/collections/works/items")
                .then()
                .header("WWW-Authenticate", startsWith("Basic"));
    }

    private static List<String> ids(String role) {
        return Layers.get(role, "/collections").getList("collections.id");
    }

    @Test
    void req_core_fc_md_items_links_and_sfc_md_success() {
        Json all = Layers.get(COORDINATOR, "/collections");
        assertThat(Layers.link(all, "self")).startsWith(Layers.root());
        for (Map<String, Object> told : all.<Map<String, Object>>getList("collections")) {
            String id = (String) told.get("id");
            Json one = Layers.get(COORDINATOR, "/collections/" + id);
            assertThat(one.<Map<String, Object>>get("$")).as(id).isEqualTo(told);
            assertThat(one.getString("itemType")).isEqualTo("feature");
            assertThat(one.getList("crs")).containsExactly("http://www.opengis.net/def/crs/OGC/1.3/CRS84");
            assertThat(one.getList("links.findAll { it.rel == 'items' }.type"))
                    .containsExactly("application/geo+json", "text/html");
            assertThat(one.getList("links.type")).doesNotContainNull();
            assertThat(Layers.link(one, "items")).isEqualTo(Layers.root() + "/collections/" + id + "/items");
            assertThat(one.getList("extent.spatial.bbox[0]", Double.class)).hasSize(4);
            for (String relation :
                    List.of("http://www.opengis.net/def/rel/ogc/1.0/schema", "describedby", "describedBy")) {
                assertThat(one.getString("links.find { it.rel == '" + relation + "' }.type"))
                        .isEqualTo("application/schema+json");
            }
        }
    }

    @Test
    void req_core_fc_md_extent_holds_every_road_link() {
        List<Double> box =
                Layers.get(COORDINATOR, "/collections/road-links").getList("extent.spatial.bbox[0]", Double.class);
        for (Map<String, Object> link : Layers.all(COORDINATOR, "road-links", "limit=1000")) {
            for (List<Double> at : line(link)) {
                assertThat(at.get(0)).isBetween(box.get(0), box.get(2));
                assertThat(at.get(1)).isBetween(box.get(1), box.get(3));
            }
        }
    }

    @SuppressWarnings("unchecked")
    private static List<List<Double>> line(Map<String, Object> feature) {
        List<List<Double>> line = new ArrayList<>();
        for (List<Number> at :
                (List<List<Number>>) ((Map<String, Object>) feature.get("geometry")).get("coordinates")) {
            line.add(List.of(at.get(0).doubleValue(), at.get(1).doubleValue()));
        }
        return line;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 1000})
    void req_core_fc_links_lead_through_all_pages(int limit) {
        List<Map<String, Object>> all = Layers.all(CARER, "road-links", "limit=" + limit);
        assertThat(all).hasSize(Layers.linksOfTheNetwork()).hasSizeGreaterThan(4);
    }

    @Test
    void req_core_fc_rel_type_and_req_geojson_content() {
        Answer answer = Layers.by(CARER).get(Layers.root() + "/collections/road-links/items?limit=2");
        assertThat(answer.contentType()).startsWith("application/geo+json");
        Json page = answer.jsonPath();
        assertThat(page.getString("type")).isEqualTo("FeatureCollection");
        assertThat(page.getString("links.find { it.rel == 'next' }.type")).isEqualTo("application/geo+json");
        assertThat(page.getList("links.rel", String.class)).contains("self", "alternate", "next");
        assertThat(page.getList("links.type")).doesNotContainNull();
        assertThat(page.getList("features.type")).containsOnly("Feature");
        assertThat(page.getList("features.geometry.type")).containsOnly("LineString");
        assertThat(page.getList("features.id")).allMatch(String.class::isInstance);
        assertThat(page.<Map<String, Object>>getList("features.properties"))
                .allSatisfy(properties -> assertThat(properties)
                        .containsOnlyKeys(
                                "roadName",
                                "ref",
                                "roadClass",
                                "speedLimitKmh",
                                "aadt",
                                "owner",
                                "carriageway",
                                "level",
                                "structure",
                                "fromChainageMetres",
                                "toChainageMetres",
                                "lengthMetres",
                                "oneWay",
                                "lanes",
                                "lastingId"));
        assertThat(page.getString("timeStamp")).endsWith("Z");
        assertThat(page.<Object>get("crs")).isNull();
        assertThat(answer.asString()).doesNotContainPattern("\\d\\.\\d{8,}");
    }

    @ParameterizedTest
    @CsvSource({"1,1", "2,2", "99999,-1", "99999999999999999999,-1"})
    void req_core_fc_limit_response_1_gives_no_more_and_clamps_what_is_too_much(String limit, int wanted) {
        int returned = Layers.get(CARER, "/collections/road-links/items?limit=" + limit)
                .getInt("numberReturned");
        assertThat(returned).isEqualTo(wanted < 0 ? Layers.linksOfTheNetwork() : wanted);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "limit=0",
                "limit=-1",
                "limit=abc",
                "limit=",
                "limit=1.5",
                "limit=1&limit=2",
                "bbox=",
                "bbox=1,2,3",
                "bbox=a,b,c,d",
                "bbox=150,-30,151,-31",
                "bbox=1,2,3,4,5",
                "bbox=NaN,NaN,NaN,NaN",
                "bbox=200,0,201,1",
                "bbox=150,-31,9,151,-30,3",
                "datetime=",
                "datetime=now",
                "datetime=2026-02-30T00:00:00Z",
                "datetime=../..",
                "datetime=/",
                "datetime=2026-01-01T00:00:00",
                "datetime=2026-01-02/2026-01-01",
                "datetime=-4800-01-01T00:00:00Z",
                "datetime=2026-01-01/2026-01-02/2026-01-03",
                "cursor=junk",
                "cursor=999999-1",
                "speedLimitKmh=fast",
                "f=xml"
            })
    void req_core_query_param_invalid_is_400_and_named(String query) {
        Layers.by(CARER)
                .get(Layers.root() + "/collections/road-links/items?" + query)
                .then()
                .statusCode(400)
                .contentType("application/problem+json")
                .body("errors[0].field", equalTo(query.replaceFirst("=.*", "")))
                .body("errors[0].wanted", containsString(""));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "/conformance",
                "/api",
                "/collections",
                "/collections/collisions",
                "/collections/collisions/schema",
                "/collections/collisions/items",
                "/collections/road-links/items"
            })
    void req_core_query_param_unknown_is_400_and_named(String path) {
        String query = "?foo=bar&crs=x&aadt=1";
        Layers.by(CARER)
                .get(Layers.root() + path + query)
                .then()
                .statusCode(400)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/invalid"))
                .body("errors.field", hasItem("foo"))
                .body("errors.field", hasItem("crs"))
                .body("errors.field", hasItem("aadt"));
    }

    @Test
    void req_core_fc_bbox_response_takes_what_has_a_part_in_the_box_of_every_collection() {
        String near = "bbox=150.0499,-30.5001,150.0501,-30.4999";
        // The crossing: two links of Mill Road, two of River Lane
        assertThat(Layers.all(CARER, "road-links", near + "&limit=1"))
                .extracting(link -> Layers.properties(link).get("roadName"))
                .containsExactlyInAnyOrder("Mill Road", "Mill Road", "River Lane", "River Lane");
        assertThat(Layers.all(CARER, "road-links", "bbox=150.0499,-30.5001,-10,150.0501,-30.4999,9000"))
                .hasSize(4);
        assertThat(Layers.all(CARER, "road-links", near + "&roadName=Mill%20Road"))
                .hasSize(2);
        // Within the boxes of links, and on none of them
        assertThat(Layers.all(CARER, "road-links", "bbox=150.01,-30.49,150.04,-30.46"))
                .isEmpty();
        // West of it all by way of the antimeridian
        assertThat(Layers.all(CARER, "road-links", "bbox=170,-31,150.01,-30")).hasSize(1);
        assertThat(Layers.all(CARER, "road-links", "bbox=170,-31,149.9,-30")).isEmpty();
        String id = works("2015-03-01", 2000, 2500);
        assertThat(Layers.all(ROADS_AUTHORITY, "works", "bbox=149.999,-30.501,150.001,-30.499"))
                .extracting(one -> one.get("id"))
                .contains(id);
        assertThat(Layers.all(ROADS_AUTHORITY, "works", near))
                .extracting(one -> one.get("id"))
                .doesNotContain(id);
    }

    @ParameterizedTest
    @CsvSource({
        "2015-03-05T10:00:00Z,true",
        "2015-03-05,true",
        "2015-03-04,false",
        "2015-03-05/2015-03-06,true",
        "2015-03-05T00:00:00Z/2015-03-07T00:00:00Z,true",
        "../2015-03-04,false",
        "/2015-03-04,false",
        "2015-03-06/..,false",
        "2015-03-06/,false",
        "2015-03-05/..,true",
        "2015-03-01T00:00:00%2B11:00/2015-03-31T00:00:00%2B11:00,true",
        "2015-03-05t10:00:00z,true",
        "0000-01-01T00:00:00Z/2015-03-06T00:00:00Z,true",
        "2015-03-06T00:00:00Z/9999-12-31T00:00:00Z,false",
        "2015-03-01T00:00:00Z%2F9999-12-31T00:00:00Z,true",
        "0000-01-01T00:00:00Z/9999-12-31T00:00:00Z,true"
    })
    void req_core_fc_time_response_knows_instants_intervals_and_open_ends(String datetime, boolean there) {
        String id = works("2015-03-05", 3000, 3100);
        List<Object> found = new ArrayList<>();
        Layers.all(ROADS_AUTHORITY, "works", "datetime=" + datetime + "&limit=50")
                .forEach(one -> found.add(one.get("id")));
        assertThat(found.contains(id)).as(datetime).isEqualTo(there);
        // What has no time lies in every span
        assertThat(Layers.all(CARER, "road-links", "datetime=" + datetime)).hasSize(Layers.linksOfTheNetwork());
    }

    @Test
    void rec_core_fc_filters_compare_with_the_value_of_a_property() {
        assertThat(Layers.all(CARER, "road-links", "speedLimitKmh=100&limit=1"))
                .isNotEmpty()
                .allSatisfy(link ->
                        assertThat(Layers.properties(link).get("roadName")).isEqualTo("Mill Road"));
        assertThat(Layers.all(CARER, "road-links", "owner=Lower%20Shire&roadClass=residential"))
                .isNotEmpty();
        assertThat(Layers.all(CARER, "road-links", "owner=nobody")).isEmpty();
        works("2015-03-07", 4000, 4100);
        assertThat(Layers.all(ROADS_AUTHORITY, "works", "kind=reflectors&builtUntilYear=2015&limit=1"))
                .isNotEmpty()
                .allSatisfy(one -> assertThat(Layers.properties(one))
                        .containsEntry("kind", "reflectors")
                        .containsEntry("builtUntilDayOfYear", 365));
    }

    @Test
    void req_core_f_op_and_f_links() {
        Json page = Layers.get(CARER, "/collections/road-links/items?limit=1");
        String id = page.getString("features[0].id");
        Json one = Layers.get(CARER, "/collections/road-links/items/" + id);
        assertThat(one.getString("type")).isEqualTo("Feature");
        assertThat(one.<Object>get("properties")).isEqualTo(page.get("features[0].properties"));
        assertThat(one.<Object>get("geometry")).isEqualTo(page.get("features[0].geometry"));
        assertThat(one.getList("links.rel", String.class)).contains("self", "alternate", "collection");
        assertThat(Layers.link(one, "collection")).isEqualTo(Layers.root() + "/collections/road-links");
        String works = works("2015-03-08", 5000, 5100);
        assertThat(Layers.get(ROADS_AUTHORITY, "/collections/works/items/" + works)
                        .getString("properties.words"))
                .isEqualTo("posts");
        for (String none : List.of("x", "00000000-0000-0000-0000-000000000000", "1-1-1-1-1")) {
            assertThat(Layers.status(COORDINATOR, "/collections/road-links/items/" + none))
                    .isEqualTo(404);
            assertThat(Layers.status(COORDINATOR, "/collections/works/items/" + none))
                    .isEqualTo(404);
            assertThat(Layers.status(COORDINATOR, "/collections/hotspots/items/" + none))
                    .isEqualTo(404);
            assertThat(Layers.status(COORDINATOR, "/collections/collisions/items/" + none))
                    .isEqualTo(404);
            assertThat(Layers.status(COORDINATOR, "/collections/incidents/items/" + none))
                    .isEqualTo(404);
        }
    }

    @Test
    void aStretchOfWorksIsDrawnAlongTheRoad() {
        String id = works("2015-03-09", 3000, 3500);
        Json one = Layers.get(ROADS_AUTHORITY, "/collections/works/items/" + id);
        assertThat(one.getString("geometry.type")).isEqualTo("MultiLineString");
        List<List<Number>> line = one.getList("geometry.coordinates[0]");
        // Mill Road runs along 30.5 S from 150 E, where its chainage is 2,000 m; a degree is 96.49 km there
        // (Geodesy.WGS84, as GeographicLib has it)
        double metres = org.culvert.geo.Geodesy.WGS84
                .inverse(
                        new org.culvert.geo.Position(-30.5, 150),
                        new org.culvert.geo.Position(-30.5, line.get(0).get(0).doubleValue()))
                .metres();
        assertThat(metres).isBetween(999.0, 1001.0);
        assertThat(line.get(line.size() - 1).get(0).doubleValue())
                .isGreaterThan(line.get(0).get(0).doubleValue());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "/conformance",
                "/api",
                "/collections",
                "/collections/road-links",
                "/collections/road-links/schema",
                "/collections/road-links/items"
            })
    void req_core_http_answers_head_and_options(String path) {
        Answer head = Layers.by(CARER).head(Layers.root() + path);
        assertThat(head.statusCode()).isEqualTo(200);
        assertThat(head.asByteArray()).isEmpty();
        Answer options = Layers.by(CARER).options(Layers.root() + path);
        assertThat(options.statusCode()).isBetween(200, 204);
        assertThat(options.header("Allow")).contains("GET", "HEAD", "OPTIONS").doesNotContain("POST", "PUT", "DELETE");
        assertThat(Layers.by(CARER).post(Layers.root() + path).statusCode()).isEqualTo(405);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "/conformance",
                "/api",
                "/collections",
                "/collections/road-links",
                "/collections/road-links/schema",
                "/collections/road-links/items"
            })
    void req_html_content_and_slashes(String path) {
        Answer page = Layers.by(CARER)
                .accept("text/html,application/xhtml+xml,*/*;q=0.8")
                .get(Layers.root() + path);
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.contentType()).startsWith("text/html");
        assertThat(page.asString()).contains("<h1", "</html>").doesNotContain("<script");
        assertThat(Layers.by(CARER).get(Layers.root() + path + "?f=html").contentType())
                .startsWith("text/html");
        assertThat(Layers.by(CARER)
                        .accept("text/html")
                        .get(Layers.root() + path + "?f=json")
                        .contentType())
                .contains("json");
        assertThat(Layers.by(CARER).get(Layers.root() + path + "/").statusCode())
                .isEqualTo(200);
    }

    @Test
    void aPageShowsFeaturesAndLeadsToTheNext() {
        String page = Layers.by(CARER)
                .get(Layers.root() + "/collections/road-links/items?limit=2&f=html")
                .asString();
        assertThat(page).contains("roadName", "Next page", "numberMatched");
        String id = Layers.get(CARER, "/collections/road-links/items?limit=1").getString("features[0].id");
        assertThat(page).contains("/ogc/collections/road-links/items/" + id);
        assertThat(Layers.by(CARER)
                        .get(Layers.root() + "/collections/road-links/items/" + id + "?f=html")
                        .asString())
                .contains("LineString", "lengthMetres");
    }

    @Test
    void aTokenForLayersAloneReadsThemAndNothingElse() {
        String token = Api.make(COORDINATOR, "/api/tokens", "{\"name\":\"a GIS\",\"scopes\":[\"ogc:read\"]}")
                .getString("token");
        var asked = Layers.by(null).basic("test-coordinator", token);
        assertThat(asked.get(Layers.root() + "/collections/works/items").statusCode())
                .isEqualTo(200);
        assertThat(asked.get("/api/works").statusCode()).isEqualTo(403);
        assertThat(Request.given()
                        .basic("test-coordinator", token)
                        .get("/works")
                        .statusCode())
                .isEqualTo(403);
    }

    @Test
    void everyCollectionSaysWhatEachOfItsPropertiesIs() {
        for (String id : ids(COORDINATOR)) {
            Json schema = Layers.get(COORDINATOR, "/collections/" + id + "/schema");
            assertThat(schema.getString("'$schema'")).isEqualTo("https://json-schema.org/draft/2020-12/schema");
            assertThat(schema.getString("'$id'")).isEqualTo(Layers.root() + "/collections/" + id + "/schema");
            assertThat(schema.getString("type")).isEqualTo("object");
            Map<String, Map<String, Object>> properties = schema.getMap("properties");
            assertThat(properties.get("geometry"))
                    .containsEntry("x-ogc-role", "primary-geometry")
                    .doesNotContainKey("type");
            assertThat(properties.get("id")).containsEntry("x-ogc-role", "id").containsEntry("type", "string");
            assertThat(properties.values())
                    .allSatisfy(
                            one -> assertThat(one.get("description")).asString().isNotBlank());
            // One property a collection is a time: programs filter by whichever they find
            assertThat(properties.values().stream()
                            .filter(one -> String.valueOf(one.get("format")).startsWith("date"))
                            .count())
                    .as(id)
                    .isEqualTo(id.equals("road-links") ? 0 : 1);
            for (Map<String, Object> feature : Layers.get(COORDINATOR, "/collections/" + id + "/items?limit=50")
                    .<Map<String, Object>>getList("features")) {
                assertThat(Layers.properties(feature).keySet()).as(id).isEqualTo(without(properties.keySet()));
            }
        }
    }

    private static java.util.Set<String> without(java.util.Set<String> names) {
        var properties = new java.util.LinkedHashSet<>(names);
        properties.removeAll(List.of("id", "geometry"));
        return properties;
    }
}
