package org.culvert.release.facts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import javax.sql.DataSource;
import org.culvert.release.rules.SpeciesFact;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.Test;

@QuarkusTest
class SpeciesFactResourceTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);

    @Inject
    SpeciesFactService facts;

    @Inject
    DataSource database;

    private static String fact(String kind, String name, String more) {
        return """
                {"kind":"%s","scientificName":"%s","words":"as the test says","source":"made for a test",
                 "readOn":"2020-01-01","reviewBy":"2030-01-01","validFrom":"2020-01-01"%s}
                """.formatted(kind, name, more);
    }

    /**
     * Roe and Georges, Terrestrial activity, movements and spatial ecology of Chelodina longicollis (abstract): range length
     * 757 +/- 76 m. Booth, natural history of nesting in two Australian freshwater turtles (2010): C. expansa nests 30 to 300 m
     * from water, Emydura signata 2 to 10 m.
     */
    @Test
    void whatIsShippedIsWhatWasReadAndSaysThatItIsNoLaw() {
        String shipped = "findAll { it.id.startsWith('01920000-0000-7000-8000-') }";
        Json all = Api.get(RESCUER, "/api/species-facts");
        assertThat(all.getList(shipped)).hasSize(6);
        assertThat(all.getList(shipped + ".words", String.class))
                .allSatisfy(words -> assertThat(words)
                        .contains("Check your local code and your licensed vet")
                        .doesNotContainPattern("(?i)lawful|safe"));
        assertThat(all.getList(shipped + ".findAll { it.kind == 'aquatic' }.source", String.class))
                .hasSize(3)
                .allSatisfy(source -> assertThat(source).startsWith("Derived"));
        assertThat(facts.factsOf("Chelodina longicollis", DAY).stream()
                        .filter(fact -> fact.kind() == SpeciesFact.Kind.movementRange)
                        .toList())
                .singleElement()
                .satisfies(fact -> {
                    assertThat(fact.metres()).isEqualTo(757);
                    assertThat(fact.words()).contains("give or take 76 m");
                });
        assertThat(metresToWater("Chelodina expansa")).containsExactly(300.0);
        assertThat(metresToWater("Emydura signata")).containsExactly(10.0);
        assertThat(metresToWater("Emydura macquarii")).isEmpty();
        assertThat(facts.factsOf("Chelodina longicollis", LocalDate.of(2026, 11, 24)))
                .isEmpty();
    }

    private List<Double> metresToWater(String name) {
        return facts.factsOf(name, DAY).stream()
                .filter(fact -> fact.kind() == SpeciesFact.Kind.nestToWater)
                .map(SpeciesFact::metres)
                .toList();
    }

    @Test
    void aFactIsEnteredAndItsSourceReadAgain() {
        String id = Api.make(
                        COORDINATOR,
                        "/api/species-facts",
                        fact("activePeriod", "Factus primus", ",\"activePeriod\":\"night\""))
                .getString("id");
        String path = "/api/species-facts/" + id;
        assertThat(Api.get(CARER, path).getString("activePeriod")).isEqualTo("night");
        assertThat(Api.get(CARER, path).<Object>get("metres")).isNull();
        assertThat(Api.get(CARER, path).getString("note")).contains("no rule");
        String review = "{\"readOn\":\"2026-01-01\",\"reviewBy\":\"2031-01-01\",\"reason\":\"read again\"%s}";
        Api.post(ADMIN, path + "/reviews", review.formatted("")).statusCode(428);
        Api.change(ADMIN, path, "/reviews", review.formatted("").replace("2031", "2025"))
                .statusCode(400)
                .body("errors.field", hasItem("reviewBy"));
        Api.change(ADMIN, path, "/reviews", review.formatted(",\"validTo\":\"2019-01-01\""))
                .statusCode(400)
                .body("errors.field", hasItem("validTo"));
        assertThat(facts.factsOf("Factus primus minor", DAY)).hasSize(1);
        assertThat(facts.factsOf("Factus primusque", DAY)).isEmpty();
        Api.change(
                        ADMIN,
                        path,
                        "/reviews",
                        review.formatted(",\"validTo\":\"2026-12-01\",\"source\":\"a later study\""))
                .statusCode(200)
                .body("reviewBy", equalTo("2031-01-01"))
                .body("source", equalTo("a later study"))
                .body("record.revision", equalTo(2));
        assertThat(facts.factsOf("Factus primus", DAY)).isEmpty();
        assertThat(facts.factsOf("Factus primus", DAY.minusDays(1))).hasSize(1);
        Api.as(DISPATCHER).get(path).then().statusCode(403);
        Api.post(CARER, "/api/species-facts", fact("aquatic", "Factus primus", ""))
                .statusCode(403);
    }

    @Test
    void whatIsWrongWithAFactIsSaidByField() {
        for (String[] wrong : new String[][] {
            {fact("movementRange", "Factus secundus", ""), "metres"},
            {fact("movementRange", "Factus secundus", ",\"metres\":0"), "metres"},
            {fact("nestToWater", "Factus secundus", ",\"metres\":1e9"), "metres"},
            {fact("aquatic", "Factus secundus", ",\"metres\":5"), "metres"},
            {fact("activePeriod", "Factus secundus", ""), "activePeriod"},
            {fact("aquatic", "Factus secundus", ",\"activePeriod\":\"day\""), "activePeriod"},
            {fact("activePeriod", "Factus secundus", ",\"activePeriod\":\"noon\""), "activePeriod"},
            {fact("aquatic", " ", ""), "scientificName"},
            {fact("aquatic", "Factus secundus", "").replace("\"aquatic\"", "null"), "kind"},
            {fact("aquatic", "Factus secundus", "").replace("2030-01-01", "2020-01-01"), "reviewBy"},
            {fact("aquatic", "Factus secundus", ",\"validTo\":\"2020-01-01\""), "validTo"},
            {fact("aquatic", "Factus secundus", "").replace("made for a test", " "), "source"}
        }) {
            Api.post(COORDINATOR, "/api/species-facts", wrong[0])
                    .statusCode(400)
                    .body("errors.field", hasItem(wrong[1]));
        }
    }

    @Test
    void theDatabaseRefusesWhatIsNoFact() throws SQLException {
        String id = Api.make(
                        COORDINATOR, "/api/species-facts", fact("movementRange", "Factus tertius", ",\"metres\":5"))
                .getString("id");
        for (String[] wrong : new String[][] {
            {"metres = null", "a_fact_of_distance_has_metres"},
            {"metres = -1", "species_facts_metres_check"},
            {"active_period = 'day'", "a_fact_of_activity_has_its_period"},
            {"valid_to = valid_from", "a_fact_ends_after_it_begins"},
            {"review_by = read_on", "a_fact_is_looked_for_again_later"}
        }) {
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                assertThatThrownBy(() -> statement.executeUpdate("update species_facts set " + wrong[0]
                                + ", version = version + 1, revised_at = now(), revised_by = recorded_by where id = '"
                                + id + "'"))
                        .as(wrong[0])
                        .hasMessageContaining(wrong[1]);
            }
        }
    }
}
