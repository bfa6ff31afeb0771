package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.Test;

@QuarkusTest
class TrafficOfRunsResourceTest {
    private static Json run() {
        String id = EvidenceWorld.run(
                ",\"taxonGroup\":\"macropods\",\"chance\":\"per-traffic-and-class\",\"simulations\":199,\"alpha\":0.05");
        return Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id);
    }

    private static Json traffic(Json run) {
        return Api.get(COORDINATOR, run.getString("result.json")).under("inputs.traffic");
    }

    @Test
    void whichTrafficWasUsedIsAnInputAndTheSameRunIsTheSameBytes() {
        EvidenceWorld.make();
        Json without = run();
        assertThat(traffic(without).getDouble("countedKilometres")).isZero();
        assertThat(traffic(without).getDouble("roadsFileKilometres")).isPositive();
        int year = EvidenceWorld.year();
        String id = Api.make(COORDINATOR, "/api/traffic-counts", """
                        {"place":{"decimalDegrees":{"latitude":"-31.48","longitude":"150.53"},"uncertaintyMetres":20},
                         "from":"%1$d-01-01","to":"%1$d-12-31","vehiclesPerDay":9000,"measure":"annualAverage",
                         "directions":"both","kind":"continuous","source":"made for a test"}
                        """.formatted(year))
                .getString("id");
        Json with;
        try {
            with = run();
            Json again = run();
            assertThat(again.getString("documentSha256")).isEqualTo(with.getString("documentSha256"));
            assertThat(again.getString("inputsSha256")).isEqualTo(with.getString("inputsSha256"));
        } finally {
            Api.change(COORDINATOR, "/api/traffic-counts/" + id, "/withdrawal", "{\"reason\":\"the test is over\"}")
                    .statusCode(200);
        }
        assertThat(with.getString("inputsSha256")).isNotEqualTo(without.getString("inputsSha256"));
        assertThat(traffic(with).getDouble("countedKilometres")).isPositive();
        assertThat(traffic(with).getInt("yearFrom")).isEqualTo(year);
        Json after = run();
        assertThat(after.getString("documentSha256")).isEqualTo(without.getString("documentSha256"));
        // Another kind of chance asks for no traffic, and says none
        String id2 = EvidenceWorld.run(",\"taxonGroup\":\"macropods\"");
        Json plain = Api.get(COORDINATOR, "/api/hotspot-runs/" + id2 + "/result");
        assertThat(plain.<Object>get("inputs.traffic")).isNull();
    }
}
