package org.culvert.care.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.care.CareWorld;
import org.culvert.care.CareWorld.Patient;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class CareDayResourceTest {
    private static final String SWIM = CareWorld.step("swim", 2, 15, "daily", "minutes", ",\"low\":15,\"high\":20");
    private static final String WOUND = CareWorld.step("wound", 0, 15, "daily", "yesNo", ",\"flagAnswer\":false");

    private CareWorld care;

    @BeforeEach
    void makeWorld() {
        care = new CareWorld();
    }

    private String day(String query) {
        return "/api/members/" + care.world.carer + "/care-day" + query;
    }

    private static String of(Patient turtle, String rest) {
        return "animals.find { it.id == '" + turtle.caseId() + "' }" + rest;
    }

    private static List<String> tasks(Json day, Patient turtle) {
        return day.<Map<String, Object>>getList(of(turtle, ".tasks")).stream()
                .map(task -> task.get("stepKey") + " " + task.get("day") + " " + task.get("state"))
                .toList();
    }

    private static List<String> plansAndSteps(Json page) {
        return page.<Map<String, Object>>getList("items").stream()
                .map(task -> task.get("planId") + " " + task.get("stepKey"))
                .toList();
    }

    private static void tick(Patient turtle, String step, int on, String told) {
        Api.make(CARER, turtle.path() + "/care-entries", "{\"stepKey\":\"%s\",\"day\":%d%s}".formatted(step, on, told));
    }

    @Test
    void aCarerSeesEachAnimalWithWhatIsDueOverdueAndDone() {
        Patient turtle = care.patient(4);
        Patient other = care.patient(2);
        turtle.plan(care.today.minusDays(4), WOUND + "," + SWIM);
        tick(turtle, "wound", 4, ",\"answer\":true");

        Json day = Api.get(CARER, day(""));
        assertThat(day.getString("date")).isEqualTo(care.today.toString());
        assertThat(day.getString("note")).startsWith("If it is worse than yesterday, ring the clinic.");
        assertThat(day.getString(of(turtle, ".limits"))).isEqualTo("No water until the third day.");
        assertThat(day.getString(of(turtle, ".reviewOn"))).isEqualTo("2089-01-04");
        assertThat(day.getString(of(turtle, ".dischargePlan"))).contains("short swims");
        assertThat(tasks(day, turtle)).containsExactly("swim 3 overdue", "wound 4 done", "swim 4 due");
        assertThat(day.getInt(of(turtle, ".tasks[0].missesInARow"))).isEqualTo(2);
        assertThat(day.getList(of(turtle, ".entries.stepKey"))).containsExactly("wound");
        assertThat(day.getString(of(other, ".planId"))).isNull();
        assertThat(day.getList(of(other, ".tasks"))).isEmpty();

        // Another day: what is due then, and nothing of what was entered today
        Json tomorrow = Api.get(CARER, day("?date=" + care.today.plusDays(1)));
        assertThat(tasks(tomorrow, turtle)).containsExactly("swim 3 overdue", "wound 5 coming", "swim 5 coming");
        assertThat(tomorrow.getList(of(turtle, ".entries"))).isEmpty();
        // Before the carer had it, it is not theirs
        assertThat(Api.get(CARER, day("?date=" + care.today.minusDays(5))).getMap(of(turtle, "")))
                .isNull();
        Api.as(CARER).get(day("?date=yesterday")).then().statusCode(400).body("errors[0].field", equalTo("date"));
    }

    @Test
    void anotherMembersDayIsForCoordinatorsAndForClinicsAsFarAsTheySee() {
        Patient turtle = care.patient(1);
        assertThat(Api.get(COORDINATOR, day("")).getMap(of(turtle, ""))).isNotNull();
        assertThat(Api.get(CLINIC, day("")).getMap(of(turtle, ""))).isNotNull();
        Api.as(CARER)
                .get("/api/members/" + care.world.helper + "/care-day")
                .then()
                .statusCode(404);
        Api.as(COORDINATOR)
                .get("/api/members/" + turtle.caseId() + "/care-day")
                .then()
                .statusCode(404);
        Api.change(COORDINATOR, turtle.path(), "/fate", "{\"fate\":\"died\"}").statusCode(200);
        assertThat(Api.get(COORDINATOR, day("?date=" + care.today.plusDays(1))).getMap(of(turtle, "")))
                .isNull();
    }

    /** The figures of the shipped rule are common practice, no source: a day overdue, or twice in a row. */
    @Test
    void whatWasMissedReachesTheCoordinatorByRule() {
        Patient turtle = care.patient(4);
        turtle.plan(care.today.minusDays(4), WOUND + "," + SWIM);
        tick(turtle, "wound", 4, ",\"answer\":true");
        Map<String, Object> swim = missed(turtle).get(0);
        assertThat(missed(turtle)).hasSize(1);
        assertThat(swim)
                .containsEntry("stepKey", "swim")
                .containsEntry("day", 3)
                .containsEntry("missesInARow", 2)
                .containsEntry("date", care.today.minusDays(1).toString())
                .containsEntry("ruleId", "01920000-0000-7000-8000-000000004501");
        assertThat(swim.get("callSign")).isNotNull();
        assertThat(swim.get("holder")).extracting("memberId").isEqualTo(care.world.carer);
        assertThat(swim.get("holderWhenDue")).extracting("memberId").isEqualTo(care.world.carer);

        // A rule of the group's own is asked instead of the one for all
        String rule = "/api/missed-task-rules/"
                + Api.make(
                                COORDINATOR,
                                "/api/missed-task-rules",
                                "{\"taxonGroup\":\"%s\",\"missesInARow\":3,\"validFrom\":\"%s\"}"
                                        .formatted(CareWorld.GROUP, care.today.minusDays(1)))
                        .getString("id");
        try {
            assertThat(missed(turtle)).isEmpty();
            Api.post(
                            COORDINATOR,
                            "/api/missed-task-rules",
                            "{\"taxonGroup\":\"%s\",\"hoursOverdue\":1}".formatted(CareWorld.GROUP))
                    .statusCode(409)
                    .body("detail", containsString("end it first"));
        } finally {
            Api.change(
                            COORDINATOR,
                            rule,
                            "/ending",
                            "{\"validTo\":\"%s\",\"reason\":\"too slow\"}".formatted(care.today))
                    .statusCode(200)
                    .body("validTo", equalTo(care.today.toString()));
        }
        assertThat(missed(turtle)).hasSize(1);
        // Done again: it is told no longer, and the misses stay in the plan
        tick(turtle, "swim", 4, ",\"value\":15");
        assertThat(missed(turtle)).isEmpty();
    }

    @Test
    void missedTasksComeInPages() {
        Patient first = care.patient(4);
        Patient second = care.patient(4);
        first.plan(care.today.minusDays(4), WOUND + "," + SWIM);
        second.plan(care.today.minusDays(4), WOUND + "," + SWIM);
        List<String> whole = plansAndSteps(Api.get(COORDINATOR, "/api/missed-tasks?limit=1000"));
        assertThat(whole).hasSizeGreaterThanOrEqualTo(4).doesNotHaveDuplicates();
        List<Instant> due = Api.get(COORDINATOR, "/api/missed-tasks?limit=1000").getList("items.dueUntil").stream()
                .map(at -> Instant.parse((String) at))
                .toList();
        assertThat(due).isSorted();

        List<String> paged = new ArrayList<>();
        String cursor = "";
        do {
            Json page = Api.get(COORDINATOR, "/api/missed-tasks?limit=1" + cursor);
            paged.addAll(plansAndSteps(page));
            cursor = page.getString("next") == null ? "" : "&cursor=" + page.getString("next");
        } while (!cursor.isEmpty());
        assertThat(paged).isEqualTo(whole);
        Api.as(COORDINATOR)
                .get("/api/missed-tasks?cursor=yesterday")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("cursor"));
    }

    @Test
    void aRuleThatNeverTellsIsRefused() {
        Api.post(COORDINATOR, "/api/missed-task-rules", "{\"words\":\"never\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("hoursOverdue"));
        Api.post(COORDINATOR, "/api/missed-task-rules", "{\"hoursOverdue\":-1}").statusCode(400);
        Api.post(COORDINATOR, "/api/missed-task-rules", "{\"taxonGroup\":\"nobody\",\"hoursOverdue\":1}")
                .statusCode(400)
                .body("errors[0].field", equalTo("taxonGroup"));
        Api.as(CARER).get("/api/missed-tasks").then().statusCode(403);
    }

    private static List<Map<String, Object>> missed(Patient turtle) {
        return Api.get(COORDINATOR, "/api/missed-tasks?limit=1000")
                .getList("items.findAll { it.caseId == '" + turtle.caseId() + "' }");
    }
}
