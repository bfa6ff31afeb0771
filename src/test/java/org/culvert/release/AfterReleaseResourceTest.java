package org.culvert.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
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
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import javax.imageio.ImageIO;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class AfterReleaseResourceTest {
    private static final String LET_GO = ",\"at\":\"2022-02-01T02:00:00Z\"";

    @Inject
    DataSource database;

    private ReleaseWorld turtles;

    @BeforeEach
    void makeWorld() {
        turtles = new ReleaseWorld();
    }

    private Json release(List<String> cases, String more) {
        return Api.make(COORDINATOR, "/api/releases", turtles.release(cases, more));
    }

    private String released() {
        return "/api/releases/"
                + release(List.of(turtles.newCase().getString("id")), LET_GO).getString("id");
    }

    @Test
    void aReleaseSaysHowItWasMade() {
        String id = turtles.newCase().getString("id");
        Json made = release(
                List.of(id),
                LET_GO + ",\"weather\":\"after rain, 24 degrees\",\"light\":\"twilight\",\"manner\":\"soft\","
                        + "\"supportFeedingUntil\":\"2022-02-15\",\"othersPresent\":\"who owns the dam\","
                        + "\"raisedTogether\":false");
        String path = "/api/releases/" + made.getString("id");
        Json kept = Api.get(CARER, path);
        assertThat(kept.getString("weather")).isEqualTo("after rain, 24 degrees");
        assertThat(kept.getString("light")).isEqualTo("twilight");
        assertThat(kept.getString("manner")).isEqualTo("soft");
        assertThat(kept.getString("supportFeedingUntil")).isEqualTo("2022-02-15");
        assertThat(kept.getString("othersPresent")).isEqualTo("who owns the dam");
        assertThat(kept.getBoolean("raisedTogether")).isFalse();

        Api.change(CARER, path, "/support-feeding-end", "{\"at\":\"2022-01-31T02:00:00Z\",\"endedBy\":\"a neighbour\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("at"));
        Api.as(CARER)
                .body("{\"endedBy\":\"a neighbour\"}")
                .post(path + "/support-feeding-end")
                .then()
                .statusCode(428);
        Api.change(CARER, path, "/support-feeding-end", "{\"at\":\"2022-02-12T02:00:00Z\",\"endedBy\":\"a neighbour\"}")
                .statusCode(200)
                .body("supportFeedingEndedAt", equalTo("2022-02-12T02:00:00Z"))
                .body("supportFeedingEndedBy", equalTo("a neighbour"))
                .body("record.revision", equalTo(2));
        Api.change(CARER, path, "/support-feeding-end", "{\"endedBy\":\"a neighbour\"}")
                .statusCode(409);
        Api.correct(
                        COORDINATOR,
                        path,
                        "{\"weather\":null,\"light\":\"day\",\"raisedTogether\":null,\"reason\":\"misread\"}")
                .statusCode(200)
                .body("weather", nullValue())
                .body("light", equalTo("day"))
                .body("raisedTogether", nullValue());
        Api.correct(COORDINATOR, path, "{\"manner\":\"hard\",\"reason\":\"misread\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("supportFeedingUntil"));
        Api.correct(COORDINATOR, path, "{\"manner\":\"hard\",\"supportFeedingUntil\":null,\"reason\":\"misread\"}")
                .statusCode(409)
                .body("detail", containsString("Only a soft release"));
        assertThat(Api.get(OFFICER, path).getString("manner")).isEqualTo("soft");
    }

    @Test
    void whatIsNotSaidOfAReleaseStaysOpen() {
        Json made = release(List.of(turtles.newCase().getString("id")), "");
        assertThat(made.getMap("$")).containsKeys("weather", "light", "manner", "raisedTogether");
        assertThat(made.getString("light")).isNull();
        assertThat(made.getString("manner")).isNull();
        assertThat((Object) made.get("raisedTogether")).isNull();
        Api.change(COORDINATOR, "/api/releases/" + made.getString("id"), "/support-feeding-end", "{\"endedBy\":\"me\"}")
                .statusCode(409)
                .body("detail", containsString("no soft release"));
        String id = turtles.newCase().getString("id");
        Api.post(
                        COORDINATOR,
                        "/api/releases",
                        turtles.release(List.of(id), ",\"manner\":\"hard\",\"supportFeedingUntil\":\"2090-01-01\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("supportFeedingUntil"));
        Api.post(
                        COORDINATOR,
                        "/api/releases",
                        turtles.release(
                                List.of(id), LET_GO + ",\"manner\":\"soft\",\"supportFeedingUntil\":\"2022-01-31\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("supportFeedingUntil"));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getMap("fate")).isNull();
    }

    /** Twelve eggs hatch (common practice, no source: they go back as one batch at their mother's water). */
    @Test
    void twelveHatchlingsGoInOneActOrNoneOfThem() {
        Json mother = turtles.newCase();
        turtles.world.authorise(turtles.world.incubatorKeeper, "snapping-turtles");
        String clutch = Api.make(COORDINATOR, "/api/clutches", """
                        {"motherCaseId":"%s","holder":{"memberId":"%s"},
                         "eggs":{"recovered":12,"setToIncubate":12,"broken":0,"discarded":0,"at":"2021-11-21T02:00:00Z"}}
                        """.formatted(
                                mother.getString("id"), turtles.world.incubatorKeeper))
                .getString("id");
        List<String> hatchlings = Api.make(
                        CARER,
                        "/api/clutches/" + clutch + "/hatchings",
                        "{\"hatched\":12,\"at\":\"2022-01-28T02:00:00Z\"}")
                .getList("hatchlings.id", String.class);
        assertThat(hatchlings).hasSize(12);

        // Of one of them a vet has decided that it does not go back: none goes, and the reason is its own
        Json decided = Api.make(COORDINATOR, "/api/cases/" + hatchlings.get(6) + "/non-release-decisions", """
                {"grounds":["injury"],"words":"no front leg","vetName":"Dr Vet","vetRegistration":"V-1"}
                """);
        Api.post(COORDINATOR, "/api/releases", turtles.release(hatchlings, ""))
                .statusCode(422)
                .body("reasons", hasSize(1))
                .body("reasons[0]", containsString("Case " + decided.getLong("caseNumber") + ":"))
                .body("reasons[0]", containsString("injury"));
        for (String id : hatchlings) {
            assertThat(Api.get(CARER, "/api/cases/" + id).getMap("fate")).isNull();
        }
        Api.change(
                        COORDINATOR,
                        "/api/non-release-decisions/" + decided.getString("id"),
                        "/withdrawal",
                        "{\"reason\":\"it was another one's record\"}")
                .statusCode(200);

        // One of another mother, whose place nobody knows, refuses all for its own reason
        String incident = World.call(ReleaseWorld.TURTLE, 150.0412, "").getString("incidentId");
        Json stray =
                Api.make(RESCUER, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2021-12-20T09:30:00Z","originUnknown":true,
                 "holder":{"memberId":"%s"}}
                """.formatted(incident, ReleaseWorld.TURTLE, turtles.world.rescuer));
        List<String> thirteen = new java.util.ArrayList<>(hatchlings);
        thirteen.add(stray.getString("id"));
        Api.post(COORDINATOR, "/api/releases", turtles.release(thirteen, ""))
                .statusCode(422)
                .body("reasons", hasSize(1))
                .body("reasons[0]", containsString("Case " + stray.getLong("number") + ","))
                .body("reasons[0]", containsString("Nobody knows where it was found"));

        Json made = release(hatchlings, ",\"manner\":\"hard\",\"raisedTogether\":true");
        assertThat(made.getList("animals.caseId", String.class)).containsExactlyInAnyOrderElementsOf(hatchlings);
        assertThat(made.getBoolean("raisedTogether")).isTrue();
        assertThat(made.getInt("afterRelease.animals")).isEqualTo(12);
        for (String id : hatchlings) {
            Json ended = Api.get(CARER, "/api/cases/" + id);
            assertThat(ended.getString("fate.releaseId")).isEqualTo(made.getString("id"));
            assertThat(ended.getString("foundPlace.id")).isEqualTo(mother.getString("foundPlace.id"));
        }
    }

    private static byte[] image(String format) {
        try {
            var octets = new ByteArrayOutputStream();
            ImageIO.write(new BufferedImage(4, 3, BufferedImage.TYPE_INT_RGB), format, octets);
            return octets.toByteArray();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** With a segment such as cameras write (JPEG APP1, "Exif" and two zeros); here words stand in place of a position. */
    private static byte[] imageThatSaysWhere() {
        byte[] image = image("jpeg");
        byte[] told = "Exif\0\0 30.5 S 150.04 E".getBytes(StandardCharsets.US_ASCII);
        var octets = new ByteArrayOutputStream();
        octets.write(image, 0, 2);
        octets.write(0xff);
        octets.write(0xe1);
        octets.write(0);
        octets.write(told.length + 2);
        octets.write(told, 0, told.length);
        octets.write(image, 2, image.length - 2);
        return octets.toByteArray();
    }

    private static String photograph(String mediaType, byte[] content) {
        return "{\"mediaType\":\"%s\",\"content\":\"%s\",\"caption\":\"at the water\",\"takenAt\":\"2022-02-01T02:05:00Z\"}"
                .formatted(mediaType, Base64.getEncoder().encodeToString(content));
    }

    @Test
    void aPhotographGoesToWhoSeesTheExactPlaceAlone() {
        byte[] picture = imageThatSaysWhere();
        String path = released();
        Json made = Api.make(CARER, path + "/photographs", photograph("image/jpeg", picture));
        assertThat(made.getString("caption")).isEqualTo("at the water");
        assertThat(made.getString("takenAt")).isEqualTo("2022-02-01T02:05:00Z");
        Json shown = Api.get(COORDINATOR, path);
        assertThat(shown.getList("photographs.id")).containsExactly(made.getString("id"));
        assertThat(shown.getMap("photographs[0]")).doesNotContainKeys("content", "fileId");

        String file = path + "/photographs/" + made.getString("id");
        for (String role : List.of(COORDINATOR, OFFICER, CARER, CLINIC)) {
            byte[] fetched = Api.as(role)
                    .accept("*/*")
                    .get(file)
                    .then()
                    .statusCode(200)
                    .contentType("image/jpeg")
                    .header("X-Content-Type-Options", "nosniff")
                    .header("Content-Disposition", containsString("attachment"))
                    .extract()
                    .asByteArray();
            assertThat(fetched).isEqualTo(picture);
        }
        for (String role : List.of(RESCUER, DISPATCHER, ROADS_AUTHORITY, RECIPIENT, ADMIN)) {
            Api.as(role).accept("*/*").get(file).then().statusCode(403);
        }
        Api.as(CARER)
                .get(released() + "/photographs/" + made.getString("id"))
                .then()
                .statusCode(404);

        Api.change(
                        COORDINATOR,
                        path,
                        "/photographs/" + made.getString("id") + "/withdrawal",
                        "{\"reason\":\"it shows a neighbour\"}")
                .statusCode(200)
                .body("photographs[0].withdrawnBecause", equalTo("it shows a neighbour"));
        Api.as(CARER).accept("*/*").get(file).then().statusCode(404);
        Api.as(OFFICER).accept("*/*").get(file).then().statusCode(200);
    }

    @Test
    void theReleaseOfAnotherOrganisationIsNotThere() {
        String shelter = Api.make(ADMIN, "/api/organisations", """
                        {"kind":"shelter","name":"Shelter %s","xRay":false,"surgery":false}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        String incident = World.call(ReleaseWorld.TURTLE, 150.0412, "").getString("incidentId");
        String id = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2021-12-20T09:30:00Z",
                         "holder":{"organisationId":"%s"}}
                        """.formatted(incident, ReleaseWorld.TURTLE, shelter))
                .getString("id");
        World.signFit(id, Clocks.now().toString());
        String assessment = Api.make(COORDINATOR, "/api/assessments", """
                        {"caseId":"%s","position":{"jurisdiction":"%s","decimalLatitude":-30.5,"decimalLongitude":150.0412,
                         "coordinateUncertaintyInMeters":10}}
                        """.formatted(id, turtles.jurisdiction))
                .getString("id");
        String path = "/api/releases/"
                + Api.make(COORDINATOR, "/api/releases", """
                        {"caseIds":["%s"],"assessmentIds":["%s"],"approvedBy":"Dr Vet"}
                        """.formatted(id, assessment))
                        .getString("id");
        String photograph = Api.make(COORDINATOR, path + "/photographs", photograph("image/png", image("png")))
                .getString("id");
        for (String role : List.of(CARER, CLINIC)) {
            Api.as(role).get(path + "/photographs/" + photograph).then().statusCode(404);
            Api.as(role).get(path + "/sightings").then().statusCode(404);
            Api.post(role, path + "/sightings", "{\"knownBy\":\"guessed\"}").statusCode(404);
            Api.post(role, path + "/photographs", photograph("image/png", image("png")))
                    .statusCode(404);
        }
    }

    @Test
    void whatIsNoPhotographIsRefused() {
        String path = released() + "/photographs";
        Api.post(CARER, path, photograph("image/png", image("jpeg")))
                .statusCode(400)
                .body("errors[0].field", equalTo("content"))
                .body("errors[0].detail", containsString("image/png"));
        Api.post(CARER, path, photograph("image/svg+xml", "<svg/>".getBytes(StandardCharsets.UTF_8)))
                .statusCode(400)
                .body("errors[0].field", equalTo("mediaType"));
        Api.post(CARER, path, photograph("image/png", new byte[0])).statusCode(400);
        Api.post(CARER, path, "{\"mediaType\":\"image/png\",\"content\":\"not base64!\"}")
                .statusCode(400);
        byte[] large = java.util.Arrays.copyOf(image("png"), 10_000_001);
        Api.post(CARER, path, photograph("image/png", large)).statusCode(400);
        byte[] largest = java.util.Arrays.copyOf(image("png"), 10_000_000);
        Api.post(CARER, path, photograph("image/png", largest)).statusCode(201);
        Api.post(CARER, "/api/releases/" + UUID.randomUUID() + "/photographs", photograph("image/png", image("png")))
                .statusCode(404);
    }

    @Test
    void unseenIsNotDead() {
        List<Json> cases = List.of(turtles.newCase(), turtles.newCase(), turtles.newCase(), turtles.newCase());
        List<String> ids = cases.stream().map(told -> told.getString("id")).toList();
        String path = "/api/releases/" + release(ids, LET_GO).getString("id");
        assertThat(Api.get(COORDINATOR, path).getInt("afterRelease.nothingKnown"))
                .isEqualTo(4);

        // Twice the first, by her marks: one animal
        for (String at : List.of("2022-03-01T02:00:00Z", "2022-04-01T02:00:00Z")) {
            Json seen = Api.make(CARER, path + "/sightings", """
                    {"caseId":"%s","at":"%s","knownBy":"photographOrNaturalMarks","alive":"yes","decimalLatitude":-30.51,
                     "decimalLongitude":150.04,"coordinateUncertaintyInMeters":30,"words":"on a log"}
                    """.formatted(ids.get(0), at));
            assertThat(seen.getDouble("decimalLatitude")).isEqualTo(-30.51);
        }
        // The second dead on the road: her collision is an incident
        String incident = World.call(ReleaseWorld.TURTLE, 150.0415, "").getString("incidentId");
        String found = """
                {"caseId":"%s","at":"2022-05-01T02:00:00Z","knownBy":"foundByPerson","alive":"no","incidentId":"%s"}
                """.formatted(ids.get(1), incident);
        Json dead = Api.make(COORDINATOR, path + "/sightings", found);
        // An incident that the clinic has no part in is not there for it
        Api.post(CLINIC, path + "/sightings", found).statusCode(404);
        assertThat(dead.getString("incidentId")).isEqualTo(incident);
        // One of them, nobody knows which; and a guess, which counts as none of them
        Api.make(COORDINATOR, path + "/sightings", "{\"knownBy\":\"tracked\",\"alive\":\"yes\"}");
        Api.make(
                COORDINATOR,
                path + "/sightings",
                "{\"caseId\":\"%s\",\"knownBy\":\"guessed\",\"alive\":\"yes\"}".formatted(ids.get(2)));
        Json shown = Api.get(OFFICER, path);
        assertThat(shown.getMap("afterRelease"))
                .containsEntry("animals", 4)
                .containsEntry("seenAlive", 1)
                .containsEntry("foundDead", 1)
                .containsEntry("cameInAgain", 0)
                .containsEntry("nothingKnown", 2)
                .containsEntry("unidentifiedAlive", 1)
                .containsEntry("unidentifiedDead", 0)
                .containsEntry("guessed", 1);
        assertThat(shown.getString("afterRelease.saidPlainly"))
                .isEqualTo("Of 4 let go here, 1 were seen alive since and 1 were found dead. Nobody has told of 2:"
                        + " who is not seen is not known to be dead, nor to be alive.");

        Api.change(
                        COORDINATOR,
                        path,
                        "/sightings/" + dead.getString("id") + "/withdrawal",
                        "{\"reason\":\"it was another one\"}")
                .statusCode(200)
                .body("afterRelease.foundDead", equalTo(0))
                .body("afterRelease.nothingKnown", equalTo(3));
        Api.change(COORDINATOR, path, "/sightings/" + dead.getString("id") + "/withdrawal", "{\"reason\":\"x\"}")
                .statusCode(409);
        Json all = Api.get(OFFICER, path + "/sightings");
        assertThat(all.getList("id")).hasSize(5);
        assertThat(all.getList("findAll { it.withdrawnAt != null }.withdrawnBecause"))
                .containsExactly("it was another one");
        // What was not let go after all is none of the release's animals
        Api.change(COORDINATOR, path, "/animals/" + ids.get(0) + "/withdrawal", "{\"reason\":\"not let go\"}")
                .statusCode(200)
                .body("afterRelease.animals", equalTo(3))
                .body("afterRelease.seenAlive", equalTo(0));
    }

    @Test
    void whoComesInAgainIsTheSameAnimal() {
        Json first = turtles.newCase();
        String id = first.getString("id");
        Json other = turtles.newCase();
        String path = "/api/releases/" + release(List.of(id), LET_GO).getString("id");
        String incident = World.call(ReleaseWorld.TURTLE, 150.0415, "").getString("incidentId");
        String again = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animalId":"%s","foundAt":"2023-01-10T02:00:00Z","holder":{"memberId":"%s"}}
                        """.formatted(
                                incident, first.getString("animal.id"), turtles.world.rescuer))
                .getString("id");
        String sighting = "{\"caseId\":%s,\"at\":\"2023-01-10T02:00:00Z\",\"knownBy\":\"photographOrNaturalMarks\","
                + "\"alive\":\"yes\",\"newCaseId\":\"%s\"}";
        String known = "\"" + id + "\"";
        for (String wrong : List.of(id, other.getString("id"))) {
            Api.post(CARER, path + "/sightings", sighting.formatted(known, wrong))
                    .statusCode(400)
                    .body("errors[0].field", equalTo("newCaseId"));
        }
        Api.post(CARER, path + "/sightings", sighting.formatted("null", again))
                .statusCode(400)
                .body("errors[0].field", equalTo("caseId"));
        Json made = Api.make(CARER, path + "/sightings", sighting.formatted(known, again));
        assertThat(made.getString("newCaseId")).isEqualTo(again);
        assertThat(Api.get(CARER, path).getInt("afterRelease.cameInAgain")).isEqualTo(1);
    }

    @Test
    void whatIsWrongWithASightingIsNamed() throws SQLException {
        String id = turtles.newCase().getString("id");
        String path = "/api/releases/" + release(List.of(id), LET_GO).getString("id") + "/sightings";
        for (List<String> wrong : List.of(
                List.of("at", "\"at\":\"2022-01-31T02:00:00Z\""),
                List.of("at", "\"at\":\"2090-01-31T02:00:00Z\""),
                List.of("caseId", "\"caseId\":\"" + turtles.newCase().getString("id") + "\""),
                List.of("coordinateUncertaintyInMeters", "\"decimalLatitude\":-30.5,\"decimalLongitude\":150"),
                List.of("decimalLatitude", "\"decimalLatitude\":-91"),
                List.of("incidentId", "\"alive\":\"yes\",\"incidentId\":\"" + UUID.randomUUID() + "\""))) {
            Api.post(COORDINATOR, path, "{\"knownBy\":\"tracked\",%s}".formatted(wrong.get(1)))
                    .statusCode(400)
                    .body("errors[0].field", equalTo(wrong.get(0)));
        }
        Api.post(
                        COORDINATOR,
                        path,
                        "{\"knownBy\":\"tracked\",\"alive\":\"no\",\"incidentId\":\"%s\"}".formatted(UUID.randomUUID()))
                .statusCode(404);
        Api.post(COORDINATOR, path, "{\"alive\":\"yes\"}").statusCode(400).body("errors[0].field", equalTo("knownBy"));
        for (String role : List.of(RESCUER, DISPATCHER, OFFICER, ROADS_AUTHORITY, ADMIN)) {
            Api.post(role, path, "{\"knownBy\":\"tracked\"}").statusCode(403);
        }

        String sighting = Api.make(COORDINATOR, path, "{\"caseId\":\"%s\",\"knownBy\":\"tracked\"}".formatted(id))
                .getString("id");
        String another = turtles.newCase().getString("id");
        refused(sighting, "happened_at = released_at - interval '1 second'", "a_sighting_comes_after_the_release");
        refused(sighting, "new_case_id = '" + another + "'", "who_comes_in_again_is_the_same_animal");
        refused(sighting, "new_case_id = case_id", "who_comes_in_again_has_another_case");
        refused(sighting, "decimal_latitude = 3", "a_sighting_has_its_whole_place_or_none");
        refused(sighting, "animal_id = null", "a_sighting_names_case_and_animal_or_neither");
        refused(sighting, "withdrawn_at = now()", "withdrawing_a_sighting_has_time_and_reason");
        refused(sighting, "case_id = '" + another + "'", "case_id of a row of release_sightings is never changed");
    }

    private void refused(String sighting, String setting, String because) throws SQLException {
        try (Connection connection = database.getConnection();
                var change = connection.createStatement()) {
            assertThatThrownBy(() -> change.executeUpdate(
                            "update release_sightings set " + setting + " where id = '" + sighting + "'"))
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining(because);
        }
    }
}
