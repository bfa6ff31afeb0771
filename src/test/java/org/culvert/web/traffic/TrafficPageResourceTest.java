package org.culvert.web.traffic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.junit.QuarkusTest;
import java.util.UUID;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class TrafficPageResourceTest {
    private final String station = "P-" + UUID.randomUUID();

    @BeforeEach
    void makeWorld() {
        World.shared();
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
                .body(not(containsString("/settings/files/traffic-counts")));
        String id = count.getString("items[0].id");
        form().formParam("reason", " ")
                .post("/traffic/" + id + "/withdrawal")
                .then()
                .statusCode(400);
        form().formParam("reason", "a car park was counted")
                .post("/traffic/" + id + "/withdrawal")
                .then()
                .statusCode(303);
        Api.as(COORDINATOR)
                .get(path)
                .then()
                .body(containsString("Taken back: a car park was counted"))
                .body(containsString("/settings/files/traffic-counts"));
        Api.as(COORDINATOR).get("/traffic?year=soon").then().statusCode(400).body(containsString("No such year"));
        Api.as(CARER).get("/traffic").then().statusCode(403);
    }
}
