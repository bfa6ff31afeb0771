package org.culvert.care.template;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.UUID;
import org.culvert.care.CareWorld;
import org.culvert.care.CareWorld.Patient;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class TemplateResourceTest {
    private static final String ADOPTION = "{\"vetName\":\"Dr Vet\",\"vetRegistration\":\"V-1\"}";

    private CareWorld care;

    @BeforeEach
    void makeWorld() {
        care = new CareWorld();
    }

    private static String template(String taxonGroup, String steps) {
        return """
                {"key":"t-%s","name":"an example","taxonGroup":%s,"source":"made for a test","steps":[%s]}
                """.formatted(UUID.randomUUID(), taxonGroup, steps);
    }

    private static String ofTemplate(String id) {
        return "{\"templateId\":\"%s\",\"vetName\":\"Dr Vet\",\"vetRegistration\":\"V-1\"}".formatted(id);
    }

    @Test
    void aTemplateIsInertUntilAVetAdoptsItAndAgainOnceItWasChanged() {
        Patient turtle = care.patient(3);
        String id = Api.make(
                        COORDINATOR,
                        "/api/plan-templates",
                        template("\"" + CareWorld.GROUP + "\"", CareWorld.step("swim", 2, 15, "daily", "minutes", "")))
                .getString("id");
        String path = "/api/plan-templates/" + id;
        String plans = turtle.path() + "/aftercare-plans";
        Api.post(CLINIC, plans, ofTemplate(id))
                .statusCode(422)
                .body("reasons[0]", containsString("No vet has adopted"));

        // A vet's organisation adopts, and nobody else
        Api.change(COORDINATOR, path, "/adoptions", ADOPTION).statusCode(403);
        Api.change(CLINIC, path, "/adoptions", ADOPTION)
                .statusCode(201)
                .body("adopted", equalTo(true))
                .body("adoptions[0].vetRegistration", equalTo("V-1"))
                .body("adoptions[0].templateRevision", equalTo(1));
        Api.correct(COORDINATOR, path, "{\"name\":\"another example\",\"reason\":\"said better\"}")
                .statusCode(200)
                .body("adopted", equalTo(false))
                .body("adoptions[0].stands", equalTo(false));
        Api.post(CLINIC, plans, ofTemplate(id)).statusCode(422);

        Api.change(CLINIC, path, "/adoptions", ADOPTION).statusCode(201).body("adopted", equalTo(true));
        Json made = Api.make(CLINIC, plans, ofTemplate(id));
        assertThat(made.getString("templateId")).isEqualTo(id);
        assertThat(made.getInt("templateRevision")).isEqualTo(2);
        assertThat(made.getList("tasks")).hasSize(14);
        assertThat(made.getString("phases[0].steps[0].key")).isEqualTo("swim");

        // A plan stays what it was, whatever becomes of the template
        String adoption = Api.get(CLINIC, path).getString("adoptions[1].id");
        Api.change(CLINIC, path, "/adoptions/" + adoption + "/withdrawal", "{\"reason\":\"a new study\"}")
                .statusCode(200)
                .body("adopted", equalTo(false));
        assertThat(Api.get(CARER, "/api/aftercare-plans/" + made.getString("id"))
                        .getBoolean("inForce"))
                .isTrue();
        Api.post(CLINIC, care.patient(2).path() + "/aftercare-plans", ofTemplate(id))
                .statusCode(422);
    }

    @Test
    void aTemplateOfAnotherGroupIsRefused() {
        String id = Api.make(
                        CLINIC,
                        "/api/plan-templates",
                        template("\"macropods\"", CareWorld.step("feed", 0, 3, "daily", "grams", "")))
                .getString("id");
        Api.change(CLINIC, "/api/plan-templates/" + id, "/adoptions", ADOPTION).statusCode(201);

        Api.post(CLINIC, care.patient(1).path() + "/aftercare-plans", ofTemplate(id))
                .statusCode(400)
                .body("errors[0].field", equalTo("templateId"))
                .body("errors[0].detail", containsString("macropods"));
    }

    /**
     * What the migration ships. Days of the hardware: J. Am. Vet. Med. Assoc. 260(7), 2022, removal begins at a median of 42
     * days (35 to 49), ends at a median of 56 (26 to 77); the days of soft tissue: common practice, no source.
     */
    @Test
    void theShippedExamplesAreNotAdopted() {
        Json shipped = Api.get(CARER, "/api/plan-templates");
        List<String> keys = List.of("turtle-soft-tissue", "turtle-shell-hardware", "wing-membrane");
        for (String key : keys) {
            String one = "find { it.key == '" + key + "' }";
            assertThat(shipped.getList(one + ".adoptions")).as(key).isEmpty();
            assertThat(shipped.getBoolean(one + ".adopted")).as(key).isFalse();
            assertThat(shipped.getString(one + ".source")).containsIgnoringCase("common practice, no source");
        }
        String hardware = "find { it.key == 'turtle-shell-hardware' }.steps.find { it.key == 'hardware-begins' }.";
        assertThat(shipped.getInt(hardware + "firstDay")).isEqualTo(35);
        assertThat(shipped.getInt(hardware + "lastDay")).isEqualTo(49);
        String swim = "find { it.key == 'turtle-soft-tissue' }.steps.find { it.key == 'swim' }.";
        assertThat(shipped.getDouble(swim + "low")).isEqualTo(15);
        assertThat(shipped.getDouble(swim + "high")).isEqualTo(20);
        assertThat(shipped.getInt(swim + "lastDay") - shipped.getInt(swim + "firstDay") + 1)
                .isEqualTo(14);
    }

    @Test
    void stepsThatNobodyCanMeanAreNamed() {
        String wrong = CareWorld.step(
                        "swim", 5, 2, "daily", "yesNo", ",\"everyDays\":2,\"low\":1,\"fallPercentPerWeek\":5")
                + ","
                + CareWorld.step("swim", 0, 2, "everyDays", "minutes", ",\"low\":9,\"high\":3,\"flagAnswer\":true");
        List<String> fields = Api.post(CLINIC, "/api/plan-templates", template("null", wrong))
                .statusCode(400)
                .body("errors", hasSize(9))
                .extract()
                .path("errors.field");
        assertThat(fields.stream().map(field -> field.replaceAll(".*\\.", "")).distinct())
                .containsExactlyInAnyOrder(
                        "everyDays",
                        "fallOverDays",
                        "fallPercentPerWeek",
                        "flagAnswer",
                        "high",
                        "key",
                        "lastDay",
                        "low");
        Api.post(CLINIC, "/api/plan-templates", template("\"nobody\"", CareWorld.step("a", 0, 1, "daily", "none", "")))
                .statusCode(400)
                .body("errors[0].field", equalTo("taxonGroup"));
        Api.post(CLINIC, "/api/plan-templates", template("null", "")).statusCode(400);
    }
}
