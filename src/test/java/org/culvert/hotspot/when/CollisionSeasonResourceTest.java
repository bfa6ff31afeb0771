package org.culvert.hotspot.when;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import org.culvert.hotspot.EvidenceRuns;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Worlds of a year each, whose answers follow by hand from the formulas of Fisher (1993), sections 2.3 and 4.3. */
@QuarkusTest
class CollisionSeasonResourceTest {
    private static final String TWO_DAYS = "Seasonalis bidua";
    private static final String DECEMBER = "Seasonalis decembris";
    private static final String BOTH_ENDS = "Seasonalis bifinis";

    /** When each thing happened, in years of which no other test tells. */
    private static final int GATHERED = 1961;

    private static final int CALLED = 1962;
    private static final int HELD_APART = 1963;

    private static boolean strewn;

    @BeforeEach
    void makeWorld() {
        World.shared();
        synchronized (CollisionSeasonResourceTest.class) {
            if (!strewn) {
                strewn = true;
                strew();
            }
        }
    }

    private static void strew() {
        group("two-days", TWO_DAYS);
        group("december", DECEMBER);
        group("both-ends", BOTH_ENDS);
        // Days 161 and 181 of 365, at noon of Sydney, six on each
        for (int i = 0; i < 6; i++) {
            collision(TWO_DAYS, happened(GATHERED + "-06-10T02:00:00Z"));
            collision(TWO_DAYS, happened(GATHERED + "-06-30T02:00:00Z"));
            collision(DECEMBER, happened(text("%d-12-1%dT14:00:00Z", GATHERED, i)));
        }
        // Both ends of a half-year apart, days 1 to 10 of April and of October: the doubled directions gather
        for (int i = 1; i <= 9; i++) {
            collision(BOTH_ENDS, happened(text("%d-04-0%dT02:00:00Z", GATHERED, i)));
            collision(BOTH_ENDS, happened(text("%d-10-0%dT02:00:00Z", GATHERED, i)));
        }
        for (int month = 1; month <= 12; month++) {
            for (int i = 0; i < 11; i++) {
                Api.make(DISPATCHER, "/api/calls", text("""
                        {"receivedAt":"%d-%02d-1%dT01:00:00Z","cause":"orphaned"}
                        """, CALLED, month, i % 10));
            }
        }
        for (int i = 0; i < 5; i++) {
            collision(TWO_DAYS, happened(text("%d-06-1%dT02:00:00Z", CALLED, i)));
        }
        // Reports at noon. Known to lie within the night of June; from the night into the day; not known at all
        collision(TWO_DAYS, notBefore(HELD_APART, "06-10T13:00:00Z", "06-10T17:00:00Z"));
        collision(TWO_DAYS, notBefore(HELD_APART, "06-11T13:00:00Z", "06-12T02:00:00Z"));
        for (int i = 0; i < 3; i++) {
            collision(TWO_DAYS, text("\"receivedAt\":\"%d-06-1%dT02:30:00Z\"", HELD_APART, 3 + i));
        }
        collision(TWO_DAYS, notBefore(HELD_APART, "06-01T13:00:00Z", "08-10T02:00:00Z"));
    }

    private static void group(String key, String species) {
        Api.post(ADMIN, "/api/taxon-groups", text("""
                        [{"key":"%s","name":"%s","pouch":false,"clutches":false,"introduced":false}]
                        """, key, key)).statusCode(200);
        Api.post(ADMIN, "/api/taxa", text("""
                        [{"scientificName":"%s","vernacularName":"%s","taxonRank":"species","taxonGroup":"%s"}]
                        """, species, key, key)).statusCode(200);
    }

    private static String happened(String at) {
        return "\"receivedAt\":\"" + at + "\",\"happenedAt\":\"" + at + "\"";
    }

    private static String notBefore(int year, String notBefore, String received) {
        return text("\"receivedAt\":\"%d-%s\",\"happenedNotBefore\":\"%d-%s\"", year, received, year, notBefore);
    }

