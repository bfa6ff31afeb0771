package org.culvert.platform.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.DISPATCHER;

import io.quarkus.test.junit.QuarkusTest;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The text format is that of Prometheus, version 0.0.4 (from memory). */
@QuarkusTest
class MetersResourceTest {
    private static final Pattern LINE = Pattern.compile("^([a-z_]+(?:\\{.*})?) (\\S+)$", Pattern.MULTILINE);

    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    @Test
    void whatTheServerDoesIsCounted() {
        Map<String, Double> before = figures();
        String call = """
                {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                 "place":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.021"}}}
                """;
        String key = UUID.randomUUID().toString();
        for (int i = 0; i < 3; i++) {
            Api.as(DISPATCHER)
                    .header(Request.KEY, key)
                    .body(call)
                    .post("/api/calls")
                    .then()
                    .statusCode(201);
        }
        Api.as(DISPATCHER).get("/api/calls/" + UUID.randomUUID()).then().statusCode(404);
        Map<String, Double> after = figures();
        assertThat(grown(before, after, "culvert_calls_taken_total{")).isEqualTo(1);
        assertThat(grown(before, after, "culvert_replays_total")).isEqualTo(2);
        assertThat(grown(before, after, "culvert_place_reading_seconds_count{")).isEqualTo(1);
        assertThat(grown(before, after, "culvert_place_reading_seconds_sum{")).isPositive();
        assertThat(grown(before, after, "culvert_problems_total{type=\"not-found\""))
                .isEqualTo(1);
        assertThat(sum(after, "culvert_jobs_waiting_seconds")).isBetween(0.0, 3600.0);
        assertThat(sum(after, "culvert_jobs_failing")).isNotNegative();
    }

    @Test
    void whatAskersMakeUpMakesNoFigureOfItsOwn() {
        String mark = "m" + UUID.randomUUID().toString().substring(0, 8);
        ask(mark + "0");
        // Once, since wrong ones are counted against the address of all these tests
        Request.given().basic(mark, mark).get("/api/region");
        int before = figures().size();
        for (int i = 1; i <= 20; i++) {
            ask(mark + i);
        }
        String told = Api.as(ADMIN).get("/q/metrics").asString();
        assertThat(figures()).hasSize(before);
        assertThat(told).doesNotContainIgnoringCase(mark);
        assertThat(told).doesNotContainPattern("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-");
    }

    private static void ask(String word) {
        String id = UUID.randomUUID().toString();
        for (String path : new String[] {
            "/" + word, "/" + word + "/" + id, "/api/calls/" + id, "/api/calls/" + word, "/api/" + word + "?x=" + word,
            "/api/calls/" + id + "/" + word, "/hotspots/" + id, "/invitation/" + word, "/problems/" + word,
                    "/q/" + word,
            "/webjars/leaflet/" + word, "/api/region?asOf=" + word
        }) {
            Api.as(DISPATCHER).get(path);
            Request.given().get(path);
            Api.as(DISPATCHER).delete(path);
            Api.as(DISPATCHER).request(word.toUpperCase(java.util.Locale.ROOT), path);
        }
        Api.as(DISPATCHER).body("{\"" + word + "\":1}").post("/api/calls");
    }

    private static Map<String, Double> figures() {
        Map<String, Double> figures = new TreeMap<>();
        Matcher line = LINE.matcher(Api.as(ADMIN).get("/q/metrics").asString());
        while (line.find()) {
            if (line.group(1).startsWith("culvert_") || line.group(1).startsWith("http_server_requests")) {
                figures.put(line.group(1), Double.valueOf(line.group(2)));
            }
        }
        assertThat(figures).isNotEmpty();
        return figures;
    }

    private static double grown(Map<String, Double> before, Map<String, Double> after, String name) {
        return sum(after, name) - sum(before, name);
    }

    private static double sum(Map<String, Double> figures, String name) {
        return figures.entrySet().stream()
                .filter(figure -> figure.getKey().startsWith(name))
                .mapToDouble(Map.Entry::getValue)
                .sum();
    }
}
