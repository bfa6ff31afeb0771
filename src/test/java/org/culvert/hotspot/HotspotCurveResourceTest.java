package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The road around a hotspot, and what of it is told to whom. */
@QuarkusTest
class HotspotCurveResourceTest {
    private static final String CURVE = "hotspots[0].alongTheRoad";

    @BeforeEach
    void makeWorld() {
        EvidenceWorld.make();
    }

    private static String run() {
        return EvidenceWorld.run(",\"taxonGroup\":\"macropods\"");
    }

    private static Json result(String role, String id) {
        return Api.get(role, "/api/hotspot-runs/" + id + "/result");
    }

    private static double number(Object value) {
        return ((Number) value).doubleValue();
    }

    @Test
    void whoKeepsTheRecordsSeesTheRoadOneKilometreBeyondTheStretch() {
        String id = run();
        Json result = result(COORDINATOR, id);
        double from = result.getDouble("hotspots[0].fromChainageMetres");
        double to = result.getDouble("hotspots[0].toChainageMetres");
        List<Map<String, Object>> parts = result.getList(CURVE);
        double piece = result.getDouble("settings.pieceMetres");
        assertThat(number(parts.get(0).get("fromChainageMetres"))).isBetween(from - 1000 - piece, from - 1000 + piece);
        assertThat(number(parts.get(parts.size() - 1).get("toChainageMetres")))
                .isBetween(to + 1000 - piece, to + 1000 + piece);
        double reported = 0;
        for (Map<String, Object> part : parts) {
            double start = number(part.get("fromChainageMetres"));
            double end = number(part.get("toChainageMetres"));
            boolean significant = (Boolean) part.get("significant");
            Object envelope = part.get("envelopePerKilometreAndYear");
            // Four figures are enough to tell the two apart here
            assertThat(envelope != null && number(part.get("incidentsPerKilometreAndYear")) >= number(envelope))
                    .isEqualTo(significant);
            if (start >= from - 1 && end <= to + 1) {
                assertThat(significant)
                        .as("the stretch is significant throughout")
                        .isTrue();
            }
            reported += number(part.get("incidentsPerKilometreAndYear")) * (end - start) / 1000;
        }
        // The kernel's whole weight lies within: the eight of the stretch, in a year, and what else is near
        assertThat(reported).isBetween(EvidenceWorld.PLANTED - 0.1, EvidenceWorld.PLANTED + 4.0);
        assertThat(Api.as(COORDINATOR).get("/hotspots/" + id).asString())
                .contains(
                        "Along the road",
                        "class=\"up-to-envelope\"",
                        "Hotspot 1: Row Road 4, km 3.",
                        "Most was reported")
                .doesNotContain("style=\"", "<script>", "NOT_FOUND");
    }

    @Test
    void aRoadsAuthorityIsToldTheStretchItselfInTwoFigures() {
        String id = run();
        Json told = result(ROADS_AUTHORITY, id);
        double from = told.getDouble("hotspots[0].fromChainageMetres");
        double to = told.getDouble("hotspots[0].toChainageMetres");
        List<Map<String, Object>> parts = told.getList(CURVE);
        assertThat(parts).isNotEmpty();
        assertThat(parts.size())
                .isLessThan(result(COORDINATOR, id).getList(CURVE).size());
        for (Map<String, Object> part : parts) {
            assertThat(number(part.get("fromChainageMetres"))).isGreaterThan(from - 1);
            assertThat(number(part.get("toChainageMetres"))).isLessThan(to + 1);
            for (String rate : List.of(
                    "incidentsPerKilometreAndYear", "expectedPerKilometreAndYear", "envelopePerKilometreAndYear")) {
                assertThat(new BigDecimal(part.get(rate).toString())
                                .stripTrailingZeros()
                                .precision())
                        .as(rate)
                        .isLessThanOrEqualTo(2);
            }
        }
        assertThat(Api.as(ROADS_AUTHORITY).get("/hotspots/" + id).asString()).contains("Along the road");
    }

    @Test
    void ofASensitiveAnimalNoCurveIsTold() {
        String id = run();
        String taxon = Api.get(COORDINATOR, "/api/taxa?q=Wallabia").getString("[0].id");
        for (String grid : List.of("0", "0.01")) {
            settle(taxon, "{\"gridDegrees\":" + grid + ",\"reason\":\"for this test\",\"reviewBy\":\"2090-01-01\"}");
            try {
                String told = Api.as(ROADS_AUTHORITY)
                        .get("/api/hotspot-runs/" + id + "/result")
                        .asString();
                assertThat(told).contains("sensitive").doesNotContain("alongTheRoad");
                assertThat(Api.as(ROADS_AUTHORITY).get("/hotspots/" + id).asString())
                        .doesNotContain("Along the road", "up-to-envelope");
                assertThat(result(COORDINATOR, id).getList(CURVE)).isNotEmpty();
            } finally {
                settle(taxon, "{\"reason\":\"after the test\"}");
            }
        }
    }

    /** A stretch of four, where counts from five are told. */
    @Test
    void ofFewCollisionsNoCurveIsTold() {
        var point = new HotspotReport.Point(0, 0);
        List<HotspotReport.Along> curve = List.of(new HotspotReport.Along(0, 100, 1.234, 0.1, 1.0, true));
        var four = new HotspotReport.Stretch(
                1, "Road", null, 0, 100, 100, 4, 1, 10, 1, 3, 0.01, 4, point, point, List.of(), curve);
        assertThat(CurveMaker.withoutSmall(four, 5)).isNull();
        assertThat(CurveMaker.withoutSmall(four, 4))
                .containsExactly(new HotspotReport.Along(0, 100, 1.2, 0.1, 1.0, true));
    }

    private static void settle(String taxon, String sensitivity) {
        Api.as(COORDINATOR)
                .header("If-Match", Api.tag(COORDINATOR, "/api/taxa/" + taxon))
                .body(sensitivity)
                .put("/api/taxa/" + taxon + "/sensitivity")
                .then()
                .statusCode(200);
    }
}
