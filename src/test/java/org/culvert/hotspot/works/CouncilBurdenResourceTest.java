package org.culvert.hotspot.works;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.UUID;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.Test;

/** The three roads of the works' world lie a tenth of a degree of latitude apart. */
@QuarkusTest
class CouncilBurdenResourceTest {
    private static final String TURTLES = "/api/burden?taxonGroup=turtles&yearFrom=2016&yearTo=2018&limit=500";

    private static String council(String name, double south, double north, String until) {
        return Api.make(COORDINATOR, "/api/land-areas", """
                        {"kind":"councilArea","name":"%1$s","source":"made for a test","from":"2020-01-01","until":%4$s,
                         "geometry":{"type":"Polygon","coordinates":[[[150.1,%2$s],[150.5,%2$s],[150.5,%3$s],[150.1,%3$s],
                         [150.1,%2$s]]]}}
                        """.formatted(name, south, north, until))
                .getString("id");
    }

    @Test
    void aCouncilSeesItsOwnWindowsAndRanksAmongAll() {
        WorksWorld.make();
        String lower = "Lower " + UUID.randomUUID();
        String upper = "Upper " + UUID.randomUUID();
        String gone = "Gone " + UUID.randomUUID();
        Json before = Api.get(COORDINATOR, TURTLES);
        String longRoad = council(lower, -31.85, -31.75, "null");
        String worksRoad = council(upper, -31.75, -31.65, "null");
        council(gone, -31.85, -31.65, "\"2021-01-01\"");
        try {
            Json all = Api.get(COORDINATOR, TURTLES);
            assertThat(all.getList("windows.rank")).isEqualTo(before.getList("windows.rank"));
            assertThat(all.getList("windows.road", String.class)).contains("Long Road", "Works Road");
            Json own = Api.get(ROADS_AUTHORITY, TURTLES + "&council=" + lower.toUpperCase(java.util.Locale.ROOT));
            assertThat(own.getString("council")).isEqualTo(lower);
            assertThat(own.getList("windows.road")).isNotEmpty().containsOnly("Long Road");
            Json mine = Api.get(COORDINATOR, TURTLES + "&council=" + lower);
            assertThat(mine.getList("windows.councils")).isNotEmpty().containsOnly(lower);
            // The ranks of all roads, and the model of all roads
            assertThat(mine.<Integer>getList("windows.rank"))
                    .isEqualTo(all.<Integer>getList("windows.findAll { it.road == 'Long Road' }.rank"));
            assertThat(mine.getInt("model.sites")).isEqualTo(before.getInt("model.sites"));
            assertThat(Api.get(COORDINATOR, TURTLES + "&council=" + upper).getList("windows.road"))
                    .isNotEmpty()
                    .containsOnly("Works Road");
            Api.as(COORDINATOR)
                    .get(TURTLES + "&council=" + gone)
                    .then()
                    .statusCode(400)
                    .body("errors[0].field", equalTo("council"))
                    .body("errors[0].wanted", containsString(upper));
        } finally {
            for (String id : List.of(longRoad, worksRoad)) {
                Api.change(
                                COORDINATOR,
                                "/api/land-areas/" + id,
                                "/ending",
                                "{\"until\":\"2020-01-02\",\"reason\":\"the test is over\"}")
                        .statusCode(200);
            }
        }
        assertThat(Api.get(COORDINATOR, TURTLES).getList("windows.councils")).containsOnlyNulls();
    }
}
