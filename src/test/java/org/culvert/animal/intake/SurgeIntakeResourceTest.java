package org.culvert.animal.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Figures and places are plainly invented; what is checked is how many there are, under which numbers and with whom. */
@QuarkusTest
class SurgeIntakeResourceTest {
    private static final String KOALA = "Phascolarctos cinereus";
    private static final String WALLABY = "Wallabia bicolor";

    private World world;
    private String surge;

    @BeforeEach
    void declare() {
        world = World.shared();
        surge = declared();
    }

    private String declared() {
        String path = "/api/surges/"
                + Api.make(COORDINATOR, "/api/surges", """
                        {"name":"The fire on the hill","kind":"fire","from":"2026-01-01T00:00:00Z","tentWords":"on the oval",
                         "tent":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.05"}},"holderMemberId":"%s"}
                        """.formatted(world.rescuer))
                        .getString("id");
        for (String code : List.of("A", "B")) {
            Api.make(COORDINATOR, path + "/sectors", "{\"code\":\"%s\",\"words\":\"a hill\"}".formatted(code));
        }
        return path;
    }

    private static String animal(String more) {
        return "{\"sector\":\"A\",\"vitality\":\"alive\"" + more + "}";
    }

    private Answer takeIn(String... animals) {
        return Api.post(RESCUER, surge + "/intakes", "{\"animals\":[" + String.join(",", animals) + "]}");
    }

    private Json taken(String... animals) {
        return takeIn(animals).statusCode(201).extract().jsonPath();
    }

