package org.culvert.exchange.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Pattern;
import org.culvert.platform.PackagedServer;
import org.culvert.platform.Patience;
import org.culvert.platform.Role;
import org.culvert.platform.database.UnpackedPostgres;
import org.culvert.support.Json;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/**
 * The demo as a newcomer starts it: the packaged server loads the region, and what was planted in it is asked for over HTTP.
 * In order, since the region is loaded once.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class DemoIT {
    private static final DemoRegion REGION = DemoRegion.committed();
    private static final List<String> FAINT = List.of("H14", "H15");
    private static final HttpClient HTTP = HttpClient.newHttpClient();

    @TempDir
    static Path folder;

    private static PackagedServer server;

    @BeforeAll
    static void loadTheRegion() {
        server = PackagedServer.launch(folder, demo("home"));
        awaitLoaded();
    }

    private static Map<String, String> demo(String home) {
        return Map.of("CULVERT_HOME", folder.resolve(home).toString(), "CULVERT_DEMO", "true");
    }

    /** It says every few seconds how far it is; so it may take its time, but not stand still. */
    private static void awaitLoaded() {
        while (server.status("/q/health/ready") != 200) {
            int before = server.output().length();
            Patience.until("the load goes on", () -> {
                assertThat(server.isAlive()).as(server.output()).isTrue();
                return server.status("/q/health/ready") == 200
                        || server.output().length() > before;
            });
        }
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    @Test
    @Order(1)
    void itTellsTheFiveWorstStretchesOfTheSeasonAndAllOfThemWerePlanted() {
        Patience.until("the worst stretches are told", () -> server.output().contains("The whole report"));
        List<String> told = Pattern.compile("^  (\\d)\\. (.+?), km ", Pattern.MULTILINE)
                .matcher(server.output())
                .results()
                .map(result -> result.group(2))
                .toList();
        List<String> planted = REGION.plants().stream()
                .filter(plant -> plant.spec().taxonGroup().equals("turtles"))
                .map(plant -> plant.roads().get(0).name())
                .toList();

        assertThat(told).hasSize(5).isSubsetOf(planted);
    }

    @Test
    @Order(2)
    void plantedStretchesAreFoundOverHttpAndHardlyAnyOther() {
        Map<String, List<Plant>> cells = new TreeMap<>();
        for (Plant plant : REGION.plants()) {
            if (plant.hot()) {
                cells.computeIfAbsent(plant.spec().taxonGroup() + plant.spec().months(), key -> new ArrayList<>())
                        .add(plant);
            }
        }
        List<String> found = new ArrayList<>();
        List<String> missed = new ArrayList<>();
        List<String> falseOnes = new ArrayList<>();
        for (List<Plant> plants : cells.values()) {
            Settings.PlantSpec spec = plants.get(0).spec();
            List<Named> named = run(spec.taxonGroup(), spec.months());
            for (Plant plant : plants) {
                (named.stream().anyMatch(each -> each.meets(plant)) ? found : missed).add(plant.id());
            }
            for (Named each : named) {
                boolean planted = REGION.plants().stream()
                        .anyMatch(plant -> plant.hot()
                                && plant.spec().taxonGroup().equals(spec.taxonGroup())
                                && plant.spec().months().stream().anyMatch(spec.months()::contains)
                                && each.meets(plant));
                if (!planted) {
                    falseOnes.add(spec.taxonGroup() + " " + each);
                }
            }
        }
        note("planted", "%d runs; found %s; missed %s; false %s".formatted(cells.size(), found, missed, falseOnes));

        assertThat(missed).isSubsetOf(FAINT);
        assertThat(falseOnes).hasSizeLessThanOrEqualTo(2);
    }

    /** Keeps a figure beside the test's own report. */
    private static void note(String name, String words) {
        try {
            Path figures = Files.createDirectories(Path.of("target", "figures"));
            Files.writeString(figures.resolve("demo-" + name + ".txt"), words + "\n");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private record Named(String road, double fromMetres, double toMetres) {
        boolean meets(Plant plant) {
            return plant.roads().get(0).name().equals(road)
                    && fromMetres < plant.toMetres() + 300
                    && toMetres > plant.fromMetres() - 300;
        }
    }

    private static List<Named> run(String group, List<Integer> months) {
        // A roads authority is not shown the stretches of sensitive species, some of which were planted.
        String id = ask(Role.COORDINATOR, "/api/hotspot-runs", """
                {"periodFrom":"2020-07-01","periodTo":"2026-06-30","taxonGroup":"%s","months":%s,"reachMetres":300,
                 "simulations":999,"seed":1}
                """.formatted(group, months))
                .getString("id");
        Patience.until(
                "run " + id + " is done",
                () -> !List.of("waiting", "computing")
                        .contains(ask(Role.COORDINATOR, "/api/hotspot-runs/" + id, null)
                                .getString("state")));
        Json result = ask(Role.COORDINATOR, "/api/hotspot-runs/" + id + "/result", null);
        List<Named> named = new ArrayList<>();
        for (int i = 0; i < result.getList("hotspots").size(); i++) {
            String at = "hotspots[" + i + "].";
            named.add(new Named(
                    result.getString(at + "road"),
                    result.getDouble(at + "fromChainageMetres"),
                    result.getDouble(at + "toChainageMetres")));
        }
        return named;
    }

    /** Second callers whom the desk knew at once in the story of the region: asked again, does the server offer the first? */
    @Test
    @Order(3)
    void theFirstCallersIncidentIsOfferedToTheSecondsDesk() {
        List<Incident> twice = REGION.incidents().stream()
                .filter(incident -> incident.deskJoin() == Incident.DeskJoin.AT_ONCE)
                .filter(incident -> incident.calls().stream()
                        .allMatch(call -> call.place().kind() == GivenPlace.Kind.DECIMAL_DEGREES
                                || call.place().kind() == GivenPlace.Kind.ROAD_AND_CHAINAGE))
                .limit(60)
                .toList();
        int offered = 0;
        for (Incident incident : twice) {
            Json receipt = ask(
                    Role.DISPATCHER,
                    "/api/calls",
                    json(incident, incident.calls().get(1)));
            List<String> candidates = receipt.getList("mayBeTheSame.incidentId");
            boolean found = candidates.stream()
                    .anyMatch(candidate -> ask(Role.DISPATCHER, "/api/incidents/" + candidate, null)
                            .getList("calls.receivedAt", String.class)
                            .contains(incident.calls().get(0).received().toString()));
            offered += found ? 1 : 0;
        }
        note(
                "offered",
                offered + " of " + twice.size() + " first incidents were offered to the desk of the second call");

        assertThat(twice).hasSize(60);
        assertThat(offered).isGreaterThanOrEqualTo(45);
    }

    private static String json(Incident incident, Incident.Call call) {
        GivenPlace place = call.place();
        String where = place.kind() == GivenPlace.Kind.DECIMAL_DEGREES
                ? "{\"decimalDegrees\":{\"latitude\":\"%s\",\"longitude\":\"%s\"}}"
                        .formatted(place.decimalLatitude(), place.decimalLongitude())
                : "{\"roadAndChainage\":{\"road\":\"%s\",\"chainageKilometres\":\"%s\"%s}}"
                        .formatted(
                                place.roadName(),
                                place.chainageKm(),
                                place.carriageway() == null ? "" : ",\"carriageway\":\"" + place.carriageway() + '"');
        return """
                {"receivedAt":"%s","people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"%s",
                 "animals":[{"scientificName":"%s","vitality":"unknown"}],"place":%s}
                """.formatted(
                        call.received(), incident.cause(), call.animals().get(0).scientificName(), where);
    }

    @Test
    @Order(4)
    void anAnimalsStoryIsToldToItsEnd() {
        Json releases = ask(Role.COORDINATOR, "/api/releases", null);

        assertThat(releases.getList("items")).hasSize(1);
        assertThat(releases.getList("items[0].animals.caseId")).hasSize(7);
        Json mother = ask(Role.COORDINATOR, "/api/cases/" + releases.getString("items[0].animals[0].caseId"), null);
        assertThat(mother.getString("fate.fate")).isEqualTo("released");
        assertThat(mother.getList("custodyGaps")).isEmpty();
    }

    @Test
    @Order(4)
    void anAnimalThatStaysHasItsDecision() {
        Json decisions = ask(Role.COORDINATOR, "/api/non-release-decisions", null);

        assertThat(decisions.getList("items")).hasSize(1);
        assertThat(decisions.getList("items[0].grounds")).containsExactly("cannotBreedSafely");
        assertThat(decisions.getList("items[0].secondOpinions.agrees")).containsExactly(true);
    }

    /** The pond beside the bend where she was struck is near, in her catchment, across no border, and beside a hotspot. */
    @Test
    @Order(4)
    void aSiteBesideAHotspotHasItsWarning() {
        Json sites = ask(Role.COORDINATOR, "/api/release-sites", null);
        String pond = sites.getString("items.find { it.name == '" + ReleaseLoader.POND + "' }.id");
        Incident struck = Stories.incidentOf(REGION, Stories.Story.TURTLE_IN_CARE);
        String caseId =
                turtleFoundOn(struck.happened().atZone(REGION.settings().zone()).toLocalDate());
        Json assessed = ask(
                Role.COORDINATOR, "/api/assessments", "{\"caseId\":\"%s\",\"siteId\":\"%s\"}".formatted(caseId, pond));
        Map<String, String> verdicts = new HashMap<>();
        assessed.<Map<String, Object>>getList("tests")
                .forEach(test -> verdicts.put(String.valueOf(test.get("test")), String.valueOf(test.get("verdict"))));

        assertThat(verdicts)
                .containsEntry("hotspotsNear", "fail")
                .containsEntry("sameCatchment", "pass")
                .containsEntry("borderApproval", "pass");
    }

    /** After the fence nothing was planted any more; beside the reflectors and the signs it went on. */
    @Test
    @Order(4)
    void theFenceHelpedAndTheOtherWorksAreNotSaidToHaveHelped() {
        Json works = ask(Role.ROADS_AUTHORITY, "/api/works", null);
        Map<String, String> said = new HashMap<>();
        for (String kind : List.of("fenceAndCrossing", "reflectors", "signs")) {
            String id = works.getString("items.find { it.kind == '" + kind + "' }.id");
            Json effect =
                    ask(Role.COORDINATOR, "/api/works/" + id + "/effect?taxonGroup=turtles&months=10,11,12,1", null);
            said.put(kind, effect.getString("parts.find { it.part == 'inside' }.verdict"));
        }
        note("works", said.toString());

        assertThat(said.get("fenceAndCrossing")).contains("prevent at least");
        assertThat(said.get("reflectors")).startsWith("Not judged");
        assertThat(said.get("signs")).startsWith("Not judged");
    }

    /** Weeks of care by a template that an invented vet adopted; what was not done reaches the coordinator. */
    @Test
    @Order(4)
    void theTurtleInCareHasAPlan() {
        Json templates = ask(Role.CLINIC, "/api/plan-templates", null);
        assertThat(templates.getList("findAll { it.adopted }.key")).containsExactly("turtle-soft-tissue");
        Incident struck = Stories.incidentOf(REGION, Stories.Story.TURTLE_IN_CARE);
        String caseId =
                turtleFoundOn(struck.happened().atZone(REGION.settings().zone()).toLocalDate());
        Json plan = ask(Role.COORDINATOR, "/api/cases/" + caseId + "/aftercare-plans", null);

        assertThat(plan.getBoolean("[0].inForce")).isTrue();
        assertThat(plan.getList("[0].tasks.findAll { it.stepKey == 'swim' }.state"))
                .contains("done", "skipped")
                .doesNotContain("overdue");
        assertThat(ask(Role.COORDINATOR, "/api/missed-tasks", null)
                        .getList("items.findAll { it.caseId == '" + caseId + "' }.stepKey"))
                .contains("wound");
    }

    /** Nobody whose house is full, or who has no paper, can take an animal; somebody can take a possum. */
    @Test
    @Order(4)
    void somebodyCanTakeTheThreePossumsThatAreAlike() {
        Json alerts = ask(Role.OFFICER, "/api/health-alerts", null);
        assertThat(alerts.getList("items.animals")).containsExactly(3);
        assertThat(alerts.getString("items[0].state")).isEqualTo("unread");
        Json carers =
                ask(Role.COORDINATOR, "/api/cases/" + alerts.getString("items[0].reports[0].caseId") + "/carers", null);

        assertThat(carers.getList("answer")).contains("canTake", "canNotTake");
        assertThat(carers.getList("findAll { it.answer == 'canTake' && it.held >= it.places }"))
                .isEmpty();
        assertThat(carers.getList("places")).doesNotContainNull();
    }

    @Test
    @Order(4)
    void theBatThatScratchedSomebodyIsHeld() {
        Json exposures = ask(Role.COORDINATOR, "/api/exposures?untold=true", null);

        assertThat(exposures.getList("items.kind")).containsExactly("scratch");
        assertThat(exposures.getBoolean("items[0].animalHeld")).isTrue();
    }

    private static String turtleFoundOn(LocalDate day) {
        String cursor = "";
        while (true) {
            Json page = ask(Role.COORDINATOR, "/api/cases?limit=200" + cursor, null);
            for (int i = 0; i < page.getList("items").size(); i++) {
                String at = "items[" + i + "].";
                if (page.getString(at + "animal.scientificName").equals("Chelodina longicollis")
                        && page.getString(at + "state").equals("inCare")
                        && Instant.parse(page.getString(at + "foundAt"))
                                .atZone(REGION.settings().zone())
                                .toLocalDate()
                                .equals(day)) {
                    return page.getString(at + "id");
                }
            }
            assertThat(page.getString("next"))
                    .as("no turtle was found on %s", day)
                    .isNotNull();
            cursor = "&cursor=" + page.getString("next");
        }
    }

    @Test
    @Order(5)
    void aSecondStartLoadsNothingAgain() {
        server.close();
        server = PackagedServer.start(folder, demo("home"));
        Patience.until("the worst stretches are told", () -> server.output().contains("The whole report"));

        assertThat(server.output()).doesNotContain(" incidents").doesNotContain("Computing");
        assertThat(ask(Role.COORDINATOR, "/api/road-networks", null).getList("$"))
                .hasSize(1);
    }

    @Test
    @Order(6)
    void itDoesNotMixItsInventionsWithRealRecords() {
        Map<String, String> other = Map.of(
                "CULVERT_HOME", UnpackedPostgres.into(folder.resolve("real")).toString());
        try (PackagedServer real = PackagedServer.start(folder, other)) {
            HttpResponse<String> settled = real.sendAsAdmin(HttpRequest.newBuilder(real.at("/api/region"))
                    .header("Content-Type", "application/json")
                    .header("Idempotency-Key", UUID.randomUUID().toString())
                    .PUT(HttpRequest.BodyPublishers.ofString("""
                            {"name":"Three Rivers","timeZone":"Australia/Brisbane","countryCode":"AU","south":-28.0,
                             "west":152.0,"north":-26.0,"east":154.0}""")));
            assertThat(settled.statusCode()).isEqualTo(200);
        }
        try (PackagedServer refusing = PackagedServer.launch(folder, demo("real"))) {
            assertThat(refusing.awaitEnd()).isNotZero();
            assertThat(refusing.output()).contains("empty database only");
        }
    }

    /** A GET, or a POST of a body, in a role of the demo. */
    private static Json ask(String role, String path, @Nullable String body) {
        HttpRequest.Builder request = HttpRequest.newBuilder(server.at(path))
                .header(
                        "Authorization",
                        "Basic "
                                + Base64.getEncoder()
                                        .encodeToString((role + ':' + DemoAccounts.token(role))
                                                .getBytes(StandardCharsets.UTF_8)))
                .header("Content-Type", "application/json");
        if (body != null) {
            request.header("Idempotency-Key", UUID.randomUUID().toString());
            request.POST(HttpRequest.BodyPublishers.ofString(body));
        }
        try {
            HttpResponse<String> response = HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
            assertThat(response.statusCode()).as(path + " " + response.body()).isBetween(200, 299);
            return Json.from(response.body());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
