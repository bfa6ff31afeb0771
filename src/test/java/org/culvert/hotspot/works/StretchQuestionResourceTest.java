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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class StretchQuestionResourceTest {
    private static final String FENCED =
            "\"road\":\"Works Road\",\"fromChainageMetres\":2000,\"toChainageMetres\":4000,\"yearFrom\":2016,\"yearTo\":2018";

    @BeforeEach
    void makeWorld() {
        WorksWorld.make();
    }

    private static Json ask(String role, String question) {
        return Api.post(role, "/api/stretch-questions", "{" + question + "}")
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    @Test
    void countsAreByYearMonthAndGroup() {
        Json answer = ask(COORDINATOR, FENCED);
        // Twelve turtles, two wallabies, six hidden tortoises
        assertThat(answer.getInt("incidents")).isEqualTo(20);
        assertThat(answer.getList("byYear.of")).containsExactly("2016", "2017", "2018");
        assertThat(answer.getList("byYear.incidents")).containsExactly(8, 7, 5);
        assertThat(answer.getList("byMonth.incidents")).containsExactly(0, 0, 6, 0, 2, 6, 0, 0, 0, 6, 0, 0);
        assertThat(answer.getList("byGroup.of")).containsExactly("macropods", "occulta", "turtles");
        assertThat(answer.getList("byGroup.incidents")).containsExactly(2, 6, 12);
        assertThat(answer.getDouble("lengthMetres")).isEqualTo(2000);
        assertThat(answer.getList("pieces")).containsExactly("Works Road");
        assertThat(answer.getInt("basis.collisionsCounted"))
                .isEqualTo(20 + 2 + Arrays.stream(WorksWorld.LONG_ROAD).sum() + 1);
        assertThat(ask(COORDINATOR, FENCED + ",\"months\":[10]").getInt("incidents"))
                .isEqualTo(6);
    }

    /** Hauer and others 2002, Transportation Research Record 1784, 126-131, by hand from the counts of the world. */
    @Test
    void whatIsExpectedFollowsByHand() {
        Json answer = ask(COORDINATOR, FENCED + ",\"taxonGroup\":\"turtles\",\"chosenBeforeLooking\":true");
        int all = Arrays.stream(WorksWorld.LONG_ROAD).sum()
                + WorksWorld.INSIDE_BEFORE
                + WorksWorld.ENDS_BEFORE
                + WorksWorld.BEYOND_BEFORE;
        double kilometres = (WorksWorld.longRoadMetres() + WorksWorld.worksRoadMetres()) / 1000;
        double predicted = 2 * all / kilometres;
        assertThat(answer.getDouble("expected.predicted")).isCloseTo(predicted, within(2e-4));
        double k = answer.getDouble("expected.overdispersion");
        double weight = 1 / (1 + k * predicted);
        assertThat(k).isPositive();
        assertThat(answer.getDouble("expected.weight")).isCloseTo(weight, within(2e-4));
        double estimate = weight * predicted + (1 - weight) * 12;
        assertThat(answer.getDouble("expected.estimate")).isCloseTo(estimate, within(2e-3));
        assertThat(answer.getDouble("expected.excess")).isCloseTo(estimate - predicted, within(2e-3));
        assertThat(answer.getDouble("expected.low")).isLessThan(estimate);
        assertThat(answer.getDouble("expected.high")).isBetween(estimate, 25.0);
        assertThat(answer.getDouble("expected.chanceOfExcess")).isBetween(0.95, 1.0);
        assertThat(answer.getDouble("expected.perKilometreYear")).isCloseTo(estimate / 6, within(1e-3));
        assertThat(answer.getString("expected.basisSentence")).startsWith("Burden, not risk");
        assertThat(answer.getString("sentence"))
                .contains("12 collisions were reported on Works Road", "chosen before anyone looked");
    }

    @Test
    void howItWasChosenIsInTheSentence() {
        assertThat(ask(COORDINATOR, FENCED + ",\"chosenBeforeLooking\":false").getString("sentence"))
                .contains("chosen after looking", "overstates");
        assertThat(ask(COORDINATOR, FENCED).getString("sentence")).contains("was not said: take it that it was");
    }

    @Test
    void whatIsNeverReportedIsKeptApartWithItsSource() {
        Json answer = ask(COORDINATOR, FENCED + ",\"taxonGroup\":\"turtles\"");
        assertThat(answer.getDouble("unreported[0].multiplierLow")).isEqualTo(2);
        assertThat(answer.getDouble("unreported[0].perYearLow")).isEqualTo(8);
        assertThat(answer.getDouble("unreported[0].perYearHigh")).isEqualTo(40);
        assertThat(answer.getString("unreported[0].source")).contains("Santos", "2016");
    }

    @Test
    void whatWorksDidElsewhereComesWithItsCitation() {
        assertThat(ask(COORDINATOR, FENCED).getList("elsewhere")).hasSizeGreaterThan(10);
        Json fences = ask(COORDINATOR, FENCED + ",\"worksKind\":\"fence\"");
        assertThat(fences.getDouble("elsewhere[0].reductionPercent")).isEqualTo(52.7);
        assertThat(fences.getDouble("elsewhere[0].reductionHighPercent")).isEqualTo(94);
        assertThat(fences.getString("elsewhere[0].source")).contains("Huijser");
        assertThat(fences.getList("elsewhere.works")).doesNotContain("reflectors", "animal detection system");
        assertThat(ask(COORDINATOR, FENCED + ",\"worksKind\":\"signs\"")
                        .getList("saidPlainly")
                        .toString())
                .contains("No published figure of that kind");
    }

    @Test
    void theChanceOfSeeingAnEffectIsSaidForOneToTenYears() {
        Json power = ask(COORDINATOR, FENCED + ",\"taxonGroup\":\"turtles\",\"reductionPercent\":80")
                .under("power");
        assertThat(power.getList("years.yearsAfter")).containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10);
        List<Double> chances = power.getList("years.power");
        assertThat(chances).isSorted();
        assertThat(chances.get(9)).isBetween(0.5, 1.0);
        assertThat(power.getString("sentence")).contains("80 %", "after 1 year", "after 10");
    }

    /** Twenty-five years of 1000 at 4 % are 15,622.08 (the annuity's closed form; Mishan and Quah 2007). */
    @Test
    void aBusinessCaseIsOfTheAskersFigures() {
        String costs = """
                ,"businessCase":{"currency":"AUD","priceYear":2025,"collisionsPerYear":{"best":4},
                 "shareAvoided":{"low":0,"best":0.5,"high":0.94},
                 "unitCosts":[{"name":"vehicle","perCollision":{"best":5000},"source":"the insurer"}],
                 "building":{"best":100000},"upkeepPerYear":{"best":1000},"discountRate":{"best":0.04},"lifeYears":25}
                """;
        Json worth = ask(COORDINATOR, FENCED + costs).under("businessCase");
        double annuity = (1 - Math.pow(1.04, -25)) / 0.04;
        assertThat(worth.getDouble("benefits.best")).isCloseTo(10_000 * annuity, within(0.5));
        assertThat(worth.getDouble("costs.best")).isCloseTo(100_000 + 1000 * annuity, within(0.5));
        assertThat(worth.getDouble("net.low")).isCloseTo(-100_000 - 1000 * annuity, within(0.5));
        assertThat(worth.getDouble("benefitCostRatio.best"))
                .isCloseTo(10_000 * annuity / (100_000 + 1000 * annuity), within(1e-3));
        assertThat(worth.getBoolean("collisionsAreTheAskers")).isTrue();
        assertThat(worth.getString("sentence")).contains("AUD", "25 years");
        Json expected = ask(COORDINATOR, FENCED + costs.replace("\"collisionsPerYear\":{\"best\":4},", ""));
        assertThat(expected.getDouble("businessCase.collisionsPerYear.best"))
                .isCloseTo(expected.getDouble("expected.estimate") / 3, within(1e-3));
        assertThat(expected.getDouble("businessCase.collisionsPerYear.low"))
                .isCloseTo(expected.getDouble("expected.low") / 3, within(1e-3));
        for (String[] wrong : new String[][] {
            {costs.replace("\"best\":0.5", "\"best\":2"), "businessCase.shareAvoided"},
            {costs.replace("\"best\":5000", "\"best\":-1"), "businessCase.unitCosts[0].perCollision"},
            {costs.replace("\"lifeYears\":25", "\"lifeYears\":0"), "businessCase.lifeYears"},
            {
                costs.replace("{\"best\":100000}", "{\"best\":0}").replace("{\"best\":1000}", "{\"best\":0}"),
                "businessCase.building"
            },
            {
                costs.replace("\"lifeYears\"", "\"renewals\":[{\"year\":26,\"cost\":{\"best\":1}}],\"lifeYears\""),
                "businessCase.renewals[0].year"
            }
        }) {
            Api.post(COORDINATOR, "/api/stretch-questions", "{" + FENCED + wrong[0] + "}")
                    .statusCode(400)
                    .body("errors.field", hasItem(wrong[1]));
        }
    }

    @Test
    void whatIsWrongWithAQuestionIsSaidByField() {
        String stretch = "\"fromChainageMetres\":2000,\"toChainageMetres\":4000";
        for (String[] wrong : new String[][] {
            {"\"road\":\"Nowhere\"," + stretch, "road"},
            {stretch, "road"},
            {"\"road\":\"Works Road\",\"fromChainageMetres\":4000,\"toChainageMetres\":2000", "toChainageMetres"},
            {"\"road\":\"Works Road\",\"fromChainageMetres\":4000,\"toChainageMetres\":20000", "toChainageMetres"},
            {FENCED.replace("2018", "2190"), "yearTo"},
            {FENCED.replace("2016", "2019"), "yearFrom"},
            {FENCED.replace("2016", "1950"), "yearFrom"},
            {FENCED + ",\"taxonGroup\":\"dragons\"", "taxonGroup"},
            {FENCED + ",\"seasonWindow\":\"winter\"", "seasonWindow"},
            {FENCED + ",\"months\":[13]", "months[0]"},
            {FENCED + ",\"reductionPercent\":0", "reductionPercent"},
            {FENCED + ",\"windowMetres\":1", "windowMetres"}
        }) {
            Api.post(COORDINATOR, "/api/stretch-questions", "{" + wrong[0] + "}")
                    .statusCode(400)
                    .body("errors.field", hasItem(wrong[1]));
        }
    }

    @Test
    void aRoadsAuthorityIsToldNoSmallNumbersAndNothingOfASensitiveSpecies() {
        Json few = ask(ROADS_AUTHORITY, FENCED + ",\"taxonGroup\":\"macropods\"");
        assertThat(few.<Object>get("incidents")).isNull();
        assertThat(few.<Object>get("expected")).isNull();
        assertThat(few.<Object>get("power")).isNull();
        assertThat(few.getList("byYear")).isEmpty();
        assertThat(few.getString("sentence")).startsWith("A few collisions").doesNotContain("2 collisions");
        Json turtles = ask(ROADS_AUTHORITY, FENCED + ",\"taxonGroup\":\"turtles\"");
        assertThat(turtles.getInt("incidents")).isEqualTo(12);
        // 8, 0 and 4: the 4 is small, and would follow from the others
        assertThat(turtles.getList("byYear.incidents")).contains((Object) null);
        assertThat(turtles.<Object>get("byYear[2].incidents")).isNull();
        assertThat(turtles.<Object>get("byYear[0].incidents")).isNull();
        Json all = ask(ROADS_AUTHORITY, FENCED);
        assertThat(all.getList("byGroup.of"))
                .as("no sensitive group is named among the others either")
                .containsExactly("macropods", "not known, or not told to you", "turtles");
        Json rare = ask(ROADS_AUTHORITY, FENCED + ",\"taxonGroup\":\"occulta\"");
        assertThat(rare.<Object>get("incidents")).isNull();
        assertThat(rare.<Object>get("basis")).isNull();
        assertThat(rare.getString("informationWithheld")).contains("sensitive");
        assertThat(ask(COORDINATOR, FENCED + ",\"taxonGroup\":\"occulta\"").getInt("incidents"))
                .isEqualTo(6);
        Api.post(ROADS_AUTHORITY, "/api/stretch-questions", "{" + FENCED.replace("2000", "2010") + "}")
                .statusCode(400)
                .body("errors.field", hasItem("fromChainageMetres"));
    }
}