    @Test
    void sixtyAnimalsAreTakenInByOneForm() {
        List<String> form = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            form.add("""
                    {"sector":"%s","taxon":"%s","vitality":"alive","triage":"delayed","condition":"singed feet",
                     "foundAt":"2026-01-02T03:00:00Z",
                     "place":{"decimalDegrees":{"latitude":"-30.5%02d","longitude":"150.05"}}}
                    """.formatted(i % 3 == 0 ? "B" : "A", i % 2 == 0 ? KOALA : WALLABY, i));
        }
        Json receipt = taken(form.toArray(String[]::new));
        assertThat(receipt.<String>getList("animals.temporaryNumber"))
                .hasSize(60)
                .doesNotHaveDuplicates()
                .startsWith("B-001", "A-001", "A-002", "B-002")
                .contains("A-040", "B-020");
        Json one = Api.get(COORDINATOR, "/api/cases/" + receipt.getString("animals[1].caseId"));
        assertThat(one.getString("temporaryNumber")).isEqualTo("A-001");
        assertThat(one.getString("state")).isEqualTo("inCare");
        assertThat(one.getString("cause")).isEqualTo("fire");
        assertThat(one.getString("origin")).isEqualTo("found");
        assertThat(one.getDouble("foundPlace.decimalLatitude")).isEqualTo(-30.501);
        assertThat(one.getString("foundAt")).isEqualTo("2026-01-02T03:00:00Z");
        // The tent's person holds it from when it came, and nobody says who had it before
        assertThat(one.getString("custody[0].holder.memberId")).isEqualTo(world.rescuer);
        assertThat(one.getString("custody[0].from")).isEqualTo(receipt.getString("animals[1].takenInAt"));
        assertThat(one.getString("whereabouts.words")).isEqualTo("on the oval");
        assertThat(one.getLong("record.lateByHours")).isPositive();
        assertThat(Api.get(COORDINATOR, "/api/incidents/" + one.getString("incidentId"))
                        .getList("calls"))
                .hasSize(1);
        assertThat(receipt.<String>getList("animals.caseId").stream().map(id -> incidentOf(id)))
                .doesNotHaveDuplicates();
        // However it is written, next to the case number
        List<String> found =
                Api.get(OFFICER, "/api/cases?temporaryNumber= b-013").getList("items.id");
        assertThat(found).contains(receipt.getString("animals.find { it.temporaryNumber == 'B-013' }.caseId"));
        assertThat(Api.get(OFFICER, surge + "/intakes?sector=B&limit=7").getList("items"))
                .hasSize(7);
        assertThat(Api.get(OFFICER, surge + "/intakes?sector=B&temporaryNumber=B-013&taxon=" + KOALA)
                        .getList("items"))
                .hasSize(1);
        Json counts = Api.get(RESCUER, surge + "/counts");
        assertThat(counts.getInt("all")).isEqualTo(60);
        assertThat(counts.getInt("bySector.find { it.of == 'B' }.tent")).isEqualTo(20);
        assertThat(counts.getInt("byTaxon.find { it.of == '" + WALLABY + "' }.tent"))
                .isEqualTo(30);
    }

    private static String incidentOf(String caseId) {
        return Api.get(COORDINATOR, "/api/cases/" + caseId).getString("incidentId");
    }

    @Test
    void allAreTakenInOrNone() {
        List<String> form = IntStream.range(0, 14)
                .mapToObj(i -> i == 12
                        ? animal(",\"taxon\":\"Nemo nullus\"")
                        : i == 13
                                ? "{\"sector\":\"Z\",\"vitality\":\"dead\",\"triage\":\"minimal\",\"cause\":\"gravity\","
                                        + "\"foundNotBefore\":\"2089-01-01T00:00:00Z\",\"motherTemporaryNumber\":\"Q\","
                                        + "\"place\":{\"decimalDegrees\":{\"latitude\":\"95\",\"longitude\":\"150\"}}}"
                                : animal(""))
                .toList();
        takeIn(form.toArray(String[]::new))
                .statusCode(400)
                .body(
                        "errors.field",
                        hasItems(
                                "animals[12].taxon",
                                "animals[13].sector",
                                "animals[13].triage",
                                "animals[13].cause",
                                "animals[13].foundNotBefore",
                                "animals[13].motherTemporaryNumber"))
                .body("errors.findAll { it.field.startsWith('animals[13].place') }", hasSize(1))
                .body("errors.find { it.field == 'animals[13].sector' }.wanted", equalTo("A, B"));
        assertThat(Api.get(COORDINATOR, surge + "/counts").getInt("all")).isZero();
        assertThat(taken(animal("")).getString("animals[0].temporaryNumber")).isEqualTo("A-001");
    }

    @Test
    void aNumberWrittenByHandIsGivenOnce() {
        taken(animal(",\"temporaryNumber\":\"A-002\""), animal(",\"temporaryNumber\":\" Box 7\""));
        assertThat(taken(animal(""), animal("")).<String>getList("animals.temporaryNumber"))
                .containsExactly("A-001", "A-003");
        takeIn(
                        animal(",\"temporaryNumber\":\"box 7\""),
                        animal(",\"temporaryNumber\":\"Q1\""),
                        animal(",\"temporaryNumber\":\"q1\""))
                .statusCode(400)
                .body("errors.field", equalTo(List.of("animals[0].temporaryNumber", "animals[2].temporaryNumber")))
                .body("errors[0].detail", containsString("box 7 was given already, to case "))
                .body("errors[1].detail", equalTo("q1 was given already, to animal 1 of this form."));
        String first = surge;
        surge = declared();
        taken(animal(",\"temporaryNumber\":\"Box 7\""));
        assertThat(Api.get(COORDINATOR, "/api/cases?temporaryNumber=BOX 7").getList("items"))
                .hasSizeGreaterThanOrEqualTo(2);
        assertThat(Api.get(COORDINATOR, first + "/intakes?temporaryNumber=BOX 7")
                        .getList("items"))
                .hasSize(1);
    }

    @Test
    void aFormThatIsSentTwiceIsTakenOnce() {
        String key = UUID.randomUUID().toString();
        String form = "{\"animals\":[" + animal("") + "," + animal("") + "]}";
        List<String> first = null;
        for (int i = 0; i < 2; i++) {
            List<String> cases = Api.as(RESCUER)
                    .header("Idempotency-Key", key)
                    .body(form)
                    .post(surge + "/intakes")
                    .then()
                    .statusCode(201)
                    .extract()
                    .path("animals.caseId");
            assertThat(first == null ? cases : first).isEqualTo(cases);
            first = cases;
        }
        assertThat(Api.get(COORDINATOR, surge + "/counts").getInt("all")).isEqualTo(2);
    }

    @Test
    void tentsThatSendAtOnceNeverGiveOneNumberTwice() throws Exception {
        var together = Executors.newFixedThreadPool(6);
        try {
            List<Callable<Answer>> work = new ArrayList<>();
            for (int tent = 0; tent < 6; tent++) {
                String[] form = IntStream.range(0, 8).mapToObj(i -> animal("")).toArray(String[]::new);
                work.add(() -> takeIn(form));
            }
            List<String> numbers = new ArrayList<>();
            for (var one : together.invokeAll(work)) {
                numbers.addAll(one.get().statusCode(201).extract().path("animals.temporaryNumber"));
            }
            assertThat(numbers)
                    .containsExactlyInAnyOrderElementsOf(IntStream.rangeClosed(1, 48)
                            .mapToObj(i -> String.format("A-%03d", i))
                            .toList());
            List<Callable<Integer>> same = new ArrayList<>();
            for (int tent = 0; tent < 6; tent++) {
                same.add(() -> takeIn(animal(",\"temporaryNumber\":\"band 9\""), animal(""))
                        .extract()
                        .statusCode());
            }
            List<Integer> answers = new ArrayList<>();
            for (var one : together.invokeAll(same)) {
                answers.add(one.get());
            }
            assertThat(answers.stream().filter(status -> status == 201)).hasSize(1);
            assertThat(answers.stream().filter(status -> status == 400)).hasSize(5);
        } finally {
            together.shutdown();
        }
        assertThat(Api.get(COORDINATOR, surge + "/counts").getInt("all")).isEqualTo(50);
    }

    @Test
    void whatIsNotKnownYetIsNamedLater() {
        Json receipt = taken(animal(",\"verbatimIdentification\":\"something small\""));
        assertThat(receipt.getBoolean("animals[0].isNotKnownYet")).isTrue();
        assertThat(receipt.getString("animals[0].scientificName")).isEqualTo("Animalia");
        String of = "/api/cases/" + receipt.getString("animals[0].caseId");
        String animal = "/api/animals/" + Api.get(COORDINATOR, of).getString("animal.id");
        assertThat(Api.get(COORDINATOR, animal).getString("identificationVerificationStatus"))
                .isEqualTo("unverified");
        Api.correct(RESCUER, animal, """
                        {"scientificName":"%s","identificationVerificationStatus":"seenByVet","reason":"washed and seen"}
                        """.formatted(KOALA)).statusCode(200);
        Json list = Api.get(RESCUER, surge + "/intakes");
        assertThat(list.getString("items[0].scientificName")).isEqualTo(KOALA);
        assertThat(list.getBoolean("items[0].isNotKnownYet")).isFalse();
        assertThat(list.getString("items[0].temporaryNumber")).isEqualTo("A-001");
        assertThat(Api.get(COORDINATOR, surge + "/counts").getString("byTaxon[0].of"))
                .isEqualTo(KOALA);
    }

    @Test
    void unknownIsDangerousUntilItIsKnown() {
        taken(animal(""));
        assertThat(Api.get(COORDINATOR, "/api/taxon-groups")
                        .getString("find { it.key == 'not-known-yet' }.vaccinationNeeded"))
                .isNotBlank();
    }

    @Test
    void theDeadAreCountedAndTheirBodiesAreHeld() {
        Json receipt = taken(
                "{\"sector\":\"B\",\"vitality\":\"dead\",\"taxon\":\"%s\",\"foundNotBefore\":\"2026-01-02T00:00:00Z\",\"foundAt\":\"2026-01-02T09:00:00Z\"}"
                        .formatted(KOALA),
                animal(",\"taxon\":\"%s\"".formatted(KOALA)),
                animal(",\"taxon\":\"%s\"".formatted(KOALA)),
                animal(",\"taxon\":\"%s\"".formatted(KOALA)));
        Json dead = Api.get(COORDINATOR, "/api/cases/" + receipt.getString("animals[0].caseId"));
        assertThat(dead.getString("fate.fate")).isEqualTo("deadWhenFound");
        assertThat(dead.getString("fate.at")).isEqualTo("2026-01-02T09:00:00Z");
        assertThat(dead.getString("body.holder.memberId")).isEqualTo(world.rescuer);
        assertThat(dead.getList("custody")).isEmpty();
        Api.change(COORDINATOR, "/api/cases/" + receipt.getString("animals[1].caseId"), "/fate", "{\"fate\":\"died\"}")
                .statusCode(200);
        String handOver = Api.make(
                        COORDINATOR,
                        "/api/cases/" + receipt.getString("animals[2].caseId") + "/hand-overs",
                        """
                        {"taker":{"organisationId":"%s"}}
                        """.formatted(world.clinic))
                .getString("id");
        // Offered, it is at the tent still
        assertThat(Api.get(COORDINATOR, surge + "/counts").getInt("tent")).isEqualTo(2);
        Api.change(COORDINATOR, "/api/hand-overs/" + handOver, "/acceptance", "{}")
                .statusCode(200);
        Json counts = Api.get(COORDINATOR, surge + "/counts");
        assertThat(List.of(
                        counts.getInt("all"), counts.getInt("tent"), counts.getInt("movedOn"), counts.getInt("dead")))
                .containsExactly(4, 1, 1, 2);
        assertThat(counts.getInt("bySector.find { it.of == 'A' }.dead")).isEqualTo(1);
        assertThat(Api.get(COORDINATOR, surge + "/intakes?vitality=dead").getList("items"))
                .hasSize(1);
    }

    @Test
    void youngKnowTheirMother() {
        Json receipt = taken(
                animal(
                        ",\"taxon\":\"%s\",\"temporaryNumber\":\"M1\",\"place\":{\"decimalDegrees\":{\"latitude\":\"-30.5\",\"longitude\":\"150.05\"}}"
                                .formatted(WALLABY)),
                animal(",\"taxon\":\"%s\",\"motherTemporaryNumber\":\"m1\",\"dependentYoung\":true"
                        .formatted(WALLABY)));
        Json young = Api.get(COORDINATOR, "/api/cases/" + receipt.getString("animals[1].caseId"));
        Json mother = Api.get(COORDINATOR, "/api/cases/" + receipt.getString("animals[0].caseId"));
        assertThat(young.getString("animal.motherId")).isEqualTo(mother.getString("animal.id"));
        assertThat(young.getString("origin")).isEqualTo("ofMother");
        assertThat(young.getString("foundPlace.id")).isEqualTo(mother.getString("foundPlace.id"));
    }

    @Test
    void aSurgeEndsAfterWhoeverCameToIt() {
        Api.post(RESCUER, surge + "/intakes", "{\"at\":\"2026-02-01T00:00:00Z\",\"animals\":[" + animal("") + "]}")
                .statusCode(201);
        Api.change(COORDINATOR, surge, "/ending", "{\"at\":\"2026-01-31T00:00:00Z\"}")
                .statusCode(409)
                .body("detail", containsString("some would not have"));
        Api.change(COORDINATOR, surge, "/ending", "{\"at\":\"2026-02-02T00:00:00Z\"}")
                .statusCode(200)
                .body("endedBy", org.hamcrest.Matchers.notNullValue());
        Api.change(COORDINATOR, surge, "/ending", "{}").statusCode(409);
        takeIn(animal("")).statusCode(400).body("errors.field", hasItem("at"));
        Api.post(RESCUER, surge + "/intakes", "{\"at\":\"2026-02-01T05:00:00Z\",\"animals\":[" + animal("") + "]}")
                .statusCode(201)
                .body("animals[0].temporaryNumber", equalTo("A-002"));
        Api.correct(COORDINATOR, surge, "{\"from\":\"2026-02-01T01:00:00Z\",\"reason\":\"it began later\"}")
                .statusCode(409);
        assertThat(Api.get(RESCUER, "/api/surges?open=false").<String>getList("id"))
                .contains(surge.substring("/api/surges/".length()));
        assertThat(Api.get(RESCUER, "/api/surges?open=true").<String>getList("id"))
                .doesNotContain(surge.substring("/api/surges/".length()));
    }

    @Test
    void twoHundredAreAForm() {
        String[] many = IntStream.range(0, 201).mapToObj(i -> animal("")).toArray(String[]::new);
        takeIn(many).statusCode(400).body("errors.field", hasItem("animals"));
        assertThat(taken(java.util.Arrays.copyOf(many, 200)).getString("animals[199].temporaryNumber"))
                .isEqualTo("A-200");
        assertThat(IntStream.range(0, 2)
                        .mapToObj(i -> Api.get(OFFICER, surge + "/intakes?limit=150")
                                .getList("items")
                                .size())
                        .collect(Collectors.toSet()))
                .containsExactly(150);
    }

    @Test
    void othersSeeTheCountsAndNotTheAnimals() {
        taken(animal(""));
        assertThat(Api.get(CLINIC, surge + "/intakes").getList("items")).isEmpty();
        assertThat(Api.get(CLINIC, surge + "/counts").getInt("all")).isEqualTo(1);
        assertThat(Api.get(RESCUER, surge + "/intakes").getList("items")).hasSize(1);
    }

    @Test
    void aSectorHasItsGround() {
        Api.post(COORDINATOR, surge + "/sectors", "{\"code\":\"A\",\"words\":\"again\"}")
                .statusCode(409);
        Api.post(COORDINATOR, surge + "/sectors", """
                        {"code":"C","words":"the creek","area":{"type":"Polygon",
                         "coordinates":[[[150.0,-30.5],[150.1,-30.4],[150.1,-30.5],[150.0,-30.4],[150.0,-30.5]]]}}
                        """)
                .statusCode(400)
                .body("errors[0].field", containsString("area.coordinates"));
        Api.post(COORDINATOR, surge + "/sectors", """
                        {"code":"C","words":"the creek","area":{"type":"Polygon",
                         "coordinates":[[[150.0,-30.5],[150.1,-30.5],[150.1,-30.4],[150.0,-30.5]]]}}
                        """)
                .statusCode(201)
                .body("sectors.find { it.code == 'C' }.area.type", equalTo("Polygon"));
        Api.post(COORDINATOR, "/api/surges", """
                        {"name":"x","kind":"other","from":"2026-01-01T00:00:00Z","tentWords":"there","holderMemberId":"%s"}
                        """.formatted(world.rescuer))
                .statusCode(400)
                .body("errors.field", hasItem("kindWords"));
    }
}
