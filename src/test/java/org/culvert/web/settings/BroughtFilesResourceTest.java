package org.culvert.web.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.platform.Patience;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Files of roads, land, sites and counts by plain forms: kept, read apart, and all or nothing of them taken. */
@QuarkusTest
class BroughtFilesResourceTest {
    private static final String BOUNDARY = "a-boundary-of-forms";
    private static final String LAND = "/settings/files/land-areas";
    private static final String TRAFFIC = "/settings/files/traffic-counts";

    @Inject
    EntityManager entities;

    private String secret;

    @BeforeEach
    void layTheWorld() {
        World.shared();
        secret = Api.as(COORDINATOR).get(LAND).cookie("culvert-form");
    }

    private static Map<String, String> land(String nameAttribute) {
        return Map.of(
                "kind", "water",
                "nameAttribute", nameAttribute,
                "source", "a map, made for a test",
                "from", "2024-01-01");
    }

    private static String features(String... properties) {
        var all = new StringBuilder("{\"type\":\"FeatureCollection\",\"features\":[");
        for (int i = 0; i < properties.length; i++) {
            all.append(i == 0 ? "" : ",")
                    .append("{\"type\":\"Feature\",\"properties\":{")
                    .append(properties[i])
                    .append("},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[151,-31],[151.01,-31],")
                    .append("[151.01,-31.01],[151,-31]]]}}");
        }
        return all.append("]}").toString();
    }

    /** Sends a form as multipart/form-data (RFC 7578); without a file where its name is empty, as browsers do. */
    private Answer send(String path, String fileName, String text, Map<String, String> fields) {
        Map<String, String> all = new HashMap<>(Map.of("key", UUID.randomUUID().toString(), "csrf", secret));
        all.putAll(fields);
        var body = new ByteArrayOutputStream();
        all.forEach((name, value) -> body.writeBytes(
                ("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"" + name + "\"\r\n\r\n" + value + "\r\n")
                        .getBytes(StandardCharsets.UTF_8)));
        body.writeBytes(("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"" + fileName
                        + "\"\r\nContent-Type: application/octet-stream\r\n\r\n" + text + "\r\n--" + BOUNDARY
                        + "--\r\n")
                .getBytes(StandardCharsets.UTF_8));
        return Api.as(COORDINATOR)
                .contentType("multipart/form-data; boundary=" + BOUNDARY)
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .body(body.toByteArray())
                .post(path)
                .then();
    }

    private static String path(Answer sent) {
        return sent.statusCode(303).extract().header("Location").replaceFirst("^https?://[^/]+", "");
    }

    private static String page(String role, String path) {
        return Api.as(role).get(path).then().statusCode(200).extract().asString();
    }

    /** Waits until it is read; its page then. */
    private static String ended(String path) {
        Patience.until(
                path,
                () -> "true".equals(Api.as(COORDINATOR).get(path + "/progress").header("HX-Refresh")));
        return page(COORDINATOR, path);
    }

    private long partsKept(String path) {
        UUID id = UUID.fromString(path.substring(path.lastIndexOf('/') + 1));
        return ((Number) entities.createNativeQuery("select count(p.octets) from personal.brought_file_parts p"
                                + " join brought_files f on f.content_id = p.content_id where f.id = ?1")
                        .setParameter(1, id)
                        .getSingleResult())
                .longValue();
    }

    @Test
    void aFileIsKeptReadApartAndToldOf() {
        String one = "pond " + UUID.randomUUID();
        String two = "pool " + UUID.randomUUID();
        String text = features("\"NAME\":\"" + one + "\"", "\"NAME\":\"" + two + "\"");
        Map<String, String> form = new HashMap<>(land("NAME"));
        form.put("key", UUID.randomUUID().toString());
        String file = path(send(LAND, "ponds of a test.geojson", text, form));
        assertThat(path(send(LAND, "ponds of a test.geojson", text, form)))
                .as("a second tap")
                .isEqualTo(file);
        assertThat(ended(file)).contains("2 areas entered, of 2 features.", "ponds of a test.geojson");
        assertThat(page(ADMIN, LAND))
                .as("others see who brought it")
                .contains("ponds of a test.geojson", "✓ taken", "by test-" + COORDINATOR, file);
        assertThat(Api.as(COORDINATOR).get("/api/land-areas?limit=200").asString())
                .contains(one, two);
        assertThat(partsKept(file)).as("octets of a file that was taken").isZero();
        Api.as(DISPATCHER).get(file).then().statusCode(403);
        Api.as(COORDINATOR)
                .get(file.replace("land-areas", "release-sites"))
                .then()
                .statusCode(404);
    }