    private static void collision(String species, String times) {
        Api.make(DISPATCHER, "/api/calls", text("""
                {%s,"cause":"collisionWithVehicle","animals":[{"scientificName":"%s"}],
                 "place":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.02"}}}
                """, times, species));
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    private static Json told(String role, int year, String more) {
        return Api.get(role, text("/api/collision-seasons?periodFrom=%d-01-01&periodTo=%d-12-31%s", year, year, more));
    }

    private static Map<String, Double> statistics(Json told) {
        Map<String, Double> statistics = new java.util.HashMap<>();
        for (Map<String, Object> test : told.<Map<String, Object>>getList("season.year.tests")) {
            statistics.put((String) test.get("test"), ((Number) test.get("statistic")).doubleValue());
        }
        return statistics;
    }

    /** Two days 20 apart: R = cos(10 / 365 * 2 pi) = 0.9852, sd = sqrt(-2 ln R) = 10.0 days, z = 12 R^2 = 11.65. */
    @Test
    void twoDaysThreeWeeksApartAreOneSeasonBetweenThem() {
        Json told = told(COORDINATOR, GATHERED, "&taxonGroup=two-days");
        assertThat(told.getInt("season.collisions")).isEqualTo(12);
        assertThat(told.getString("season.year.meanDay")).isEqualTo("--06-20");
        assertThat(told.getDouble("season.year.resultantLength")).isEqualTo(0.985);
        assertThat(told.getDouble("season.year.circularStandardDeviationDays")).isEqualTo(10.0);
        assertThat(statistics(told).get("Rayleigh")).isEqualTo(11.6);
        assertThat(told.getString("season.year.peaks")).isEqualTo("one");
        assertThat(told.getString("season.inWords")).contains("One season", "20 June");
        assertThat(told.getList("season.months", Integer.class)).containsExactly(0, 0, 0, 0, 0, 12, 0, 0, 0, 0, 0, 0);
        assertThat(told.getList("restsOn", String.class)).anyMatch(words -> words.contains("Santos"));
    }

    /** Two peaks half a year apart cancel out, and the doubled directions find them. */
    @Test
    void twoSeasonsAreToldAsTwoAndTheirMeanDayIsNotToBeUsed() {
        Json told = told(COORDINATOR, GATHERED, "&taxonGroup=both-ends");
        assertThat(told.getString("season.year.peaks")).isEqualTo("two");
        assertThat(told.getDouble("season.year.resultantLength")).isLessThan(0.05);
        assertThat(told.getList("season.year.peakDays", String.class))
                .hasSize(2)
                .anyMatch(day -> day.startsWith("--04-0"))
                .anyMatch(day -> day.startsWith("--10-0"));
        assertThat(told.getString("season.inWords")).contains("Two seasons", "April", "October", "not to be used");
        assertThat(told.<Double>get("season.year.tests.find { it.test == 'Rayleigh' }.p"))
                .isGreaterThan(0.05);
    }

    @Test
    void groupsStruckHalfAYearApartAreToldApart() {
        Json told = told(COORDINATOR, GATHERED, "&taxonGroup=two-days&comparedWith=december");
        assertThat(told.getInt("comparedWith.collisions")).isEqualTo(6);
        assertThat(told.getDouble("comparison.test.p")).isCloseTo(0.001, within(1e-9));
        assertThat(told.getInt("comparison.inBothLeftOut")).isZero();
        assertThat(told.getString("comparison.inWords")).contains("different times");
    }

    /** Eleven calls in each month but sixteen in June: chi-square = 25 / (5 * 16 / 137) - 5 = 37.8. */
    @Test
    void monthsAreHeldAgainstTheCallsWhereThereAreEnough() {
        Json told = told(COORDINATOR, CALLED, "&taxonGroup=two-days");
        assertThat(told.getList("season.effort.calls", Integer.class))
                .containsExactly(11, 11, 11, 11, 11, 16, 11, 11, 11, 11, 11, 11);
        assertThat(told.getDouble("season.effort.test.statistic")).isCloseTo(37.8, within(1e-6));
        assertThat(told.getDouble("season.effort.test.p")).isLessThanOrEqualTo(0.01);
        Json few = told(COORDINATOR, GATHERED, "&taxonGroup=two-days");
        assertThat(few.<Object>get("season.effort.test")).isNull();
        assertThat(few.getString("season.effort.inWords")).contains("too few calls", "bare year");
    }

    /** Sydney is ten hours ahead in June: 2 h UTC is noon, and 13 to 17 h UTC are 23 to 3 h of the night. */
    @Test
    void whatIsNotKnownOfLightAndHourStaysUnknown() {
        Json known = told(COORDINATOR, GATHERED, "&taxonGroup=two-days");
        assertThat(known.getInt("season.light.classes.find { it.light == 'day' }.collisions"))
                .isEqualTo(12);
        assertThat(known.getInt("season.light.unknown")).isZero();
        assertThat(known.getInt("season.hours.counts[12]")).isEqualTo(12);
        assertThat(known.getDouble("season.hours.meanHour")).isEqualTo(12.0);
        double shares = known.<Number>getList("season.light.classes.shareOfTime").stream()
                .mapToDouble(Number::doubleValue)
                .sum();
        assertThat(shares).isCloseTo(1, within(0.03));

        Json apart = told(COORDINATOR, HELD_APART, "&taxonGroup=two-days");
        assertThat(apart.getInt("season.collisions")).isEqualTo(5);
        assertThat(apart.getInt("season.countedOnDayOfReport")).isEqualTo(3);
        assertThat(apart.<Integer>get("season.leftOut.find { it.reason.contains('31 days') }.incidents"))
                .isEqualTo(1);
        assertThat(apart.getInt("season.light.classes.find { it.light == 'night' }.collisions"))
                .isEqualTo(1);
        assertThat(apart.getInt("season.light.unknown")).isEqualTo(4);
        assertThat(apart.getInt("season.hours.unknown")).isEqualTo(5);
        assertThat(apart.<Object>get("season.hours.meanHour")).isNull();
        assertThat(apart.getInt("season.reportHours.unknown")).isZero();
        assertThat(apart.getInt("season.reportHours.counts[12]")).isEqualTo(4);
    }

    @Test
    void theSameQuestionTwiceIsAnsweredInTheSameBytes() {
        String path = text(
                "/api/collision-seasons?periodFrom=%d-01-01&periodTo=%d-12-31&taxonGroup=both-ends"
                        + "&comparedWith=december",
                GATHERED, GATHERED);
        assertThat(Api.as(COORDINATOR).get(path).asByteArray())
                .isEqualTo(Api.as(COORDINATOR).get(path).asByteArray());
    }

    @Test
    void whatEachOwnersRoadsHaveIsAllThereIsOnRoads() {
        EvidenceRuns.make();
        int year = EvidenceRuns.year();
        Json all = told(COORDINATOR, year, "&taxonGroup=macropods");
        Json upper = told(COORDINATOR, year, "&taxonGroup=macropods&owner=Upper Shire");
        Json lower = told(COORDINATOR, year, "&taxonGroup=macropods&owner=Lower Shire");
        assertThat(lower.getInt("season.collisions")).isGreaterThanOrEqualTo(8);
        // Without a place, and far from any road: two wallabies are on no road of either
        assertThat(upper.getInt("season.collisions") + lower.getInt("season.collisions"))
                .isEqualTo(all.getInt("season.collisions") - 2);
    }

    @ParameterizedTest
    @ValueSource(strings = {DISPATCHER, RESCUER, CLINIC, CARER, RECIPIENT})
    void otherRolesAreNotEntitled(String role) {
        Api.as(role).get("/api/collision-seasons").then().statusCode(403);
    }

    @Test
    void everythingThatIsWrongIsNamedWithWhatWouldBeRight() {
        String path = "/api/collision-seasons?";
        Api.as(OFFICER)
                .get(path + "periodFrom=2019-01-01&periodTo=2019-06-30&taxonGroup=dragons&comparedWith=dragons"
                        + "&owner=Nobody")
                .then()
                .statusCode(400)
                .contentType("application/problem+json")
                .body("errors.find { it.field == 'periodTo' }.wanted", containsString("2019-12-31"))
                .body("errors.find { it.field == 'taxonGroup' }.wanted", containsString("macropods"))
                .body("errors.findAll { it.field == 'comparedWith' }.size()", equalTo(2))
                .body("errors.find { it.field == 'owner' }.detail", containsString("No road"));
        for (Map.Entry<String, String> wrong : Map.of(
                        "periodFrom=yesterday", "periodFrom",
                        "periodFrom=1900-01-01&periodTo=2019-12-31", "periodFrom",
                        "periodFrom=2019-02-01&periodTo=2019-01-01", "periodTo",
                        "periodFrom=2190-01-01&periodTo=2190-12-31", "periodTo",
                        "comparedWith=macropods", "comparedWith")
                .entrySet()) {
            Api.as(ADMIN)
                    .get(path + wrong.getKey())
                    .then()
                    .statusCode(400)
                    .body("errors[0].field", equalTo(wrong.getValue()));
        }
        Api.as(COORDINATOR)
                .get(path + "periodFrom=2018-07-01&periodTo=2019-06-30")
                .then()
                .statusCode(200);
        Api.as(ROADS_AUTHORITY)
                .get(path + "periodFrom=2018-07-01&periodTo=2019-06-30")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("periodFrom"));
    }

