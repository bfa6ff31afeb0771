package org.culvert.care.clutch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class ClutchResourceTest {
    private static final String DAY = "2025-11-21T02:00:00Z";

    private ClutchWorld turtles;

    @BeforeEach
    void makeWorld() {
        turtles = new ClutchWorld();
    }

    @Test
    void everyEggIsSeenFromTheFilmToTheLastOne() {
        String mother = turtles.mother(ClutchWorld.LONG_NECKED);
        turtles.film(mother, 9, "medium", "2025-11-20T12:00:00Z");
        String clutch = turtles.clutch(mother, 6, "surgery", DAY);
        Api.get(CARER, clutch);
        Api.post(
                        CARER,
                        clutch + "/eggs-left-inside",
                        "{\"counted\":3,\"reader\":\"Dr Vet\",\"at\":\"2025-11-21T03:00:00Z\"}")
                .statusCode(201)
                .body("reconciliation.verdict", equalTo("agrees"))
                .body("reconciliation.leftInside", equalTo(3))
                .body("filmDiffers", equalTo(false));
        // One of the three inside is laid: the same egg counts once
        Api.post(CARER, clutch + "/eggs", """
                        {"recovered":1,"setToIncubate":1,"broken":0,"discarded":0,"how":"laidInCare","at":"2025-11-23T02:00:00Z"}
                        """)
                .statusCode(201)
                .body("recovered", equalTo(7))
                .body("laid", equalTo(1))
                .body("reconciliation.verdict", equalTo("agrees"))
                .body("reconciliation.leftInside", equalTo(2));
        // A surer film a day later shows three, and two are said to be inside
        turtles.film(mother, 3, "high", "2025-11-24T12:00:00Z");
        Api.as(CARER)
                .get(clutch)
                .then()
                .body("readOnFilm", equalTo(3))
                .body("filmDiffers", equalTo(true))
                .body("reconciliation.differsBy", equalTo(1))
                .body("reconciliation.films.differsBy", equalTo(List.of(0, 1)))
                .body("reconciliation.films.taken", equalTo(List.of(false, true)))
                .body("reconciliation.words", containsString("Eggs may be inside still"));

        Api.post(CARER, clutch + "/set-ups", """
                        {"medium":"vermiculite","waterParts":1,"mediumParts":1,"box":"box 3, left incubator","topMarked":"yes",
                         "setUpBy":"A Carer","at":"2025-11-21T04:00:00Z"}
                        """)
                .statusCode(201)
                .body("setUps[0].waterParts", equalTo(1.0))
                .body("setUps[0].topMarked", equalTo("yes"))
                .body("cautions", hasItem(containsString("Never turn an egg")));
        Api.post(CARER, clutch + "/set-ups", """
                        {"medium":"vermiculite","waterParts":1,"box":"box 3","setUpBy":"A Carer"}
                        """).statusCode(400).body("errors[0].field", equalTo("mediumParts"));

        // Candling shows, and fails nothing
        Api.post(CARER, clutch + "/candlings", """
                        {"developing":5,"notDeveloping":2,"cannotTell":0,"candledBy":"A Carer","at":"2025-12-10T04:00:00Z"}
                        """)
                .statusCode(201)
                .body("candlings[0].notDeveloping", equalTo(2))
                .body("failed", equalTo(0))
                .body("stillIncubating", equalTo(7));
        Api.post(
                        CARER,
                        clutch + "/candlings",
                        "{\"developing\":8,\"notDeveloping\":0,\"cannotTell\":0,\"candledBy\":\"A Carer\"}")
                .statusCode(400)
                .body("errors[0].wanted", containsString("1 to 7"));

        // An egg is failed by a person, with grounds
        Api.post(CARER, clutch + "/failed-eggs", "{\"failed\":1,\"grounds\":\"other\",\"saidBy\":\"A Carer\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("words"));
        Api.post(CARER, clutch + "/failed-eggs", "{\"failed\":1,\"grounds\":\"collapsed\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("saidBy"));
        Json failed = Api.make(CARER, clutch + "/failed-eggs", """
                {"failed":2,"grounds":"collapsed","saidBy":"A Carer","at":"2026-01-10T04:00:00Z"}
                """);
        assertThat(failed.getInt("failed")).isEqualTo(2);
        assertThat(failed.getInt("stillIncubating")).isEqualTo(5);
        Json hatched = Api.make(CARER, clutch + "/hatchings", "{\"hatched\":4,\"at\":\"2026-01-28T02:00:00Z\"}");
        assertThat(hatched.getInt("clutch.stillIncubating")).isEqualTo(1);
        assertThat(hatched.getList("hatchlings.origin", String.class))
                .hasSize(4)
                .containsOnly("ofMother");
        assertThat(hatched.getString("hatchlings[0].animal.bornOn")).isEqualTo("2026-01-28");
        assertThat(hatched.getString("hatchlings[0].animal.motherId"))
                .isEqualTo(Api.get(CARER, "/api/cases/" + mother).getString("animal.id"));
        assertThat(hatched.getString("hatchlings[0].foundPlace.id"))
                .isEqualTo(Api.get(CARER, "/api/cases/" + mother).getString("foundPlace.id"));
        assertThat(hatched.getString("hatchlings[0].custody[0].holder.memberId"))
                .isEqualTo(turtles.world.incubatorKeeper);

        // No more than were set, whichever way it is tried
        Api.post(CARER, clutch + "/hatchings", "{\"hatched\":2}")
                .statusCode(409)
                .body("detail", containsString("More hatchlings than eggs"));
        Api.post(CARER, clutch + "/failed-eggs", "{\"failed\":2,\"grounds\":\"mouldy\",\"saidBy\":\"A Carer\"}")
                .statusCode(409)
                .body("detail", containsString("More failed eggs"));
        String failure = failed.getString("failures[0].id");
        Api.correct(CARER, clutch, "/failed-eggs/" + failure, "{\"failed\":4,\"reason\":\"counted again\"}")
                .statusCode(409);
        String later = Api.get(CARER, clutch).getString("recoveries[1].id");
        Api.post(CARER, clutch + "/eggs", "{\"recovered\":1,\"setToIncubate\":0,\"broken\":1,\"discarded\":0}")
                .statusCode(201)
                .body("stillIncubating", equalTo(1));
        Api.correct(CARER, clutch, "/failed-eggs/" + failure, "{\"failed\":3,\"reason\":\"counted again\"}")
                .statusCode(200)
                .body("stillIncubating", equalTo(0));
        withdraw(clutch, later).statusCode(409).body("detail", containsString("would be left set"));
        Api.correct(CARER, clutch, "/eggs/" + later, "{\"setToIncubate\":0,\"broken\":1,\"reason\":\"it was cracked\"}")
                .statusCode(409);
        withdraw(clutch, failure)
                .statusCode(200)
                .body("failed", equalTo(0))
                .body("stillIncubating", equalTo(3))
                .body("failures[0].withdrawnBecause", equalTo("of another box"));
        withdraw(clutch, failure).statusCode(409);
        withdraw(clutch, later)
                .statusCode(200)
                .body("setToIncubate", equalTo(6))
                .body("laid", equalTo(0));
        assertThat(Api.get(COORDINATOR, "/api/records/" + failure + "/revisions")
                        .getList("reason"))
                .containsExactly(null, "counted again", "of another box");
    }

    private static Answer withdraw(String clutch, String entry) {
        return Api.change(CARER, clutch, "/entries/" + entry + "/withdrawal", "{\"reason\":\"of another box\"}");
    }

    @Test
    void eggsOfADeadMotherAreAClutchTooAndHerYoungAreHers() {
        String mother = turtles.mother(ClutchWorld.LONG_NECKED);
        Api.change(COORDINATOR, "/api/cases/" + mother, "/fate", "{\"fate\":\"died\",\"at\":\"2025-11-20T20:00:00Z\"}")
                .statusCode(200);
        String clutch = turtles.clutch(mother, 7, "afterDeath", DAY);
        assertThat(Api.get(CARER, clutch).getString("recoveries[0].how")).isEqualTo("afterDeath");
        Json hatched = Api.make(CARER, clutch + "/hatchings", "{\"hatched\":5,\"at\":\"2026-01-28T02:00:00Z\"}");
        assertThat(hatched.getList("hatchlings")).hasSize(5);
        assertThat(hatched.getString("hatchlings[4].state")).isEqualTo("inCare");
        assertThat(hatched.getString("hatchlings[4].foundPlace.id"))
                .isEqualTo(Api.get(COORDINATOR, "/api/cases/" + mother).getString("foundPlace.id"));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + mother).getString("state"))
                .isEqualTo("ended");
    }

    @Test
    void hatchlingsAreHeldByWhoeverHeldTheClutchThen() {
        String mother = turtles.mother(ClutchWorld.LONG_NECKED);
        String clutch = turtles.clutch(mother, 4, "laidInTransit", DAY);
        Api.post(
                        COORDINATOR,
                        clutch + "/hand-overs",
                        "{\"holder\":{\"memberId\":\"%s\"},\"at\":\"2026-01-20T00:00:00Z\"}"
                                .formatted(turtles.world.unlicensedCarer))
                .statusCode(422)
                .body("detail", containsString("No authorisation"));
        Api.make(
                COORDINATOR,
                clutch + "/hand-overs",
                "{\"holder\":{\"memberId\":\"%s\"},\"at\":\"2026-01-20T00:00:00Z\"}".formatted(turtles.world.carer));
        // Entered late: they hatched before the hand-over
        assertThat(Api.make(COORDINATOR, clutch + "/hatchings", "{\"hatched\":1,\"at\":\"2026-01-19T00:00:00Z\"}")
                        .getString("hatchlings[0].custody[0].holder.memberId"))
                .isEqualTo(turtles.world.incubatorKeeper);
        assertThat(Api.make(COORDINATOR, clutch + "/hatchings", "{\"hatched\":1,\"at\":\"2026-01-21T00:00:00Z\"}")
                        .getString("hatchlings[0].custody[0].holder.memberId"))
                .isEqualTo(turtles.world.carer);
        Api.post(COORDINATOR, clutch + "/hatchings", "{\"hatched\":1,\"at\":\"2025-11-01T00:00:00Z\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("at"));
    }

    @Test
    void aLoggersFileIsKeptWholeOnceAndOrNotAtAll() {
        String clutch = turtles.clutch(turtles.mother(ClutchWorld.LONG_NECKED), 4, "surgery", DAY);
        send(clutch, "logger 1", "time;temp °C\n2026-01-05 10:00;28,4\n2026-01-05 10:10;28,6\n")
                .statusCode(201)
                .body("added", equalTo(2))
                .body("known", equalTo(0))
                .body("clutch.temperatures[0].lowestCelsius", equalTo(28.4))
                .body("clutch.temperatures[0].firstAt", equalTo("2026-01-04T23:00:00Z"));
        // It gives out all that it holds: what is known is left out
        send(clutch, "logger 1", "time;temp °C\n2026-01-05 10:10;28,6\n2026-01-05 10:20;28,8\n")
                .statusCode(201)
                .body("added", equalTo(1))
                .body("known", equalTo(1));
        send(clutch, "logger 1", "time;temp °C\n2026-01-05 10:10;28,7\n2026-01-05 10:30;28,8\n")
                .statusCode(400)
                .body("errors", org.hamcrest.Matchers.hasSize(1))
                .body("errors[0].detail", containsString("Row 2"))
                .body("errors[0].detail", containsString("28.6"));
        send(clutch, "logger 1", "time;temp °C\n2026-01-05 10:30;28,7\n2026-04-05 02:30;28,8\n")
                .statusCode(400)
                .body("errors[0].detail", containsString("Row 3"));
        send(clutch, "logger 1", "time;temp °C\n2096-01-05 10:30;28,7\n")
                .statusCode(400)
                .body("errors[0].detail", containsString("clock of the logger"));
        Api.post(
                        CARER,
                        clutch + "/temperatures",
                        "{\"source\":\"glass\",\"celsius\":29.5,\"at\":\"2026-01-04T23:05:00Z\"}")
                .statusCode(201)
                .body("temperatures[1].kind", equalTo("byHand"));
        Api.post(
                        CARER,
                        clutch + "/temperatures",
                        "{\"source\":\"glass\",\"celsius\":29.5,\"at\":\"2026-01-04T23:05:00Z\"}")
                .statusCode(409);
        assertThat(Api.get(OFFICER, clutch + "/temperatures").getList("items.celsius", Double.class))
                .containsExactly(28.4, 29.5, 28.6, 28.8);
        Json first = Api.get(OFFICER, clutch + "/temperatures?limit=3");
        assertThat(Api.get(OFFICER, clutch + "/temperatures?limit=3&cursor=" + first.getString("next"))
                        .getList("items.at", String.class))
                .containsExactly("2026-01-04T23:20:00Z");
        // A wrong file is taken back, and its times may be told again
        String record = Api.get(CARER, clutch).getString("temperatures[0].id");
        withdraw(clutch, record).statusCode(200);
        assertThat(Api.get(OFFICER, clutch + "/temperatures").getList("items.celsius", Double.class))
                .containsExactly(29.5, 28.8);
        send(clutch, "logger 1", "time;temp °C\n2026-01-05 10:10;28,7\n")
                .statusCode(201)
                .body("added", equalTo(1));
        Api.as(DISPATCHER).get(clutch + "/temperatures").then().statusCode(403);
    }

    private static Answer send(String clutch, String source, String csv) {
        return Api.as(CARER)
                .contentType("text/csv")
                .queryParam("source", source)
                .body(csv.getBytes(StandardCharsets.UTF_8))
                .post(clutch + "/temperature-files")
                .then();
    }

    @Test
    void fiftyThousandReadingsAreKeptInOneGo() {
        String clutch = turtles.clutch(turtles.mother(ClutchWorld.LONG_NECKED), 4, "surgery", DAY);
        String csv = org.culvert.care.incubation.LoggerFiles.file(
                Instant.parse("2026-01-05T00:00:00Z"), 50_000, Duration.ofMinutes(2));
        Instant began = Instant.now();
        send(clutch, "logger 2", csv).statusCode(201).body("added", equalTo(50_000));
        assertThat(Duration.between(began, Instant.now())).isLessThan(Duration.ofSeconds(20));
        Api.as(CARER).get(clutch).then().body("temperatures[0].readings", equalTo(50_000));
        send(clutch, "logger 2", csv).statusCode(201).body("added", equalTo(0)).body("known", equalTo(50_000));
    }

    /** Development of Carettochelys insculpta at 30 °C was complete after 69 days: studies of it, the abstracts were read. */
    @Test
    void temperaturesNarrowTheWindowWhereThereIsAModelAndNowhereElse() {
        Instant set = Clocks.now().minus(Duration.ofDays(40)).truncatedTo(ChronoUnit.SECONDS);
        LocalDate day = set.atZone(ZoneId.of("Australia/Sydney")).toLocalDate();
        for (String species : List.of(ClutchWorld.PIG_NOSED, ClutchWorld.LONG_NECKED)) {
            String clutch = turtles.clutch(turtles.mother(species), 4, "surgery", set.toString());
            Json before = Api.get(CARER, clutch);
            assertThat(before.getBoolean("hatchWindow.narrowed")).isFalse();
            var csv = new StringBuilder("time,temp\n");
            for (int hour = 0; hour <= 40 * 24; hour++) {
                csv.append(set.plus(Duration.ofHours(hour))).append(",30.0\n");
            }
            send(clutch, "logger", csv.toString()).statusCode(201);
            Json after = Api.get(CARER, clutch);
            if (species.equals(ClutchWorld.PIG_NOSED)) {
                assertThat(before.getString("hatchWindow.latest"))
                        .isEqualTo(day.plusDays(101).toString());
                assertThat(after.getBoolean("hatchWindow.narrowed")).isTrue();
                assertThat(LocalDate.parse(after.getString("hatchWindow.earliest")))
                        .isBetween(day.plusDays(66), day.plusDays(69));
            } else {
                assertThat(after.getBoolean("hatchWindow.narrowed")).isFalse();
                assertThat(after.getString("hatchWindow.earliest"))
                        .isEqualTo(before.getString("hatchWindow.earliest"))
                        .isEqualTo(day.plusDays(60).toString());
                assertThat(after.getString("hatchWindow.latest"))
                        .isEqualTo(day.plusDays(80).toString());
            }
        }
    }

    @Test
    void longPastItsWindowNoEggHasFailed() {
        String clutch = turtles.clutch(turtles.mother(ClutchWorld.LONG_NECKED), 4, "surgery", "2024-11-21T02:00:00Z");
        Api.as(CARER)
                .get(clutch)
                .then()
                .body("hatchWindow.latest", equalTo("2025-02-09"))
                .body("failed", equalTo(0))
                .body("stillIncubating", equalTo(4))
                .body("hatchWindow.basis", hasItem(containsString("No egg has failed")));
    }

    @Test
    void adviceOnSexIsForSpeciesWhoseSexTemperatureMakes() {
        Api.as(CARER)
                .get(turtles.clutch(turtles.mother(ClutchWorld.SNAPPING), 4, "surgery", DAY))
                .then()
                .body("sexAdvisory.madeBy", equalTo("temperature"))
                .body("sexAdvisory.advice", containsString("30.5 °C"))
                .body("sexAdvisory.sources[0]", containsString("201:439"));
        Api.as(CARER)
                .get(turtles.clutch(turtles.mother(ClutchWorld.LONG_NECKED), 4, "surgery", DAY))
                .then()
                .body("sexAdvisory.madeBy", equalTo("genes"))
                .body("sexAdvisory.advice", nullValue())
                .body("sexAdvisory.why", containsString("Sex chromosomes"));
        Api.as(CARER)
                .get(turtles.clutch(turtles.mother(ClutchWorld.PIG_NOSED), 4, "surgery", DAY))
                .then()
                .body("sexAdvisory.madeBy", equalTo("unknown"))
                .body("sexAdvisory.advice", nullValue());
    }

    @Test
    void publishedFactsAreDataWithTheirSources() {
        Json facts = Api.get(CARER, "/api/incubation-facts");
        assertThat(facts.<String>getList("source")).isNotEmpty().allMatch(source -> source.length() >= 10);
        assertThat(facts.getDouble("find { it.kind == 'rateModel' }.degreeDays"))
                .isEqualTo(446);
        String fact =
                "{\"kind\":\"period\",\"scientificName\":\"Nova testudo\",\"basis\":\"published\",%s\"words\":\"x\","
                        + "\"source\":\"made for a test\",\"readOn\":\"2026-01-01\",\"reviewBy\":\"2027-01-01\",\"validFrom\":\"2026-01-01\"}";
        Api.post(COORDINATOR, "/api/incubation-facts", fact.formatted(""))
                .statusCode(400)
                .body("errors[0].field", equalTo("setting"));
        String id = Api.make(
                        ADMIN,
                        "/api/incubation-facts",
                        fact.formatted("\"setting\":\"incubator\",\"daysLow\":60,\"daysHigh\":70.5,"))
                .getString("id");
        assertThat(Api.get(CLINIC, "/api/incubation-facts/" + id).getDouble("daysHigh"))
                .isEqualTo(70.5);
        Api.change(COORDINATOR, "/api/incubation-facts/" + id, "/reviews", """
                        {"readOn":"2026-11-01","reviewBy":"2028-01-01","validTo":"2026-12-01","reason":"read again"}
                        """)
                .statusCode(200)
                .body("validTo", equalTo("2026-12-01"));
        Api.post(CARER, "/api/incubation-facts", fact.formatted("")).statusCode(403);
    }

    @Test
    void theVisitAtWhichEggsCameIsOneOfTheirMother() {
        String mother = turtles.mother(ClutchWorld.LONG_NECKED);
        String own = turtles.film(mother, 9, "medium", "2025-11-20T12:00:00Z");
        String another = turtles.film(turtles.mother(ClutchWorld.LONG_NECKED), 9, "medium", "2025-11-20T12:00:00Z");
        String clutch = """
                {"motherCaseId":"%s","visitId":"%s","holder":{"memberId":"%s"},
                 "eggs":{"recovered":1,"setToIncubate":1,"broken":0,"discarded":0,"at":"2025-11-21T02:00:00Z"}}
                """;
        Api.post(COORDINATOR, "/api/clutches", clutch.formatted(mother, another, turtles.world.incubatorKeeper))
                .statusCode(400)
                .body("errors[0].field", equalTo("visitId"));
        String id = Api.make(COORDINATOR, "/api/clutches", clutch.formatted(mother, own, turtles.world.incubatorKeeper))
                .getString("id");
        Api.correct(
                        COORDINATOR,
                        "/api/clutches/" + id,
                        "{\"visitId\":\"%s\",\"reason\":\"another one\"}".formatted(another))
                .statusCode(400)
                .body("errors[0].field", equalTo("visitId"));
    }
}