    @Test
    void whatIsWrongIsSaidWithItsPlaceAndTheFileNeedNotBeSentAgain() {
        String name = "mere " + UUID.randomUUID();
        String text = features("\"NAME\":\"" + name + "\",\"KIND\":\"a\"", "\"NAME\":\"" + name + " 2\"");
        String file = path(send(LAND, "meres.geojson", text, land("KIND")));
        assertThat(ended(file))
                .contains("Nothing was taken of this file.", "At features.1.properties.KIND: This is missing.")
                .contains("The file is still here", "name=\"nameAttribute\" value=\"KIND\"")
                .contains("a map, made for a test");
        assertThat(Api.as(COORDINATOR).get("/api/land-areas?limit=200").asString())
                .as("nothing of it")
                .doesNotContain("made for a test\",\"name\":\"a\"", name);
        assertThat(partsKept(file)).isEqualTo(1);

        Map<String, String> again = new HashMap<>(land("NAME"));
        again.put("act.of", file.substring(file.lastIndexOf('/') + 1));
        again.put("from", "lately");
        assertThat(send(LAND, "", "", again).statusCode(400).extract().asString())
                .contains("Nothing was taken of this file.", "name=\"act.of\"", "value=\"NAME\"");
        again.put("from", "2024-01-01");
        String second = path(send(LAND, "", "", again));
        assertThat(second).isNotEqualTo(file);
        assertThat(ended(second)).contains("2 areas entered, of 2 features.");
        assertThat(send(
                                LAND,
                                "",
                                "",
                                Map.copyOf(with(again, "key", UUID.randomUUID().toString())))
                        .statusCode(409)
                        .extract()
                        .asString())
                .contains("That file was taken, or is kept no longer");
    }

    private static Map<String, String> with(Map<String, String> fields, String name, String value) {
        Map<String, String> all = new HashMap<>(fields);
        all.put(name, value);
        return all;
    }

