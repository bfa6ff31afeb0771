package org.culvert.care.growth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The rule on grey kangaroos was read (see the shipped cautions); every figure of growth is invented. */
@QuarkusTest
class GrowthResourceTest {
    private static final String GREY = "Macropus giganteus";

    private World world;

    @Inject
    DataSource database;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
        Api.post(ADMIN, "/api/taxa", """
                        [{"scientificName":"Macropus giganteus","vernacularName":"eastern grey kangaroo",
                          "taxonRank":"species","taxonGroup":"macropods"},
                         {"scientificName":"Macropus fuliginosus melanops","vernacularName":"western grey kangaroo",
                          "taxonRank":"subspecies","taxonGroup":"macropods"},
                         {"scientificName":"Macropus","vernacularName":"kangaroos","taxonRank":"genus",
                          "taxonGroup":"macropods"},
                         {"scientificName":"Notamacropus crescens","vernacularName":"wallaby of a test",
                          "taxonRank":"species","taxonGroup":"macropods"}]
                        """).statusCode(200);
    }

    private static Answer load(String taxon, String sex, String measure, boolean tells, String rows) {
        return Api.post(CLINIC, "/api/growth-tables", """
                {"key":"t-%s","name":"%s of %s","taxon":"%s","sex":"%s","measure":"%s","estimatesAge":%s,%s,
                 "source":"made for a test","readOn":"2026-01-01","licence":"for a test"}
                """.formatted(
                        UUID.randomUUID(), measure, taxon, taxon, sex, measure, tells, rows));
    }

    private static String loaded(String taxon, String sex, String measure, boolean tells, String rows) {
        return "/api/growth-tables/"
                + load(taxon, sex, measure, tells, "\"rows\":[" + rows + "]")
                        .statusCode(201)
                        .extract()
                        .path("id");
    }

    private static void adopt(String table) {
        Api.change(CLINIC, table, "/adoptions", "{\"vetName\":\"Dr Vet\",\"vetRegistration\":\"V-1\"}")
                .statusCode(201)
                .body("adopted", equalTo(true));
    }

    private static String row(double age, double value) {
        return "{\"ageDays\":%s,\"value\":%s}".formatted(age, value);
    }

    private String animal(String taxon, String more) {
        String incident = World.call(taxon, 150.03, "").getString("incidentId");
        return "/api/cases/"
                + Api.make(COORDINATOR, "/api/cases", """
                                {"animal":{"scientificName":"%s"%s},"incidentId":"%s","foundAt":"2026-05-01T08:00:00Z",
                                 "holder":{"memberId":"%s"}}
                                """.formatted(taxon, more, incident, world.carer))
                        .getString("id");
    }

    private static void measured(String of, String measure, double value, String at) {
        Api.make(
                CARER,
                of + "/body-measurements",
                "{\"measure\":\"%s\",\"value\":%s,\"at\":\"%s\"}".formatted(measure, value, at));
    }

    @Test
    void aTableSaysNothingBeforeAVetAdoptsItAndNothingOutsideOfItself() {
        String taxon = "Notamacropus crescens";
        String table = loaded(taxon, "both", "pes", true, row(100, 50) + "," + row(200, 90) + "," + row(300, 110));
        String joey = animal(taxon, ",\"bornOn\":\"2026-01-01\",\"bornDoubtDays\":10");
        measured(joey, "pes", 70, "2026-05-31T03:00:00Z");
        Json before = Api.get(OFFICER, joey + "/growth");
        assertThat(before.getList("measurements[0].against")).isEmpty();
        assertThat(before.getString("notUsed.find { it.tableId == '%s' }.why".formatted(table.substring(19))))
                .contains("No vet has adopted it");
        adopt(table);
        Json growth = Api.get(CARER, joey + "/growth");
        String of = "measurements[0].";
        // From the first of January to the last of May: 150 days; halfway between 100 and 200 days
        assertThat(growth.getLong(of + "ageDays")).isEqualTo(150);
        assertThat(growth.getDouble(of + "against[0].expected")).isEqualTo(70);
        assertThat(growth.getDouble(of + "against[0].expectedLow")).isEqualTo(66);
        assertThat(growth.getDouble(of + "against[0].expectedHigh")).isEqualTo(74);
        assertThat(growth.getDouble(of + "against[0].percentOfExpected")).isEqualTo(100);
        assertThat(growth.getDouble(of + "against[0].estimatedAgeDays")).isEqualTo(150);
        assertThat(growth.getString(of + "against[0].vetName")).isEqualTo("Dr Vet");
        measured(joey, "pes", 49, "2026-02-01T03:00:00Z");
        growth = Api.get(CARER, joey + "/growth");
        assertThat((Object) growth.get("measurements[0].against[0].expected")).isNull();
        assertThat((Object) growth.get("measurements[0].against[0].estimatedAgeDays"))
                .isNull();
        assertThat(growth.getString("measurements[0].against[0].words"))
                .isEqualTo("Outside of the table. Age: outside of the table.");
        // Changed, it wants adopting again
        Api.correct(CLINIC, table, "{\"source\":\"read again\",\"reason\":\"for a test\"}")
                .statusCode(200)
                .body("adopted", equalTo(false));
        assertThat(Api.get(CARER, joey + "/growth").getList("measurements[0].against"))
                .isEmpty();
    }

    @Test
    void noAgeIsToldFromTheWeightOfAGreyKangaroo() {
        String rows = "\"rows\":[" + row(0, 1) + "," + row(300, 4000) + "]";
        for (String taxon : List.of(GREY, "Macropus fuliginosus melanops", "Macropus")) {
            load(taxon, "both", "weight", true, rows)
                    .statusCode(400)
                    .body("errors[0].field", equalTo("estimatesAge"))
                    .body("errors[0].detail", containsString("Of a grey kangaroo no age is told from its weight"))
                    .body("errors[0].detail", containsString("Australian Wildlife Research 9, 1982"));
        }
        load(GREY, "both", "ear", true, rows).statusCode(400).body("errors.field", hasItem("estimatesAge"));
        String weights = loaded(GREY, "both", "weight", false, row(0, 1) + "," + row(300, 4000));
        adopt(weights);
        Api.correct(CLINIC, weights, "{\"estimatesAge\":true,\"reason\":\"it would be handy\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("estimatesAge"));
        String heads = loaded(GREY, "both", "head", true, row(0, 10) + "," + row(300, 130));
        adopt(heads);
        String joey = animal(GREY, "");
        measured(joey, "weight", 2000, "2026-05-31T03:00:00Z");
        measured(joey, "head", 70, "2026-05-31T04:00:00Z");
        Json growth = Api.get(CARER, joey + "/growth");
        assertThat((Object) growth.get("measurements[0].against[0].estimatedAgeDays"))
                .isNull();
        assertThat((Object) growth.get("measurements[0].against[0].expected")).isNull();
        assertThat(growth.getString("measurements[0].against[0].words")).isEqualTo("When it was born is not entered.");
        assertThat(growth.getDouble("measurements[1].against[0].estimatedAgeDays"))
                .isEqualTo(150);
        assertThat(growth.getString("measurements[1].unit")).isEqualTo("millimetres");
    }

    @Test
    void theDatabaseRefusesItToo() {
        String weights = loaded(GREY, "both", "weight", false, row(0, 1) + "," + row(300, 4000));
        String id = weights.substring("/api/growth-tables/".length());
        for (String[] wrong : new String[][] {
            {"estimates_age = true", "no_age_is_told_from_what_does_not_tell_it"},
            {"rows = '[{\"ageDays\":3,\"value\":1},{\"ageDays\":2,\"value\":4}]'", "ages_of_a_growth_table_rise"},
            {"rows = '[{\"ageDays\":1,\"value\":1}]'", "a_growth_table_has_two_rows"},
            {"rows = '[{\"ageDays\":1,\"value\":1},{\"ageDays\":2}]'", "growth_is_told_in_ages_and_values"}
        }) {
            assertThatThrownBy(() -> run(
                            "update growth_tables set " + wrong[0] + ", version = version + 1 where id = '" + id + "'"))
                    .as(wrong[0])
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining(wrong[1].startsWith("no_age") ? "no age from this measure" : wrong[1]);
        }
    }

    private void run(String sql) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void everyRowThatIsWrongIsNamed() {
        load(GREY, "both", "head", true, "\"rows\":[" + row(0, 10) + "," + row(5, 9) + "," + row(5, 11) + "]")
                .statusCode(400)
                .body("errors.field", equalTo(List.of("rows[1].value", "rows[2].ageDays")));
        load(GREY, "both", "head", false, "\"csv\":\"ageDays,value\\r\\n0,10\\r\\n\\r\\n5,9\\r\\n\"")
                .statusCode(400)
                .body("errors.field", equalTo(List.of("csv[4].value")));
        load(GREY, "both", "head", false, "\"csv\":\"ageDays,value\\n0,ten\\n5;9\"")
                .statusCode(400)
                .body("errors.field", equalTo(List.of("csv[2]", "csv[3]")));
        load(GREY, "both", "head", false, "\"csv\":\"age,value\\n0,10\\n5,19\"")
                .statusCode(400)
                .body("errors.field", equalTo(List.of("csv[1]")));
        load(GREY, "both", "head", false, "\"csv\":null").statusCode(400).body("errors.field", hasItem("rows"));
        load(GREY, "both", "head", false, "\"csv\":\"ageDays,value\\n0,10\\n5,19\"")
                .statusCode(201)
                .body("rows[1].value", equalTo(19.0));
        // A chick may weigh less before it flies
        load(GREY, "both", "weight", false, "\"rows\":[" + row(0, 10) + "," + row(5, 9) + "]")
                .statusCode(201);
    }

    @Test
    void aTableOfOneSexIsForThatSex() {
        String taxon = "Notamacropus crescens";
        adopt(loaded(taxon, "female", "tail", true, row(0, 10) + "," + row(300, 130)));
        for (String sex : List.of("male", "unknown", "female")) {
            String joey = animal(taxon, ",\"sex\":\"" + sex + "\"");
            measured(joey, "tail", 70, "2026-05-31T03:00:00Z");
            Json growth = Api.get(CARER, joey + "/growth");
            assertThat(growth.getList("measurements[0].against")).as(sex).hasSize(sex.equals("female") ? 1 : 0);
            assertThat(growth.<String>getList("notUsed.why").stream()
                            .anyMatch(why -> why.startsWith("It is for a female")))
                    .as(sex)
                    .isEqualTo(!sex.equals("female"));
        }
    }

    @Test
    void whatWasMeasuredWronglyIsTakenBack() {
        String joey = animal(GREY, "");
        String of = "/api/body-measurements/"
                + Api.make(CARER, joey + "/body-measurements", "{\"measure\":\"leg\",\"value\":70}")
                        .getString("id");
        assertThat(Api.get(CARER, joey + "/growth").getList("measurements")).hasSize(1);
        Api.change(CARER, of, "/withdrawal", "{\"reason\":\"it was the other leg\"}")
                .statusCode(200);
        assertThat(Api.get(CARER, joey + "/growth").getList("measurements")).isEmpty();
        Api.post(CARER, joey + "/body-measurements", "{\"measure\":\"leg\",\"value\":0}")
                .statusCode(400);
    }

    @Test
    void aBirthHasPassed() {
        String animal = "/api/animals/" + Api.get(COORDINATOR, animal(GREY, "")).getString("animal.id");
        Api.correct(COORDINATOR, animal, "{\"bornOn\":\"2089-01-01\",\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("bornOn"));
        Api.correct(COORDINATOR, animal, "{\"bornDoubtDays\":4,\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("bornDoubtDays"));
        Api.correct(COORDINATOR, animal, "{\"bornOn\":\"2025-11-30\",\"bornDoubtDays\":4,\"reason\":\"x\"}")
                .statusCode(200)
                .body("bornOn", equalTo("2025-11-30"));
    }
}
