package org.culvert.hotspot.works;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.apache.commons.numbers.gamma.LogGamma;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class WorksResourceTest {
    private static final String TURTLES = "taxonGroup=turtles&yearsBefore=3&yearsAfter=3";

    @BeforeEach
    void makeWorld() {
        WorksWorld.make();
    }

    @Test
    void worksAreEnteredListedAndRead() {
        String id = Api.post(
                        ROADS_AUTHORITY,
                        "/api/works",
                        WorksWorld.entry("back road", 1000, 2000, "2024-02-01", "null", ""))
                .statusCode(201)
                .header("Location", containsString("/api/works/"))
                .body("road", equalTo("Back Road"))
                .body("builtUntil", equalTo(null))
                .extract()
                .path("id");
        assertThat(Api.get(COORDINATOR, "/api/works?limit=1").getList("items.id"))
                .containsExactly(id);
        Json read = Api.get(ADMIN, "/api/works/" + id);
        assertThat(read.getString("kind")).isEqualTo("fence");
        assertThat(read.getInt("networkNumber"))
                .isEqualTo(Api.get(ADMIN, "/api/road-networks").getInt("[0].number"));
        assertThat(read.getInt("record.revision")).isEqualTo(1);
    }

    @Test
    void aCorrectionIsARevisionWithItsReasonAndWantsTheTag() {
        String id = Api.make(
                        COORDINATOR, "/api/works", WorksWorld.entry("Back Road", 3000, 4000, "2024-02-01", "null", ""))
                .getString("id");
        Api.correct(
                        ROADS_AUTHORITY,
                        "/api/works/" + id,
                        "{\"builtUntil\":\"2024-06-30\",\"kind\":\"fenceAndCrossing\",\"reason\":\"it was finished\"}")
                .statusCode(200)
                .body("builtUntil", equalTo("2024-06-30"))
                .body("kind", equalTo("fenceAndCrossing"))
                .body("words", equalTo("a fence of 1.8 m"))
                .body("record.revision", equalTo(2));
        assertThat(Api.get(COORDINATOR, "/api/records/" + id + "/revisions").getList("reason"))
                .containsExactly(null, "it was finished");
        Api.as(COORDINATOR)
                .contentType("application/merge-patch+json")
                .body("{\"words\":\"other\",\"reason\":\"wrong\"}")
                .patch("/api/works/" + id)
                .then()
                .statusCode(428);
        for (String[] wrong : new String[][] {
            {"\"builtUntil\":\"2024-01-31\"", "builtUntil"},
            {"\"endedOn\":\"2024-06-30\"", "endedOn"},
            {"\"toChainageMetres\":3000", "toChainageMetres"},
            {"\"toChainageMetres\":90000", "toChainageMetres"},
            {"\"road\":\"No Such Road\"", "road"},
            {"\"endsMetres\":0", "endsMetres"},
            {"\"builtFrom\":null", "builtFrom"}
        }) {
            Api.correct(COORDINATOR, "/api/works/" + id, "{" + wrong[0] + ",\"reason\":\"wrong\"}")
                    .statusCode(400)
                    .body("errors.field", hasItem(wrong[1]));
        }
    }

    @Test
    void whatIsWrongWithWorksIsSaidByField() {
        for (String[] wrong : new String[][] {
            {WorksWorld.entry("No Such Road", 0, 100, "2024-01-01", "null", ""), "road"},
            {WorksWorld.entry("Back Road", 500, 500, "2024-01-01", "null", ""), "toChainageMetres"},
            {WorksWorld.entry("Back Road", 4000, 9000, "2024-01-01", "null", ""), "toChainageMetres"},
            {WorksWorld.entry("Back Road", -500, 900, "2024-01-01", "null", ""), "fromChainageMetres"},
            {WorksWorld.entry("Back Road", 0, 900, "2024-01-01", "\"2023-12-31\"", ""), "builtUntil"},
            {WorksWorld.entry("Back Road", 0, 900, "2024-01-01", "null", ",\"endedOn\":\"2023-01-01\""), "endedOn"},
            {WorksWorld.entry("Back Road", 0, 900, "1024-01-01", "null", ""), "builtFrom"},
            {WorksWorld.entry("", 0, 900, "2024-01-01", "null", ""), "road"}
        }) {
            Api.post(COORDINATOR, "/api/works", wrong[0])
                    .statusCode(400)
                    .body("type", containsString("invalid"))
                    .body("errors.field", hasItem(wrong[1]));
        }
    }

    @Test
    void onlyThoseWhoAnswerForRoadsAndRecordsMayAsk() {
        String id = Api.make(COORDINATOR, "/api/works", WorksWorld.entry("Back Road", 0, 900, "2024-01-01", "null", ""))
                .getString("id");
        for (String role : List.of(DISPATCHER, RESCUER, CLINIC, CARER, OFFICER)) {
            Api.as(role).get("/api/works").then().statusCode(403);
            Api.as(role).get("/api/works/" + id + "/effect").then().statusCode(403);
            Api.as(role).get("/api/burden").then().statusCode(403);
            Api.post(role, "/api/stretch-questions", "{}").statusCode(403);
            Api.post(role, "/api/works", "{}").statusCode(403);
        }
    }

    /**
     * Hauer and others 2002 (Transportation Research Record 1784, 126-131) for the estimate, Hauer 1997 (Observational
     * Before-After Studies in Road Safety, chapters 6, 9 and 11) for what came of it, both by hand from the counts of the
     * world. The maximum likelihood of the rate is the plain rate where the overdispersion falls with the length; that of
     * the overdispersion is looked for by itself.
     */
    @Test
    void thePlantedEffectIsFoundAndFollowsByHand() {
        Json effect = effect(COORDINATOR, fence(",\"publicityChange\":\"a sign with the number since 2020\""), TURTLES);
        assertThat(effect.getString("beforeFrom") + " " + effect.getString("beforeTo"))
                .isEqualTo("2016-01-01 2018-12-31");
        assertThat(effect.getString("afterFrom") + " " + effect.getString("afterTo"))
                .isEqualTo("2020-01-01 2022-12-31");
        int reference = java.util.Arrays.stream(WorksWorld.LONG_ROAD).sum();
        assertThat(effect.getInt("comparisonBefore")).isEqualTo(reference);
        assertThat(effect.getInt("comparisonAfter")).isEqualTo(reference);
        double kilometres = (WorksWorld.longRoadMetres() + WorksWorld.worksRoadMetres() - 5000) / 1000;
        double predicted = reference / (kilometres * 3) * 2 * 3;
        Json inside = part(effect, "inside");
        assertThat(inside.getInt("before")).isEqualTo(WorksWorld.INSIDE_BEFORE);
        assertThat(inside.getInt("after")).isEqualTo(WorksWorld.INSIDE_AFTER);
        assertThat(inside.getDouble("predictedBefore")).isCloseTo(predicted, within(2e-4));
        double k = effect.getDouble("overdispersion");
        assertThat(k).isCloseTo(mostLikelyOverdispersion(kilometres), within(1e-3));
        double weight = 1 / (1 + k / 2 * predicted);
        double estimate = weight * predicted + (1 - weight) * WorksWorld.INSIDE_BEFORE;
        double variance = (1 - weight) * estimate;
        double change = (double) reference / reference / (1 + 1.0 / reference);
        double expected = estimate * change;
        double relative = variance / (estimate * estimate) + 2.0 / reference;
        assertThat(inside.getDouble("expected")).isCloseTo(expected, within(2e-3));
        assertThat(inside.getDouble("expectedStandardError")).isCloseTo(expected * Math.sqrt(relative), within(2e-3));
        double ratio = WorksWorld.INSIDE_AFTER / expected / (1 + relative);
        assertThat(inside.getDouble("ratio")).isCloseTo(ratio, within(2e-4));
        assertThat(inside.getDouble("ratioLow")).isLessThan(ratio);
        assertThat(inside.getDouble("ratioHigh")).isBetween(ratio, 1.0);
        assertThat(inside.getString("verdict")).contains("fewer than the", "95 % interval");
        assertThat(inside.getDouble("rawRatio")).isCloseTo(1.0 / 12, within(1e-4));
        assertThat(ratio).as("counts alone flatter the works").isGreaterThan(1.0 / 12);
        assertThat(part(effect, "ends").getInt("after")).isEqualTo(WorksWorld.ENDS_AFTER);
        assertThat(part(effect, "beyond").getInt("after")).isEqualTo(WorksWorld.BEYOND_AFTER);
        assertThat(part(effect, "combined").getInt("before"))
                .isEqualTo(WorksWorld.INSIDE_BEFORE + WorksWorld.ENDS_BEFORE + WorksWorld.BEYOND_BEFORE);
        assertThat(effect.getString("basisSentence")).startsWith("Burden, not risk");
        assertThat(effect.getString("notes[0].text")).isEqualTo("a sign with the number since 2020");
        assertThat(effect.getList("cautions").toString()).doesNotContain("Nothing is noted of effort");
        assertThat(effect.getList("roadClasses")).containsExactly("primary");
    }

    /** k of one kilometre by a search along the likelihood, theta of a window falling with its length. */
    private static double mostLikelyOverdispersion(double kilometres) {
        int sum = java.util.Arrays.stream(WorksWorld.LONG_ROAD).sum();
        double best = 0;
        double greatest = Double.NEGATIVE_INFINITY;
        for (double k = 0.01; k < 20; k += 0.0002) {
            double likelihood = 0;
            for (int i = 0; i < WorksWorld.LONG_ROAD.length; i++) {
                double length = i < WorksWorld.LONG_ROAD.length - 1
                        ? 1
                        : WorksWorld.longRoadMetres() / 1000 - WorksWorld.LONG_ROAD.length + 1;
                likelihood += logLikelihood(WorksWorld.LONG_ROAD[i], sum / kilometres * length, length / k);
            }
            double rest = (WorksWorld.worksRoadMetres() - 5500) / 1000;
            likelihood += logLikelihood(0, sum / kilometres * 0.5, 0.5 / k);
            likelihood += logLikelihood(0, sum / kilometres * rest, rest / k);
            if (likelihood > greatest) {
                greatest = likelihood;
                best = k;
            }
        }
        return best;
    }

    private static double logLikelihood(int count, double mean, double theta) {
        return LogGamma.value(count + theta)
                - LogGamma.value(theta)
                + theta * Math.log(theta / (theta + mean))
                + count * Math.log(mean / (theta + mean));
    }

    @Test
    void whereNoneCameAfterThereIsABoundAndNoEstimate() {
        Json effect = effect(COORDINATOR, fence(""), "taxonGroup=turtles&yearsBefore=3&yearsAfter=1&beyondMetres=100");
        Json inside = part(effect, "inside");
        assertThat(inside.getInt("after")).isZero();
        assertThat(inside.<Object>get("ratio")).isNull();
        assertThat(inside.<Object>get("reductionPercent")).isNull();
        assertThat(inside.getDouble("upperBound")).isPositive();
        assertThat(inside.getString("verdict")).startsWith("None came after");
        assertThat(effect.getList("saidPlainly").toString()).contains("fewer than three");
        assertThat(effect.getList("cautions").toString()).contains("Nothing is noted of effort or publicity");
    }

    @Test
    void stretchesToCompareWithCanBeChosenButNotAtWorks() {
        String id = fence("");
        Json effect = effect(COORDINATOR, id, TURTLES + "&comparison=Long Road:10000-16000");
        // Kilometres 10 to 15 have 7 + 1 + 3
        assertThat(effect.getInt("comparisonBefore")).isEqualTo(11);
        assertThat(effect.getString("comparison")).isEqualTo("Long Road from 10000 to 16000 m");
        for (String[] wrong : new String[][] {
            {"comparison=Works Road:1000-3000", "comparison"},
            {"comparison=Nowhere:1-2", "comparison"},
            {"comparison=Long Road", "comparison"},
            {"yearsBefore=0", "yearsBefore"},
            {"yearsAfter=99", "yearsAfter"},
            {"beyondMetres=0", "beyondMetres"},
            {"windowMetres=5", "windowMetres"},
            {"months=13", "months"},
            {"months=March", "months"},
            {"taxonGroup=dragons", "taxonGroup"},
            {"seasonWindow=winter", "seasonWindow"}
        }) {
            Api.as(COORDINATOR)
                    .get("/api/works/" + id + "/effect?" + wrong[0])
                    .then()
                    .statusCode(400)
                    .body("errors.field", hasItem(wrong[1]));
        }
    }

    @Test
    void worksUnderWayOrJustFinishedHaveNoEffectYet() {
        String underWay = Api.make(
                        COORDINATOR, "/api/works", WorksWorld.entry("Back Road", 1000, 2000, "2019-01-01", "null", ""))
                .getString("id");
        Json effect = effect(COORDINATOR, underWay, TURTLES);
        assertThat(effect.getList("parts")).isEmpty();
        assertThat(effect.getString("saidPlainly[0]")).startsWith("The works are still under way");
        String shortLived = Api.make(
                        COORDINATOR,
                        "/api/works",
                        WorksWorld.entry(
                                "Back Road", 1000, 2000, "2019-01-01", "\"2019-12-31\"", ",\"endedOn\":\"2020-06-01\""))
                .getString("id");
        assertThat(effect(COORDINATOR, shortLived, TURTLES).getString("saidPlainly[0]"))
                .startsWith("No whole year has passed");
    }

    @Test
    void countsAloneAreNeverShown() {
        // One turtle before and none after on all secondary roads: nothing says what would have come
        String id = Api.make(
                        COORDINATOR,
                        "/api/works",
                        WorksWorld.entry("Back Road", 900, 1100, "2019-01-01", "\"2019-12-31\"", ""))
                .getString("id");
        Json effect = effect(COORDINATOR, id, TURTLES + "&beyondMetres=10");
        assertThat(effect.getList("parts")).isEmpty();
        assertThat(effect.getList("saidPlainly").toString())
                .contains("do not tell what is usual", "counts alone are not shown");
    }

    @Test
    void aRoadsAuthorityHearsTheVerdictWithoutSmallNumbersAndNothingOfASensitiveSpecies() {
        String id = fence("");
        Json told = effect(ROADS_AUTHORITY, id, TURTLES);
        Json inside = part(told, "inside");
        assertThat(inside.<Object>get("after")).isNull();
        assertThat(inside.<Object>get("ratio")).isNull();
        assertThat(inside.<Object>get("expected")).isNull();
        assertThat(inside.getString("verdict")).startsWith("Fewer than would have been expected");
        Api.as(ROADS_AUTHORITY)
                .get("/api/works/" + id + "/effect?comparison=Long Road:10010-16000")
                .then()
                .statusCode(400)
                .body("errors.field", hasItem("comparison"));
        Json withheld = effect(ROADS_AUTHORITY, id, "taxonGroup=occulta&yearsBefore=3&yearsAfter=3");
        assertThat(withheld.getList("parts")).isEmpty();
        assertThat(withheld.<Object>get("basis")).isNull();
        assertThat(withheld.getString("informationWithheld")).contains("sensitive");
        assertThat(effect(COORDINATOR, id, "taxonGroup=occulta&yearsBefore=3&yearsAfter=3")
                        .getString("informationWithheld"))
                .isNull();
    }

    private static String fence(String more) {
        return Api.make(COORDINATOR, "/api/works", WorksWorld.fence(more)).getString("id");
    }

    private static Json effect(String role, String id, String query) {
        return Api.get(role, "/api/works/" + id + "/effect?" + query);
    }

    private static Json part(Json effect, String name) {
        return Json.from(effect.prettify()).under("parts.find { it.part == '" + name + "' }");
    }
}