    @Test
    void aRoadsAuthorityIsToldNoSmallNumbers() {
        Json told = told(ROADS_AUTHORITY, GATHERED, "&taxonGroup=both-ends");
        assertThat(told.getInt("smallestCount")).isEqualTo(5);
        assertThat(told.getInt("season.collisions")).isEqualTo(18);
        assertThat(told.getInt("season.months[3]")).isEqualTo(9);
        Json apart = told(ROADS_AUTHORITY, HELD_APART, "&taxonGroup=two-days");
        List<Integer> all = new ArrayList<>(apart.getList("season.hours.counts", Integer.class));
        all.addAll(apart.getList("season.reportHours.counts", Integer.class));
        all.addAll(apart.getList("season.months", Integer.class));
        all.addAll(apart.getList("season.light.classes.collisions", Integer.class));
        all.add(apart.get("season.countedOnDayOfReport"));
        assertThat(all.stream().filter(Objects::nonNull)).allMatch(count -> count == 0 || count >= 5);
        Json none = told(ROADS_AUTHORITY, 1960, "&taxonGroup=two-days");
        assertThat(none.getInt("season.collisions")).isZero();
    }

    @Test
    void aGroupTooSmallToBeToldIsNotToldByItsCircleEither() {
        IntStream.range(0, 4).forEach(i -> collision(DECEMBER, happened(text("1964-12-1%dT14:00:00Z", i))));
        Json told = told(ROADS_AUTHORITY, 1964, "&taxonGroup=december&comparedWith=two-days");
        assertThat(told.<Object>get("season.collisions")).isNull();
        assertThat(told.<Object>get("season.year")).isNull();
        assertThat(told.getList("season.months")).containsOnlyNulls();
        assertThat(told.getString("season.inWords")).contains("too few collisions to be told");
        Json whole = told(COORDINATOR, 1964, "&taxonGroup=december");
        assertThat(whole.getInt("season.collisions")).isEqualTo(4);
        assertThat(whole.<Object>get("season.year")).isNull();
        assertThat(whole.getString("season.inWords")).contains("it takes 5");
    }

    @Test
    void whereASensitiveAnimalIsStruckIsNotToldByOwner() {
        EvidenceRuns.make();
        String taxon = Api.get(COORDINATOR, "/api/taxa?q=" + DECEMBER).getString("[0].id");
        settle(taxon, "{\"gridDegrees\":0,\"reason\":\"for this test\",\"reviewBy\":\"2090-01-01\"}");
        try {
            String path = text(
                    "/api/collision-seasons?periodFrom=%d-01-01&periodTo=%d-12-31&taxonGroup=december&owner=Upper Shire",
                    GATHERED, GATHERED);
            Api.as(ROADS_AUTHORITY)
                    .get(path)
                    .then()
                    .statusCode(400)
                    .body("errors[0].field", equalTo("owner"))
                    .body("errors[0].detail", containsString("sensitive"));
            Api.as(COORDINATOR).get(path).then().statusCode(200);
        } finally {
            settle(taxon, "{\"reason\":\"after the test\"}");
        }
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