    @Test
    void withoutAFileOrAnAnswerNothingIsKept() {
        assertThat(send(LAND, "", "", land("NAME")).statusCode(400).extract().asString())
                .contains("No file was chosen.", "a map, made for a test");
        assertThat(send(LAND, "empty.geojson", "", land("NAME"))
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("The file is empty.");
    }

    private static String counts(String station, String... places) {
        return Stream.of(places)
                .map(place -> "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\",\"coordinates\":[" + place
                        + "]},\"properties\":{\"SITE_ID\":\"" + station
                        + "\",\"RD\":\"Mill Road\",\"YEAR\":1932,\"AADT\":4210}}")
                .collect(Collectors.joining(",", "{\"type\":\"FeatureCollection\",\"features\":[", "]}"));
    }

    private static int countsOf(String station) {
        return Api.get(OFFICER, "/api/traffic-counts?station=" + station)
                .getList("items.id")
                .size();
    }

    @Test
    void countsAreTriedRowByRowBeforeTheyAreEntered() {
        String station = "T-" + UUID.randomUUID();
        String file = counts(station, "150.02,-30.5001", "150.02,-31.5");
        String first = path(send(TRAFFIC, "counts.geojson", file, Map.of("wanted", "trial")));
        assertThat(ended(first))
                .contains(
                        "Something has to be said",
                        "id=\"f-measure-wrong\"",
                        "Vehicles a day: AADT, proposed by its name.")
                .contains("<option value=\"AADT\" selected>")
                .doesNotContain("value=\"entry\"");

        Map<String, String> said = new HashMap<>(Map.of(
                "stationAttribute", "SITE_ID",
                "roadAttribute", "RD",
                "yearAttribute", "YEAR",
                "vehiclesPerDayAttribute", "AADT",
                "measure", "annualAverage",
                "kind", "shortTerm",
                "directions", "both",
                "source", "made for a test",
                "act.of", first.substring(first.lastIndexOf('/') + 1)));
        String second = path(send(TRAFFIC, "", "", with(said, "wanted", "trial")));
        assertThat(ended(second))
                .contains("Rows: 2. Understood: 1. Refused: 1.", "features.1", "Mill Road, km ")
                .contains("Nothing is entered yet.", "Enter what was understood: 1");
        assertThat(page(ADMIN, TRAFFIC)).contains("tried, nothing entered yet", second);
        assertThat(countsOf(station)).isZero();
        assertThat(partsKept(second)).as("octets of a file that was tried").isEqualTo(1);

        said.put("wanted", "entry");
        String stopped = path(send(TRAFFIC, "", "", said));
        assertThat(ended(stopped)).contains("Nothing was taken of this file.", "At features.1.", "value=\"entry\"");
        assertThat(countsOf(station)).isZero();

        String entered = path(send(TRAFFIC, "", "", with(said, "refusedRows", "leaveOut")));
        assertThat(ended(entered)).contains("1 counts entered, of 2 features.", "Left out, and why", ": 1</li>");
        assertThat(countsOf(station)).isEqualTo(1);
        assertThat(partsKept(entered)).isZero();
        assertThat(page(COORDINATOR, second)).as("the trial stays").contains("Rows: 2.", "no longer kept here");
        Api.as(ROADS_AUTHORITY).get(TRAFFIC).then().statusCode(403);
        Api.as(OFFICER).get(entered).then().statusCode(403);
    }

    @Test
    void whatIsToBeDoneWithAFileOfCountsHasToBeSaid() {
        String station = "T-" + UUID.randomUUID();
        String file = counts(station, "150.02,-30.5001");
        assertThat(send(TRAFFIC, "counts.geojson", file, Map.of("year", "soon"))
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("id=\"f-year-wrong\"", "value=\"soon\"");
        send(TRAFFIC, "counts.geojson", file, Map.of()).statusCode(400);
        assertThat(page(COORDINATOR, TRAFFIC)).doesNotContain(station);
    }

    /** Another order to read what was brought, of which no job knows. */
    private String waiting(String path) {
        UUID id = UUID.randomUUID();
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "insert into brought_files (id, kind, file_name, octets, sha256, content_id, told, recorded_at,"
                                        + " recorded_by) select ?1, kind, file_name, octets, sha256, content_id, told, recorded_at,"
                                        + " recorded_by from brought_files where id = ?2")
                        .setParameter(1, id)
                        .setParameter(2, UUID.fromString(path.substring(path.lastIndexOf('/') + 1)))
                        .executeUpdate());
        return LAND + "/" + id;
    }

    private Answer callOff(String role, String path) {
        return Api.as(role)
                .contentType(Request.FORM)
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParam("key", UUID.randomUUID().toString())
                .post(path + "/calling-off")
                .then();
    }

    @Test
    void whoeverBroughtAFileCallsItOffUntilItIsBegun() {
        String name = "bog " + UUID.randomUUID();
        String read = path(send(LAND, "bogs.geojson", features("\"NAME\":\"" + name + "\""), land("KIND")));
        ended(read);
        callOff(COORDINATOR, read).statusCode(409);
        String waiting = waiting(read);
        assertThat(page(COORDINATOR, waiting)).contains(waiting + "/calling-off");
        assertThat(page(ADMIN, waiting)).doesNotContain("/calling-off");
        callOff(ADMIN, waiting).statusCode(403);
        assertThat(path(callOff(COORDINATOR, waiting))).isEqualTo(waiting);
        assertThat(page(COORDINATOR, waiting))
                .contains("called off before anybody began to read it", "The file is still here")
                .doesNotContain("/calling-off");
        callOff(COORDINATOR, waiting).statusCode(409);
    }

    @Test
    void roadsAreReadApartToo() {
        String line =
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"label\":\"Mill"
                        + " Road\"},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[150.0,-30.5],[150.1,-30.5]]}}]}";
        String wrong = path(send(
                "/settings/files/road-networks",
                "roads.geojson",
                line,
                Map.of("name", "roads of a test", "attributes.roadName", "LABEL")));
        assertThat(ended(wrong))
                .contains("No feature has an attribute LABEL.", "id=\"f-attributes-roadName-wrong\"", "label");
        Map<String, String> right = Map.of(
                "name",
                "roads of a test",
                "attributes.roadName",
                "label",
                "act.of",
                wrong.substring(wrong.lastIndexOf('/') + 1));
        assertThat(ended(path(send("/settings/files/road-networks", "", "", right))))
                .contains("of the roads: 1 links, 9.", "from 1 lines.");
        assertThat(Api.as(COORDINATOR).get("/api/road-networks").asString()).contains("roads of a test");
    }
}
