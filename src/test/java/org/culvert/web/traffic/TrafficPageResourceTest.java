package org.culvert.web.traffic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.junit.QuarkusTest;
import java.net.URI;
import java.net.http.HttpResponse;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.platform.FormSignIn;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class TrafficPageResourceTest {
    private static final Pattern SECRET = Pattern.compile("name=\"csrf\" value=\"([^\"]+)\"");
    private static final Pattern DIGEST = Pattern.compile("name=\"sha256\" value=\"([0-9a-f]{64})\"");

    private final String station = "P-" + UUID.randomUUID();

    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    /** Sends the form with the file, as somebody who has signed in. */
    private static final class Sender {
        private final FormSignIn browser = new FormSignIn(URI.create(Request.server() + "/"));
        private final String secret;

        Sender() {
            assertThat(browser.signIn("test-coordinator", Api.PASSWORD).statusCode())
                    .isEqualTo(303);
            Matcher found = SECRET.matcher(browser.get("/traffic").body());
            assertThat(found.find()).isTrue();
            secret = found.group(1);
        }

        HttpResponse<String> send(String file, String... fields) {
            return browser.postParts(
                    "/traffic/files",
                    secret,
                    with(fields, "key", UUID.randomUUID().toString(), "file", file));
        }
    }

    private String row(double longitude, double latitude, String aadt) {
        return """
                {"type":"Feature","geometry":{"type":"Point","coordinates":[%s,%s]},
                 "properties":{"SITE_ID":"%s","RD":"Mill Road","YEAR":1932,"AADT":%s}}
                """.formatted(longitude, latitude, station, aadt);
    }

    private static String file(String... rows) {
        return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", rows) + "]}";
    }

    private List<String> kept() {
        return Api.get(OFFICER, "/api/traffic-counts?station=" + station).getList("items.id");
    }

    @Test
    void aFileIsTriedRowByRowAndEnteredOnlyAsItWasTried() {
        var sender = new Sender();
        String file = file(row(150.02, -30.5001, "4210"), row(150.02, -31.5, "10"));

        String first = sender.send(file, "act", "try").body();
        assertThat(first).contains("Something has to be said", "<code>measure</code>", "Proposed by its name.");

        String[] said = {
            "stationAttribute", "SITE_ID", "roadAttribute", "RD", "yearAttribute", "YEAR", "vehiclesPerDayAttribute",
                    "AADT",
            "measure", "annualAverage", "kind", "shortTerm", "directions", "both", "source", "made for a test"
        };
        String tried = sender.send(file, with(said, "act", "try")).body();
        assertThat(tried)
                .contains("Rows: 2. Understood: 1. Refused: 1.", "features.1", "Mill Road, km ")
                .contains("<option value=\"AADT\" selected>", "Enter what was understood: 1");
        assertThat(kept()).isEmpty();
        Matcher digest = DIGEST.matcher(tried);
        assertThat(digest.find()).isTrue();

        String[] entering = with(said, "act", "enter", "sha256", digest.group(1));
        HttpResponse<String> other = sender.send(file(row(150.02, -30.5001, "9")), entering);
        assertThat(other.statusCode()).isEqualTo(400);
        assertThat(other.body()).contains("not the file that was tried", "<option value=\"AADT\" selected>");
        HttpResponse<String> stopped = sender.send(file, entering);
        assertThat(stopped.statusCode()).isEqualTo(400);
        assertThat(kept()).isEmpty();

        HttpResponse<String> done = sender.send(file, with(entering, "refusedRows", "leaveOut"));
        assertThat(done.statusCode()).as(done.body()).isEqualTo(303);
        assertThat(done.headers().firstValue("Location").orElse("")).endsWith("/traffic?entered=1&leftOut=1");
        assertThat(kept()).hasSize(1);
    }

    private static String[] with(String[] fields, String... more) {
        String[] whole = Arrays.copyOf(fields, fields.length + more.length);
        System.arraycopy(more, 0, whole, fields.length, more.length);
        return whole;
    }

    private static Request form() {
        String secret = Api.as(COORDINATOR).get("/traffic").cookie("culvert-form");
        return Api.as(COORDINATOR)
                .contentType(Request.FORM)
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParam("key", UUID.randomUUID().toString());
    }

    @Test
    void aCountIsTypedShownAndTakenBack() {
        Answer wrong = form().formParam("place", "Mill Road 4")
                .formParam("vehiclesPerDay", "many")
                .formParam("station", station)
                .post("/traffic")
                .then()
                .statusCode(400);
        assertThat(wrong.extract().asString()).contains("id=\"vehiclesPerDay-wrong\"", "value=\"many\"", station);
        form().formParam("place", "Mill Road 4")
                .formParam("station", station)
                .formParam("from", "1933-01-01")
                .formParam("to", "1933-12-31")
                .formParam("vehiclesPerDay", "2140")
                .formParam("measure", "annualAverage")
                .formParam("kind", "continuous")
                .formParam("directions", "both")
                .formParam("source", "made for a test")
                .post("/traffic")
                .then()
                .statusCode(303);
        Json count = Api.get(OFFICER, "/api/traffic-counts?station=" + station);
        assertThat(count.getDouble("items[0].vehiclesPerDay")).isEqualTo(2140);
        String path = "/traffic?road=mill+road&year=1933";
        Api.as(ROADS_AUTHORITY)
                .get(path)
                .then()
                .statusCode(200)
                .body(containsString(station))
                .body(containsString("counter all the year"))
                .body(not(containsString("name=\"reason\"")))
                .body(not(containsString("type=\"file\"")));
        String id = count.getString("items[0].id");
        form().formParam("reason", " ")
                .post("/traffic/" + id + "/withdrawal")
                .then()
                .statusCode(400);
        form().formParam("reason", "a car park was counted")
                .post("/traffic/" + id + "/withdrawal")
                .then()
                .statusCode(303);
        Api.as(COORDINATOR).get(path).then().body(containsString("Taken back: a car park was counted"));
        Api.as(COORDINATOR).get("/traffic?year=soon").then().statusCode(400).body(containsString("No such year"));
        Api.as(CARER).get("/traffic").then().statusCode(403);
    }
}
