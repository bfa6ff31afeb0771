package org.culvert.hotspot.works;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import java.util.Arrays;
import java.util.List;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class BurdenResourceTest {
    private static final String TURTLES = "/api/burden?taxonGroup=turtles&yearFrom=2016&yearTo=2018";

    @BeforeEach
    void makeWorld() {
        WorksWorld.make();
    }

    @Test
    void windowsAreRankedByExcessAndShareNoRoad() {
        Json burden = Api.get(COORDINATOR, TURTLES);
        // Seven turtles within 300 m on the eleventh kilometre; on Works Road one every 150 m
        assertThat(burden.getString("windows[0].road")).isIn("Works Road", "Long Road");
        List<Double> excess = burden.getList("windows.excess");
        assertThat(excess).isSortedAccordingTo((one, other) -> Double.compare(other, one));
        assertThat(excess).allMatch(value -> value > 0);
        assertThat(burden.getInt("windows[0].incidents")).isEqualTo(7);
        double k = burden.getDouble("model.overdispersion");
        double predicted = burden.getDouble("windows[0].predicted");
        double weight = 1 / (1 + k * predicted);
        double estimate = weight * predicted + (1 - weight) * 7;
        assertThat(burden.getDouble("windows[0].estimate")).isCloseTo(estimate, within(2e-3));
        assertThat(burden.getDouble("windows[0].excessPerKilometreYear"))
                .isCloseTo((estimate - predicted) / 3, within(2e-3));
        assertThat(burden.getDouble("windows[0].chanceOfExcess")).isBetween(0.9, 1.0);
        assertThat(burden.getString("basisSentence")).startsWith("Burden, not risk");
        assertThat(burden.getList("windows.basis")).containsOnly("burden");
    }

    @Test
    void peaksAreThoseOfGreatEnoughPrecisionAndResidualsEndAtTheirSum() {
        Json burden = Api.get(COORDINATOR, TURTLES + "&largestVariation=0.45");
        assertThat(burden.getList("peaks.road")).contains("Long Road", "Works Road");
        assertThat(burden.<Double>getList("peaks.coefficientOfVariation").stream()
                        .filter(java.util.Objects::nonNull)
                        .toList())
                .isNotEmpty()
                .allMatch(variation -> variation <= 0.45);
        assertThat(burden.getString("residuals.by")).isEqualTo("lengthMetres");
        int steps = burden.getList("residuals.steps").size();
        assertThat(burden.getDouble("residuals.steps[" + (steps - 1) + "].bound"))
                .isCloseTo(0, within(1e-3));
        // Roads of a class with a level of its own have as many as the model expects of them
        assertThat(burden.getDouble("residuals.steps[" + (steps - 1) + "].sum")).isCloseTo(0, within(0.2));
    }

    @Test
    void aSeasonCountsItsMonthsAlone() {
        Json october = Api.get(COORDINATOR, TURTLES + "&months=10");
        assertThat(october.getInt("basis.collisionsCounted")).isEqualTo(6);
        assertThat(october.getList("windows.road")).containsOnly("Works Road");
    }

    @Test
    void aRoadsAuthorityIsToldNoSmallNumbersAndNothingOfASensitiveSpecies() {
        Json told = Api.get(ROADS_AUTHORITY, TURTLES);
        assertThat(told.<Integer>getList("windows.incidents")).isNotEmpty().allMatch(incidents -> incidents >= 5);
        assertThat(told.getString("informationWithheld")).contains("fewer than 5");
        Json rare = Api.get(ROADS_AUTHORITY, TURTLES.replace("turtles", "occulta"));
        assertThat(rare.getList("windows")).isEmpty();
        assertThat(rare.getString("informationWithheld")).contains("sensitive");
        assertThat(Api.get(COORDINATOR, TURTLES.replace("turtles", "occulta")).getList("windows"))
                .isNotEmpty();
    }

    @Test
    void whatIsWrongIsSaidByField() {
        for (String[] wrong : new String[][] {
            {"windowMetres=10", "windowMetres"},
            {"windowMetres=wide", "windowMetres"},
            {"stepMetres=5000", "stepMetres"},
            {"limit=0", "limit"},
            {"largestVariation=0", "largestVariation"},
            {"yearTo=2190", "yearTo"},
            {"yearFrom=2190", "yearFrom"},
            {"months=0", "months"},
            {"taxonGroup=dragons", "taxonGroup"}
        }) {
            Api.as(COORDINATOR)
                    .get("/api/burden?" + wrong[0])
                    .then()
                    .statusCode(400)
                    .body("errors.field", hasItem(wrong[1]));
        }
    }

    @Test
    void everyCollisionOnTheRoadsIsInTheModel() {
        Json burden = Api.get(COORDINATOR, TURTLES);
        assertThat(burden.getInt("basis.collisionsCounted"))
                .isEqualTo(Arrays.stream(WorksWorld.LONG_ROAD).sum()
                        + WorksWorld.INSIDE_BEFORE
                        + WorksWorld.ENDS_BEFORE
                        + WorksWorld.BEYOND_BEFORE
                        + 1);
        assertThat(burden.getInt("model.sitesLeftOut")).isZero();
    }
}
