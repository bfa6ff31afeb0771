package org.culvert.care.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.culvert.care.CareWorld;
import org.culvert.care.CareWorld.Patient;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class PlanResourceTest {
    private static final String SWIM = CareWorld.step("swim", 2, 15, "daily", "minutes", ",\"low\":15,\"high\":20");
    private static final String WOUND = CareWorld.step("wound", 0, 15, "daily", "yesNo", ",\"flagAnswer\":false");
    private static final String WEIGH =
            CareWorld.step("weigh", 0, 42, "weekly", "grams", ",\"fallPercentPerWeek\":5,\"fallOverDays\":28");
    private static final String STITCHES = CareWorld.step("stitches", 40, 46, "once", "none", "");

    @Inject
    DataSource database;

    private CareWorld care;

    @BeforeEach
    void makeWorld() {
        care = new CareWorld();
    }

    private Answer tick(String role, Patient turtle, String step, int day, String told) {
        return Api.post(
                role, turtle.path() + "/care-entries", "{\"stepKey\":\"%s\",\"day\":%d%s}".formatted(step, day, told));
    }

    private static String state(Json plan, String step, int day) {
        return plan.getString("tasks.find { it.stepKey == '%s' && it.day == %d }.state".formatted(step, day));
    }

    /** Common practice, no source: two days dry, swims of 15 to 20 minutes for two weeks, stitches out at about six weeks. */
    @Test
    void aTurtlesWeeksOfCare() {
        Patient turtle = care.patient(10);
        String path = turtle.plan(care.today.minusDays(10), String.join(",", WOUND, SWIM, WEIGH, STITCHES));
        Json plan = Api.get(CARER, path);
        assertThat(plan.getList("tasks")).hasSize(16 + 14 + 7 + 1);
        assertThat(state(plan, "swim", 9)).isEqualTo("overdue");
        assertThat(plan.getInt("tasks.find { it.stepKey == 'swim' && it.day == 9 }.missesInARow"))
                .isEqualTo(8);
        assertThat(state(plan, "swim", 10)).isEqualTo("due");
        assertThat(state(plan, "swim", 11)).isEqualTo("coming");
        assertThat(state(plan, "stitches", 40)).isEqualTo("coming");
        assertThat(plan.getString("tasks.find { it.stepKey == 'stitches' }.lastDate"))
                .isEqualTo(care.today.plusDays(36).toString());

        // Today's swim, told in minutes; whoever has the animal ticks it, once
        tick(CARER, turtle, "swim", 10, ",\"value\":18")
                .statusCode(201)
                .body("unit", equalTo("min"))
                .body("doneLate", equalTo(false))
                .body("flags", empty());
        tick(CARER, turtle, "swim", 10, ",\"value\":18")
                .statusCode(409)
                .body("detail", containsString("has its entry already"));
        // Yesterday's was too long, and is told today; the day before it was left out
        tick(CARER, turtle, "swim", 9, ",\"value\":25")
                .statusCode(201)
                .body("doneLate", equalTo(true))
                .body("flags", equalTo(List.of("aboveHigh")));
        tick(CARER, turtle, "swim", 8, ",\"skippedBecause\":\"she slept\",\"at\":\"%s\"".formatted(care.noon(2)))
                .statusCode(201)
                .body("skippedBecause", equalTo("she slept"))
                .body("record.lateByHours", org.hamcrest.Matchers.greaterThan(20));
        tick(CLINIC, turtle, "wound", 10, ",\"answer\":false")
                .statusCode(201)
                .body("flags", equalTo(List.of("flaggedAnswer")));
        plan = Api.get(CARER, path);
        assertThat(state(plan, "swim", 10)).isEqualTo("done");
        assertThat(state(plan, "swim", 9)).isEqualTo("doneLate");
        assertThat(state(plan, "swim", 8)).isEqualTo("skipped");
        assertThat(plan.getList("tasks.find { it.stepKey == 'wound' && it.day == 10 }.flags"))
                .containsExactly("flaggedAnswer");

        // A slip is corrected, and an entry taken back: its task is open again
        String entry =
                "/api/care-entries/" + plan.getString("tasks.find { it.stepKey == 'swim' && it.day == 9 }.entryId");
        Api.correct(CARER, entry, "{\"value\":16,\"reason\":\"misread\"}")
                .statusCode(200)
                .body("value", equalTo(16.0))
                .body("flags", empty())
                .body("record.revision", equalTo(2));
        Api.change(CARER, entry, "/withdrawal", "{\"reason\":\"of another turtle\"}")
                .statusCode(200)
                .body("withdrawnBecause", equalTo("of another turtle"));
        assertThat(state(Api.get(CARER, path), "swim", 9)).isEqualTo("overdue");
        tick(CARER, turtle, "swim", 9, ",\"value\":17,\"at\":\"%s\"".formatted(care.noon(1)))
                .statusCode(201)
                .body("doneLate", equalTo(false));
        assertThat(Api.get(COORDINATOR, turtle.path() + "/care-entries").getList("items"))
                .hasSize(5);
    }

    @Test
    void aVetChangesAPlanMidwayAndWhatWasDoneStaysDone() {
        Patient turtle = care.patient(5);
        String path = turtle.plan(care.today.minusDays(5), SWIM + "," + STITCHES);
        tick(CARER, turtle, "swim", 5, ",\"value\":15").statusCode(201);
        String change = """
                {"steps":[%s,%s],"vetName":"Another Vet","vetRegistration":"V-2","reason":"she swims well"%s}
                """;
        String longer = CareWorld.step("swim", 5, 20, "everyDays", "minutes", ",\"everyDays\":2");
        Api.change(
                        CLINIC,
                        path,
                        "/changes",
                        change.formatted(longer, STITCHES, ",\"from\":\"" + care.today.minusDays(1) + "\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("from"));
        Api.change(COORDINATOR, path, "/changes", change.formatted(longer, STITCHES, ""))
                .statusCode(403);

        Api.change(CLINIC, path, "/changes", change.formatted(longer, STITCHES, ""))
                .statusCode(200)
                .body("phases", hasSize(2))
                .body("phases[1].fromDay", equalTo(5))
                .body("phases[1].vetName", equalTo("Another Vet"))
                .body("phases[1].reason", equalTo("she swims well"));
        Json plan = Api.get(CARER, path);
        assertThat(plan.getList("tasks.findAll { it.stepKey == 'swim' }.day"))
                .containsExactly(2, 3, 4, 5, 7, 9, 11, 13, 15, 17, 19);
        assertThat(state(plan, "swim", 5)).isEqualTo("done");
        assertThat(plan.getList("tasks.findAll { it.stepKey == 'stitches' }")).hasSize(1);
    }

    @Test
    void aWeightThatFallsFastIsFlagged() {
        Patient turtle = care.patient(14);
        String path = turtle.plan(care.today.minusDays(14), WEIGH);
        tick(CARER, turtle, "weigh", 0, ",\"value\":800,\"at\":\"%s\"".formatted(care.noon(14)))
                .statusCode(201)
                .body("flags", empty());
        // Three weighings, but on two days
        Api.post(
                        CARER,
                        turtle.path() + "/care-entries",
                        "{\"kind\":\"weight\",\"value\":700,\"at\":\"%s\"}"
                                .formatted(care.noon(14).plusSeconds(60)))
                .statusCode(201)
                .body("unit", equalTo("g"));
        tick(CARER, turtle, "weigh", 7, ",\"value\":740,\"at\":\"%s\"".formatted(care.noon(7)))
                .statusCode(201)
                .body("flags", empty());
        assertThat(Api.get(CARER, path).getMap("weightTrend")).isNull();
        tick(CARER, turtle, "weigh", 14, ",\"value\":600,\"at\":\"%s\"".formatted(care.now))
                .statusCode(201)
                .body("flags", equalTo(List.of("fallsFast")));
        Map<String, Object> trend = Api.get(CARER, path).getMap("weightTrend");
        assertThat(((Number) trend.get("percentPerWeek")).doubleValue()).isLessThan(-5);
        assertThat(trend).containsEntry("weighings", 4).containsEntry("overDays", 28);
    }

    @Test
    void weighingsUnderAnEarlierPlanCountForTheWeightAndOtherGramsDoNot() {
        Patient turtle = care.patient(14);
        String first = turtle.plan(
                care.today.minusDays(14), WEIGH + "," + CareWorld.step("eaten", 0, 42, "daily", "grams", ""));
        tick(CARER, turtle, "weigh", 0, ",\"value\":800,\"at\":\"%s\"".formatted(care.noon(14)))
                .statusCode(201);
        tick(CARER, turtle, "eaten", 7, ",\"value\":12,\"at\":\"%s\"".formatted(care.noon(7)))
                .statusCode(201);
        tick(CARER, turtle, "weigh", 7, ",\"value\":740,\"at\":\"%s\"".formatted(care.noon(7)))
                .statusCode(201);
        Api.change(CLINIC, first, "/ending", """
                        {"vetName":"Another Vet","vetRegistration":"V-2","reason":"seen again"}
                        """).statusCode(200);
        String second = turtle.plan(care.today, WEIGH);
        assertThat(Api.get(CARER, second).getMap("weightTrend")).isNull();
        tick(CARER, turtle, "weigh", 0, ",\"value\":600").statusCode(201).body("flags", equalTo(List.of("fallsFast")));
        assertThat(Api.get(CARER, second).getMap("weightTrend"))
                .containsEntry("weighings", 3)
                .containsEntry("overDays", 28);
    }

    @Test
    void onePlanIsInForceUntilAVetOrTheFateEndsIt() {
        Patient turtle = care.patient(3);
        String first = turtle.plan(care.today.minusDays(3), WOUND);
        String plans = turtle.path() + "/aftercare-plans";
        String own = "{\"steps\":[%s],\"vetName\":\"Dr Vet\",\"vetRegistration\":\"V-1\"}".formatted(WOUND);
        Api.post(CLINIC, plans, own).statusCode(409).body("detail", containsString("in force"));

        Api.change(CLINIC, first, "/ending", """
                        {"vetName":"Another Vet","vetRegistration":"V-2","reason":"seen again"}
                        """)
                .statusCode(200)
                .body("inForce", equalTo(false))
                .body("ending.vetName", equalTo("Another Vet"));
        Json ended = Api.get(CARER, first);
        assertThat(state(ended, "wound", 2)).isEqualTo("missed");
        assertThat(state(ended, "wound", 3)).isEqualTo("lapsed");
        assertThat(state(ended, "wound", 4)).isNull();
        Api.change(CLINIC, first, "/ending", """
                        {"vetName":"Another Vet","vetRegistration":"V-2","reason":"seen again"}
                        """).statusCode(409);

        Json second = Api.make(CLINIC, plans, own);
        String path = "/api/aftercare-plans/" + second.getString("id");
        Api.change(COORDINATOR, turtle.path(), "/fate", "{\"fate\":\"died\"}").statusCode(200);
        assertThat(Api.get(CARER, path).getBoolean("inForce")).isFalse();
        tick(CLINIC, turtle, "wound", 0, ",\"answer\":true").statusCode(400).body("errors[0].field", equalTo("at"));
        Api.post(CLINIC, plans, own).statusCode(409).body("detail", containsString("has ended"));
        Api.change(COORDINATOR, turtle.path(), "/fate/withdrawal", "{\"reason\":\"she breathes\"}")
                .statusCode(200);
        assertThat(Api.get(CARER, path).getBoolean("inForce")).isTrue();
    }

    @Test
    void whoHasTheAnimalEntersAndNobodyElse() {
        Patient turtle = care.patient(3);
        turtle.plan(care.today.minusDays(3), WOUND);
        // Before the carer took her over the rescuer had her
        String early = "{\"kind\":\"note\",\"words\":\"quiet\",\"at\":\"%s\"}"
                .formatted(care.noon(3).minusSeconds(7200));
        Api.post(CARER, turtle.path() + "/care-entries", early)
                .statusCode(403)
                .body("detail", containsString("somebody else had the animal"));
        String entry =
                Api.make(COORDINATOR, turtle.path() + "/care-entries", early).getString("id");
        Api.correct(CARER, "/api/care-entries/" + entry, "{\"words\":\"loud\",\"reason\":\"so I think\"}")
                .statusCode(403);
        tick(CLINIC, turtle, "wound", 1, ",\"answer\":true").statusCode(201);
    }

    @Test
    void anEntryThatDoesNotFitItsTaskIsNamed() {
        Patient turtle = care.patient(3);
        String entries = turtle.path() + "/care-entries";
        tick(CARER, turtle, "wound", 1, ",\"answer\":true")
                .statusCode(400)
                .body("errors[0].detail", containsString("has no plan"));
        turtle.plan(care.today.minusDays(3), SWIM + "," + WOUND + "," + WEIGH);
        Map<String, String> wrong = Map.ofEntries(
                Map.entry("\"stepKey\":\"swim\"", "day"),
                Map.entry("\"day\":1", "stepKey"),
                Map.entry("\"stepKey\":\"swim\",\"day\":1,\"value\":15", "stepKey"),
                Map.entry("\"stepKey\":\"swim\",\"day\":2", "value"),
                Map.entry("\"stepKey\":\"swim\",\"day\":2,\"value\":-1", "value"),
                Map.entry("\"stepKey\":\"swim\",\"day\":2,\"value\":15,\"answer\":true", "answer"),
                Map.entry("\"stepKey\":\"swim\",\"day\":2,\"value\":15,\"skippedBecause\":\"no\"", "value"),
                Map.entry("\"stepKey\":\"swim\",\"day\":2,\"skippedBecause\":\" \"", "skippedBecause"),
                Map.entry("\"stepKey\":\"swim\",\"day\":4,\"value\":15", "at"),
                Map.entry("\"stepKey\":\"swim\",\"day\":2,\"value\":15,\"at\":\"2089-01-01T00:00:00Z\"", "at"),
                Map.entry("\"stepKey\":\"wound\",\"day\":2", "answer"),
                Map.entry("\"stepKey\":\"wound\",\"day\":2,\"answer\":true,\"value\":2", "value"),
                Map.entry("\"stepKey\":\"weigh\",\"day\":0,\"value\":0", "value"),
                Map.entry("\"kind\":\"weight\"", "value"),
                Map.entry("\"kind\":\"note\"", "words"),
                Map.entry("\"kind\":\"food\",\"words\":\"a worm\",\"value\":3", "value"),
                Map.entry("\"kind\":\"food\",\"words\":\"a worm\",\"skippedBecause\":\"no\"", "skippedBecause"),
                Map.entry("\"kind\":\"food\",\"words\":\"a worm\",\"stepKey\":\"swim\",\"day\":2", "kind"));
        wrong.forEach((told, field) ->
                Api.post(CLINIC, entries, "{" + told + "}").statusCode(400).body("errors[0].field", equalTo(field)));
        assertThat(Api.get(CLINIC, entries).getList("items")).isEmpty();
    }

    @Test
    void aPlanThatCannotBeMeantIsNamed() {
        Patient turtle = care.patient(3);
        String plans = turtle.path() + "/aftercare-plans";
        String plan = "{%s,\"vetName\":\"Dr Vet\",\"vetRegistration\":\"V-1\"}";
        String steps = "\"steps\":[" + WOUND + "]";
        Map<String, String> wrong = Map.of(
                "\"words\":\"rest\"",
                "steps",
                steps + ",\"dayZero\":\"" + care.today.minusDays(4) + "\"",
                "dayZero",
                steps + ",\"dayZero\":\"2089-01-01\"",
                "dayZero",
                steps + ",\"at\":\"2089-01-01T00:00:00Z\"",
                "at",
                steps + ",\"visitId\":\"" + care.patient(2).visitId() + "\"",
                "visitId",
                "\"templateId\":\"" + turtle.caseId() + "\"",
                "templateId");
        wrong.forEach((told, field) ->
                Api.post(CLINIC, plans, plan.formatted(told)).statusCode(400).body("errors[0].field", equalTo(field)));
        Api.post(COORDINATOR, plans, plan.formatted(steps)).statusCode(403);
        assertThat(Api.get(CLINIC, plans).getList("$")).isEmpty();
    }

    @Test
    void theDatabaseRefusesWhatMustNeverBe() {
        Patient turtle = care.patient(3);
        turtle.plan(care.today.minusDays(3), WOUND);
        tick(CARER, turtle, "wound", 1, ",\"answer\":true").statusCode(201);
        String ofIt = " where case_id = '" + turtle.caseId() + "'";
        String columns = "recorded_at, recorded_by, happened_at";
        String plan = "insert into aftercare_plans (id, case_id, vet_name, vet_registration, day_zero, " + columns
                + ") select gen_random_uuid(), case_id, vet_name, vet_registration, day_zero, " + columns
                + " from aftercare_plans" + ofIt;
        refused(plan, "one_aftercare_plan_is_in_force_for_a_case");
        String entry =
                "insert into care_entries (id, case_id, kind, plan_id, step_key, day, answer, figure, measure, words,"
                        + " skipped_because, " + columns + ") select gen_random_uuid(), case_id, %s, " + columns
                        + " from care_entries" + ofIt;
        refused(
                entry.formatted("kind, plan_id, step_key, day, answer, null, null, null, null"),
                "a_task_has_one_entry");
        refused(
                entry.formatted("'note', plan_id, step_key, day, null, null, null, 'a', null"),
                "an_entry_of_a_task_names_it");
        refused(
                entry.formatted("'task', plan_id, step_key, null, answer, null, null, null, null"),
                "an_entry_of_a_task_names_it");
        refused(entry.formatted("'task', plan_id, step_key, 2, null, 3, null, null, null"), "a_figure_has_its_measure");
        refused(
                entry.formatted("'task', plan_id, step_key, 2, true, null, null, null, 'no'"),
                "what_is_skipped_has_no_value");
        refused(entry.formatted("'note', null, null, null, null, null, null, 'a', 'no'"), "only_a_task_is_skipped");
        refused(
                entry.formatted("'weight', null, null, null, null, null, null, null, null"),
                "a_weight_is_told_in_grams");
        refused(
                entry.formatted("'food', null, null, null, null, null, null, null, null"),
                "what_is_no_weight_is_told_in_words");
        refused("update care_entries set withdrawn_at = now()" + ofIt, "withdrawing_a_care_entry_has_time_and_reason");
        refused("update care_entries set day = 2" + ofIt, "is never changed");
        refused(
                "update aftercare_plans set ended_at = now()" + ofIt,
                "ending_an_aftercare_plan_has_time_reason_and_vet");
        refused(
                "update aftercare_plans set ended_at = happened_at - interval '1 s', ended_because = 'a', ended_vet_name = 'a',"
                        + " ended_vet_registration = 'a'" + ofIt,
                "an_aftercare_plan_ends_after_it_was_made");
        refused("delete from care_entries" + ofIt, "permission denied");
    }

    private void refused(String sql, String because) {
        assertThatThrownBy(() -> {
                    try (Connection connection = database.getConnection()) {
                        connection.createStatement().execute(sql);
                    }
                })
                .as(sql)
                .isInstanceOf(SQLException.class)
                .hasMessageContaining(because);
    }

    /** As it was before an entry, and who corrected what, can be read. */
    @Test
    void thePastOfAPlanCanBeRead() {
        Patient turtle = care.patient(3);
        String path = turtle.plan(care.today.minusDays(3), WOUND);
        String before = org.culvert.support.Clocks.now().toString();
        String entry = tick(CARER, turtle, "wound", 3, ",\"answer\":true")
                .statusCode(201)
                .extract()
                .path("id");
        Api.correct(CARER, "/api/care-entries/" + entry, "{\"answer\":false,\"reason\":\"seen by daylight\"}")
                .statusCode(200);
        Api.as(CARER)
                .get("/api/care-entries/" + entry + "?asOf=" + before)
                .then()
                .statusCode(404);
        assertThat(state(Api.get(CARER, path + "?asOf=" + before), "wound", 3)).isEqualTo("due");
        assertThat(Api.get(CARER, "/api/records/" + entry + "/revisions").getList("reason"))
                .contains("seen by daylight");
        Api.as(CARER).get(path).then().body("endedAt", nullValue());
    }
}
