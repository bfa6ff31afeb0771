package org.culvert.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A forgotten link where others meet. What must hold is the definition of intervals that do not overlap, as PostgreSQL's
 * exclusion constraint has it; there is no published case.
 */
@QuarkusTest
@OnOldestDatabase
class CustodyBetweenResourceTest {
    private static final Instant START = Instant.parse("2026-01-10T00:00:00Z");

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private static String at(double hours) {
        return START.plusSeconds(Math.round(hours * 3600)).toString();
    }

    private String newCase() {
        String incident = World.call("Chelodina longicollis", 150.04, "").getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis"},"foundAt":"%s",
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, at(0), world.rescuer))
                .getString("id");
    }

    private void handOver(String caseId, String member, double hours) {
        String offered = Api.make(COORDINATOR, "/api/cases/" + caseId + "/hand-overs", """
                        {"taker":{"memberId":"%s"},"at":"%s"}
                        """.formatted(member, at(hours)))
                .getString("id");
        Api.change(COORDINATOR, "/api/hand-overs/" + offered, "/acceptance", "{\"at\":\"" + at(hours) + "\"}")
                .statusCode(200);
    }

    private Answer between(String caseId, String member, double from, Double to) {
        return Api.post(COORDINATOR, "/api/cases/" + caseId + "/custody-links", """
                {"holder":{"memberId":"%s"},"from":"%s","to":%s,"between":true,"reason":"forgotten"}
                """.formatted(
                        member, at(from), to == null ? null : "\"" + at(to) + "\""));
    }

    @Test
    void whereTwoMeetTheOneIsShortenedAndTheOtherBeginsLater() {
        String id = newCase();
        handOver(id, world.carer, 10);
        String plain = """
                {"holder":{"memberId":"%s"},"from":"%s","to":"%s","reason":"forgotten"}
                """.formatted(world.helper, at(8), at(12));
        Api.post(COORDINATOR, "/api/cases/" + id + "/custody-links", plain)
                .statusCode(409)
                .body("detail", containsString("between"));
        Json chain =
                between(id, world.helper, 8, 12.0).statusCode(201).extract().jsonPath();
        assertThat(chain.getList("custody.holder.memberId")).containsExactly(world.rescuer, world.helper, world.carer);
        assertThat(chain.getList("custody.from")).containsExactly(at(0), at(8), at(12));
        assertThat(chain.getString("custody[0].to")).isEqualTo(at(8));
        assertThat(chain.getString("custody[1].to")).isEqualTo(at(12));
        assertThat(chain.getString("custody[2].to")).isNull();
        assertThat(chain.getList("custodyGaps")).isEmpty();
        for (int link : new int[] {0, 2}) {
            assertThat(chain.getString("custody[" + link + "].record.revisionReason"))
                    .isEqualTo("forgotten");
        }
    }

    @Test
    void noLinkIsCoveredOrCutInTwo() {
        String id = newCase();
        handOver(id, world.carer, 10);
        handOver(id, world.helper, 20);
        between(id, world.vaccinated, 9, 20.0).statusCode(409).body("detail", containsString("nothing would be left"));
        between(id, world.vaccinated, 12, 14.0).statusCode(409).body("detail", containsString("cut one link in two"));
        between(id, world.vaccinated, 15, null).statusCode(409).body("detail", containsString("nothing would be left"));
        between(id, world.vaccinated, 12, 12.0).statusCode(400).body("errors[0].field", equalTo("to"));
        between(id, world.vaccinated, -1, 5.0).statusCode(400).body("errors[0].field", equalTo("from"));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getList("custody.from"))
                .containsExactly(at(0), at(10), at(20));
        // The last that goes on is shortened by one that goes on
        between(id, world.vaccinated, 25, null).statusCode(201);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("custody[2].to"))
                .isEqualTo(at(25));
    }

    /** The carer's authorisation begins only on the day of the later start. */
    @Test
    void theAuthorisationIsThatOfTheNewFirstDay() {
        String id = newCase();
        String carer = Api.make(org.culvert.platform.Role.ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"%s","name":"Somebody","attends":false,"cares":true}
                        """.formatted(
                                world.network, java.util.UUID.randomUUID()))
                .getString("id");
        Api.make(org.culvert.platform.Role.ADMIN, "/api/authorisations", """
                {"memberId":"%s","jurisdiction":"test","authorisationClass":"specialist","number":"LATE-1",
                 "taxonGroup":"turtles","validFrom":"2026-01-13","validTo":"2090-12-31"}
                """.formatted(carer));
        handOver(id, carer, 10);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("custody[1].authorisation"))
                .isNull();
        between(id, world.helper, 9, 96.0).statusCode(201).body("custody[2].authorisation", equalTo("LATE-1"));
    }

    @Test
    void aHandOverNamesTheLicenceOfSomebodyElse() {
        String id = newCase();
        String path = "/api/cases/" + id + "/hand-overs";
        String entry = "{\"taker\":{\"organisationId\":\"%s\"},\"at\":\"%s\",\"otherLicence\":%s}";
        Api.post(
                        RESCUER,
                        path,
                        entry.formatted(world.clinic, at(1), "{\"number\":\"L-7\",\"jurisdiction\":\"Victoria\"}"))
                .statusCode(400)
                .body("errors[0].field", equalTo("otherLicence.jurisdiction"));
        String offered = Api.make(
                        RESCUER,
                        path,
                        entry.formatted(
                                world.clinic,
                                at(1),
                                "{\"organisation\":\"another shelter\",\"number\":\"L-7\",\"jurisdiction\":\"AU-VIC\"}"))
                .getString("id");
        Api.change(COORDINATOR, "/api/hand-overs/" + offered, "/acceptance", "{\"at\":\"" + at(2) + "\"}")
                .statusCode(200)
                .body("custody[1].otherLicence.number", equalTo("L-7"))
                .body("custody[1].otherLicence.organisation", equalTo("another shelter"))
                .body("custody[0].otherLicence", equalTo(null));
        assertThat(Api.get(RESCUER, "/api/hand-overs/" + offered).getString("otherLicence.jurisdiction"))
                .isEqualTo("AU-VIC");
    }

    @Test
    void gapsAndPendingHandOversAreListed() {
        String id = newCase();
        handOver(id, world.carer, 10);
        Json seen = Api.get(COORDINATOR, "/api/cases/" + id);
        String second = seen.getString("custody[1].id");
        Api.correct(
                        COORDINATOR,
                        "/api/cases/" + id,
                        "/custody-links/" + second,
                        "{\"from\":\"%s\",\"to\":\"%s\",\"reason\":\"as told\"}".formatted(at(12), at(15)))
                .statusCode(200)
                .body("custodyGaps.from", equalTo(List.of(at(10), at(15))))
                .body("custodyGaps[1].to", equalTo(null));
        assertThat(gaps(id)).containsExactlyInAnyOrder(at(10) + " " + at(12), at(15) + " null");
        Api.as(RESCUER).get("/api/custody-gaps").then().statusCode(403);
        String offered = Api.make(COORDINATOR, "/api/cases/" + id + "/hand-overs", """
                        {"taker":{"memberId":"%s"},"at":"%s"}
                        """.formatted(world.helper, at(20)))
                .getString("id");
        assertThat(waiting(COORDINATOR, "true")).contains(offered);
        assertThat(waiting(RESCUER, "true")).contains(offered);
        List<String> offers = all(COORDINATOR, "/api/hand-overs?limit=2", "offeredAt");
        assertThat(offers).isSorted();
        assertThat(all(COORDINATOR, "/api/hand-overs?limit=2", "id")).isEqualTo(waiting(COORDINATOR, "true"));
        Api.change(COORDINATOR, "/api/hand-overs/" + offered, "/acceptance", "{\"at\":\"" + at(20) + "\"}")
                .statusCode(200);
        assertThat(waiting(COORDINATOR, "true")).doesNotContain(offered);
        assertThat(waiting(COORDINATOR, "false")).contains(offered);
        Api.as(COORDINATOR).get("/api/hand-overs?cursor=then").then().statusCode(400);
        // An ended case has a gap until its end, and none once it is filled
        Api.change(COORDINATOR, "/api/cases/" + id, "/fate", "{\"fate\":\"escaped\",\"at\":\"" + at(30) + "\"}")
                .statusCode(200);
        assertThat(gaps(id)).containsExactlyInAnyOrder(at(10) + " " + at(12), at(15) + " " + at(20));
    }

    private static List<String> waiting(String role, String pending) {
        return all(role, "/api/hand-overs?limit=1000&pending=" + pending, "id");
    }

    private static List<String> gaps(String caseId) {
        List<String> rows = new ArrayList<>();
        Api.get(COORDINATOR, "/api/custody-gaps?limit=1000").<Map<String, Object>>getList("items").stream()
                .filter(row -> row.get("caseId").equals(caseId))
                .forEach(row -> rows.add(row.get("from") + " " + row.get("to")));
        return rows;
    }

    private static List<String> all(String role, String path, String field) {
        List<String> rows = new ArrayList<>();
        String cursor = null;
        do {
            Json page = Api.get(role, path + (cursor == null ? "" : "&cursor=" + cursor));
            rows.addAll(page.getList("items." + field));
            cursor = page.getString("next");
        } while (cursor != null);
        return rows;
    }

    /** Whatever is inserted, corrected and handed over in whatever order and at once. */
    @Test
    void custodyNeverOverlapsAndNoLinkIsLost() throws Exception {
        var random = new Random(56);
        List<String> members =
                List.of(world.rescuer, world.helper, world.carer, world.vaccinated, world.incubatorKeeper);
        List<String> ids = List.of(newCase(), newCase());
        Map<String, TreeSet<String>> known = new TreeMap<>();
        Map<Integer, Integer> answers = new TreeMap<>();
        ExecutorService three = Executors.newFixedThreadPool(3);
        try {
            for (int round = 0; round < 60; round++) {
                List<Callable<Integer>> acts = new ArrayList<>();
                for (int i = 0; i < 3; i++) {
                    acts.add(act(ids.get(random.nextInt(ids.size())), members, new Random(random.nextLong())));
                }
                for (Future<Integer> answer : three.invokeAll(acts)) {
                    answers.merge(answer.get(), 1, Integer::sum);
                }
                for (String id : ids) {
                    List<Map<String, Object>> chain =
                            Api.get(COORDINATOR, "/api/cases/" + id).getList("custody");
                    requireInOrder(chain);
                    TreeSet<String> links = new TreeSet<>();
                    chain.forEach(link -> links.add((String) link.get("id")));
                    assertThat(links).as("links of before").containsAll(known.getOrDefault(id, new TreeSet<>()));
                    known.put(id, links);
                }
            }
        } finally {
            three.shutdownNow();
        }
        assertThat(answers.keySet()).as("answers: %s", answers).isSubsetOf(200, 201, 400, 409, 412);
        assertThat(answers.getOrDefault(201, 0)).as("answers: %s", answers).isGreaterThan(10);
        assertThat(answers.getOrDefault(409, 0)).as("answers: %s", answers).isGreaterThan(10);
        assertThat(known.get(ids.get(0)).size() + known.get(ids.get(1)).size()).isGreaterThan(8);
    }

    private static void requireInOrder(List<Map<String, Object>> chain) {
        for (int i = 0; i < chain.size(); i++) {
            Instant from = Instant.parse((String) chain.get(i).get("from"));
            String to = (String) chain.get(i).get("to");
            if (to == null) {
                assertThat(i).as("only the last goes on: %s", chain).isEqualTo(chain.size() - 1);
            } else {
                assertThat(Instant.parse(to)).as("a link that lasts: %s", chain).isAfter(from);
                if (i + 1 < chain.size()) {
                    assertThat(Instant.parse((String) chain.get(i + 1).get("from")))
                            .as("one after the other: %s", chain)
                            .isAfterOrEqualTo(Instant.parse(to));
                }
            }
        }
    }

    private static Callable<Integer> act(String id, List<String> members, Random random) {
        String path = "/api/cases/" + id;
        String member = members.get(random.nextInt(members.size()));
        int from = random.nextInt(300);
        String to = random.nextInt(10) == 0 ? "null" : "\"" + at(from + 1 + random.nextInt(40)) + "\"";
        return switch (random.nextInt(5)) {
            case 0, 1 ->
                () -> Api.as(COORDINATOR)
                        .body("""
                            {"holder":{"memberId":"%s"},"from":"%s","to":%s,"between":%s,"reason":"forgotten"}
                            """.formatted(member, at(from), to, random.nextInt(4) > 0))
                        .post(path + "/custody-links")
                        .statusCode();
            case 2 ->
                () -> {
                    Json seen = Api.get(COORDINATOR, path);
                    List<String> links = seen.getList("custody.id");
                    return Api.correct(
                                    COORDINATOR,
                                    path,
                                    "/custody-links/" + links.get(random.nextInt(links.size())),
                                    """
                                {"%s":"%s","reason":"as told"}
                                """.formatted(random.nextBoolean() ? "from" : "to", at(from)))
                            .extract()
                            .statusCode();
                };
            default ->
                () -> {
                    Json seen = Api.get(COORDINATOR, path);
                    String pending = seen.getString("pendingHandOver.id");
                    if (pending == null) {
                        return Api.as(COORDINATOR)
                                .body("{\"taker\":{\"memberId\":\"" + member + "\"},\"at\":\"" + at(from) + "\"}")
                                .post(path + "/hand-overs")
                                .statusCode();
                    }
                    return Api.change(
                                    COORDINATOR,
                                    "/api/hand-overs/" + pending,
                                    random.nextInt(3) == 0 ? "/refusal" : "/acceptance",
                                    "{\"at\":\"" + at(from + 300) + "\",\"reason\":\"full\"}")
                            .extract()
                            .statusCode();
                };
        };
    }
}
