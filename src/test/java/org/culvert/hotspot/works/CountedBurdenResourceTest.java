package org.culvert.hotspot.works;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.Test;

/** Roads of which no file says the traffic, while it is counted and when the counts were taken back. */
@QuarkusTest
class CountedBurdenResourceTest {
    private static final String TURTLES = "/api/burden?taxonGroup=turtles&yearFrom=2016&yearTo=2018";

    private static String counted(String road, int year, int vehicles, String kind) {
        return Api.make(COORDINATOR, "/api/traffic-counts", """
                        {"place":{"roadAndChainage":{"road":"%1$s","chainageKilometres":"3.0"}},"from":"%2$d-01-01",
                         "to":"%2$d-12-31","vehiclesPerDay":%3$d,"measure":"annualAverage","directions":"both",
                         "kind":"%4$s","source":"made for a test"}
                        """.formatted(road, year, vehicles, kind))
                .getString("id");
    }

    @Test
    void countsMakeBurdenRiskAndTheAnswerSaysWhichTrafficWasUsed() {
        WorksWorld.make();
        Json without = Api.get(COORDINATOR, TURTLES);
        assertThat(without.getDouble("basis.traffic.countedKilometres")).isZero();
        double whole = without.getDouble("basis.traffic.unknownKilometres");
        assertThat(without.getList("model.coefficients.name")).doesNotContain("log AADT");
        List<String> made = new ArrayList<>();
        try {
            made.add(counted("Long Road", 2016, 4000, "continuous"));
            made.add(counted("Long Road", 2018, 6000, "continuous"));
            made.add(counted("Works Road", 2017, 2000, "shortTerm"));
            made.add(counted("Back Road", 2017, 900, "estimated"));
            Json burden = Api.get(ROADS_AUTHORITY, TURTLES);
            double counted = (WorksWorld.longRoadMetres() + WorksWorld.worksRoadMetres()) / 1000;
            assertThat(burden.getDouble("basis.traffic.countedKilometres")).isCloseTo(counted, within(0.01));
            assertThat(burden.getDouble("basis.traffic.estimatedKilometres")).isCloseTo(whole - counted, within(0.01));
            assertThat(burden.getDouble("basis.traffic.unknownKilometres")).isZero();
            assertThat(burden.getString("basis.traffic.rule")).contains("major junction");
            assertThat(burden.getList("model.coefficients.name")).contains("log AADT");
            assertThat(burden.getString("residuals.by")).isEqualTo("aadt");
            // The mean of three years, 4,000, 5,000 and 6,000, is the greatest traffic that there is
            int steps = burden.getList("residuals.steps").size();
            assertThat(burden.getDouble("residuals.steps[" + (steps - 1) + "].at"))
                    .isEqualTo(5000);
            assertThat(burden.getList("windows.basis")).containsOnly("risk");
            assertThat(Api.get(ROADS_AUTHORITY, TURTLES)).hasToString(burden.toString());
            Json other = Api.get(COORDINATOR, TURTLES.replace("2016", "2015").replace("2018", "2015"));
            assertThat(other.getDouble("basis.traffic.unknownKilometres")).isEqualTo(whole);
        } finally {
            made.forEach(id -> Api.change(
                            COORDINATOR,
                            "/api/traffic-counts/" + id,
                            "/withdrawal",
                            "{\"reason\":\"the test is over\"}")
                    .statusCode(200));
        }
        Json after = Api.get(COORDINATOR, TURTLES);
        assertThat(after.getString("basis.traffic.sha256")).isEqualTo(without.getString("basis.traffic.sha256"));
        assertThat(after.getDouble("basis.traffic.unknownKilometres")).isEqualTo(whole);
    }
}
