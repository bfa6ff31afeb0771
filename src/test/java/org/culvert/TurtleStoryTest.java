package org.culvert;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

/**
 * A struck gravid turtle from the call to the day her hatchlings go back, and her collision in the report.
 *
 * <p>The way of it is common practice, no source: a struck adult turtle in the nesting season is assumed to carry eggs and is
 * brought in; eggs on a film are a reading that is compared with what was recovered; stitches come out at about six weeks;
 * eggs hatch after about 65 to 70 days near 30 degrees.
 */
@QuarkusTest
class TurtleStoryTest {
    private static final String SPECIES = "Chelodina longicollis";

    @Test
    void aGravidTurtleFromTheCallToHerHatchlingsAndTheReport() {
        World world = World.shared();

        // The call: people first, then the place, however it is said.
        Json call = Api.make(DISPATCHER, "/api/calls", """
                {"receivedAt":"2021-11-20T08:40:00Z","happenedAt":"2021-11-20T08:30:00Z",
                 "people":{"anyoneHurt":"no","offTheRoad":"yes"},
                 "caller":{"name":"A Driver","phone":"555 0101"},
                 "words":"I have a turtle in a box, she is bleeding","cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"%s","vitality":"alive","lifeStage":"adult","sex":"female"}],
                 "place":{"roadAndChainage":{"road":"Mill Road","chainageKilometres":"5.1"}}}
                """.formatted(SPECIES));
        String incident = call.getString("incidentId");

        // The gate, then an attendance.
        String out = "{\"leadMemberId\":\"%s\",\"helperMemberIds\":[\"%s\"],\"at\":\"2021-11-20T08:50:00Z\"%s}";
        Api.post(
                        DISPATCHER,
                        "/api/incidents/" + incident + "/attendances",
                        out.formatted(world.rescuer, world.helper, ""))
                .statusCode(422);
        String attendance = Api.make(
                        DISPATCHER,
                        "/api/incidents/" + incident + "/attendances",
                        out.formatted(world.rescuer, world.helper, ",\"policeReference\":\"E-1411\""))
                .getString("id");
        Api.post(RESCUER, "/api/attendances/" + attendance + "/acceptance", "{\"at\":\"2021-11-20T08:52:00Z\"}")
                .statusCode(200);
        Api.post(
                        RESCUER,
                        "/api/attendances/" + attendance + "/outcome",
                        "{\"outcome\":\"collected\",\"at\":\"2021-11-20T09:30:00Z\"}")
                .statusCode(200);

        // Her case; the clinic takes her over; the visit, the film, the surgery.
        String mother = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","attendanceId":"%s","foundAt":"2021-11-20T09:30:00Z",
                         "animal":{"scientificName":"%s","sex":"female","lifeStage":"adult"},
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, attendance, SPECIES, world.rescuer))
                .getString("id");
        String toClinic = Api.make(
                        RESCUER,
                        "/api/cases/" + mother + "/hand-overs",
                        "{\"taker\":{\"organisationId\":\"%s\"},\"at\":\"2021-11-20T10:00:00Z\"}"
                                .formatted(world.clinic))
                .getString("id");
        Api.post(CLINIC, "/api/hand-overs/" + toClinic + "/acceptance", "{\"at\":\"2021-11-20T10:05:00Z\"}")
                .statusCode(200);
        String visit = Api.make(CLINIC, "/api/visits", """
                        {"caseId":"%s","clinicId":"%s","arrivedAt":"2021-11-20T10:05:00Z","weightGrams":820,
                         "gravid":"yes",
                         "findings":[{"bodyPart":"carapace, rear marginal scutes","side":"left","finding":"fracture"}],
                         "readings":[{"what":"eggs","counted":9,"reader":"Dr Vet","confidence":"medium"}],
                         "procedures":[{"procedure":"eggs recovered through soft tissue","vetName":"Dr Vet",
                                        "vetRegistration":"V-1"}]}
                        """.formatted(mother, world.clinic))
                .getString("id");

        // Eggs: every one accounted for; the clutch goes to somebody else, who needs papers of their own.
        String eggs = "{\"motherCaseId\":\"%s\",\"visitId\":\"%s\",\"holder\":{\"memberId\":\"%s\"},"
                + "\"eggs\":{\"recovered\":9,\"setToIncubate\":%d,\"broken\":1,\"discarded\":0,"
                + "\"at\":\"2021-11-21T02:00:00Z\"}}";
        Api.post(CLINIC, "/api/clutches", eggs.formatted(mother, visit, world.incubatorKeeper, 7))
                .statusCode(400)
                .body("errors[0].wanted", equalTo("recovered = setToIncubate + broken + discarded"));
        Api.post(CLINIC, "/api/clutches", eggs.formatted(mother, visit, world.unlicensedCarer, 8))
                .statusCode(422)
                .body("detail", containsString("No authorisation"));
        Json clutch = Api.make(CLINIC, "/api/clutches", eggs.formatted(mother, visit, world.incubatorKeeper, 8));
        assertThat(clutch.getInt("readOnFilm")).isEqualTo(9);
        assertThat(clutch.getBoolean("filmDiffers")).isFalse();
        // One more laid in the tub days later: the count on the film is compared, never enforced.
        Json more = Api.make(
                CARER,
                "/api/clutches/" + clutch.getString("id") + "/eggs",
                "{\"recovered\":1,\"setToIncubate\":1,\"broken\":0,\"discarded\":0,\"at\":\"2021-11-24T02:00:00Z\"}");
        assertThat(more.getInt("setToIncubate")).isEqualTo(9);
        assertThat(more.getBoolean("filmDiffers")).isTrue();

        // Discharge with the vet's own words, and a placement with a carer who may.
        Api.make(CLINIC, "/api/visits/" + visit + "/discharge", """
                {"vetName":"Dr Vet","vetRegistration":"V-1","at":"2021-11-23T02:00:00Z","reviewOn":"2022-01-04",
                 "plan":"Dry two days, then short swims daily; stitches out at about six weeks.","limits":"no water until the 25th"}
                """);
        Api.post(
                        CLINIC,
                        "/api/cases/" + mother + "/placements",
                        "{\"carerMemberId\":\"%s\"}".formatted(world.unlicensedCarer))
                .statusCode(422);
        String placement = Api.make(
                        CLINIC,
                        "/api/cases/" + mother + "/placements",
                        "{\"carerMemberId\":\"%s\",\"visitId\":\"%s\",\"at\":\"2021-11-23T02:30:00Z\"}"
                                .formatted(world.carer, visit))
                .getString("handOverId");
        assertThat(Api.get(CLINIC, "/api/cases/" + mother).getString("custody[-1].holder.organisationId"))
                .isEqualTo(world.clinic);
        Api.post(CARER, "/api/hand-overs/" + placement + "/acceptance", "{\"at\":\"2021-11-23T05:00:00Z\"}")
                .statusCode(200);

        // Months later the hatchlings: animals with their mother's found place, held by the keeper of the incubator.
        Json hatched = Api.make(
                CARER,
                "/api/clutches/" + clutch.getString("id") + "/hatchings",
                "{\"hatched\":2,\"at\":\"2022-01-28T02:00:00Z\"}");
        List<String> hatchlings = hatched.getList("hatchlings.id", String.class);
        assertThat(hatched.getList("hatchlings.origin", String.class)).containsOnly("ofMother");
        assertThat(hatched.getString("hatchlings[0].foundPlace.id"))
                .isEqualTo(Api.get(CARER, "/api/cases/" + mother).getString("foundPlace.id"));
        assertThat(hatched.getString("hatchlings[0].custody[0].holder.memberId"))
                .isEqualTo(world.incubatorKeeper);
        Api.post(CARER, "/api/clutches/" + clutch.getString("id") + "/hatchings", "{\"hatched\":8}")
                .statusCode(409)
                .body("detail", containsString("More hatchlings than eggs"));

        // Where she may go back: not into another water before her own place was recorded unsuitable.
        String site = Api.make(COORDINATOR, "/api/release-sites", """
                        {"name":"Lagoon","jurisdiction":"AU-QLD","decimalLatitude":-30.503,"decimalLongitude":150.0325,
                         "coordinateUncertaintyInMeters":20,"habitat":"wetland","taxonGroups":["turtles"]}
                        """).getString("id");
        Json unsigned = assess(mother, site);
        assertThat(unsigned.getString("tests.find { it.test == 'fitness' }.verdict"))
                .isEqualTo("cantTell");
        World.signFit(mother, "2022-01-31T02:00:00Z");
        Json early = assess(mother, site);
        assertThat(early.getString("overall")).isNotEqualTo("pass");
        Api.make(
                CARER,
                "/api/cases/" + mother + "/found-place-unsuitable",
                "{\"ground\":\"hazard\",\"words\":\"the verge of a fast road\",\"seenAt\":\"2022-01-20T02:00:00Z\"}");
        Api.make(COORDINATOR, "/api/release-rules", """
                {"jurisdiction":"network","kind":"policy","taxonGroup":"turtles","appliesTo":"any","test":"greatestDistance",
                 "greatestDistanceMetres":5000,"words":"Our own turtles go back within five kilometres.","source":"test",
                 "readOn":"2026-11-01","reviewBy":"2090-01-01","validFrom":"2010-01-01"}
                """);
        Json assessed = assess(mother, site);
        List<String> needPermits =
                assessed.<Map<String, String>>getList("tests.findAll { it.verdict != 'pass' }").stream()
                        .filter(test -> "statute".equals(test.get("kind")) || "code".equals(test.get("kind")))
                        .map(test -> test.get("key"))
                        .toList();
        // Queensland's code was read in an edition past its review: it asks before it passes, and a permit lifts it.
        assertThat(needPermits).isNotEmpty();
        String permits = needPermits.stream()
                .map(key -> """
                        {"key":"%s","number":"P-1","issuedBy":"the authority","documentName":"permit.pdf",
                         "documentMediaType":"application/pdf","document":"JVBERi0xLjQK"}
                        """.formatted(key))
                .reduce((a, b) -> a + "," + b)
                .orElseThrow();
        String release =
                "{\"caseIds\":[\"%s\"],\"assessmentIds\":[\"%s\"],\"at\":\"2022-02-01T02:00:00Z\",\"approvedBy\":\"Dr Vet\"%s}";
        Api.post(COORDINATOR, "/api/releases", release.formatted(mother, assessed.getString("id"), ""))
                .statusCode(422);
        Api.make(
                COORDINATOR,
                "/api/releases",
                release.formatted(mother, assessed.getString("id"), ",\"permits\":[" + permits + "]"));
        Json ended = Api.get(COORDINATOR, "/api/cases/" + mother);
        assertThat(ended.getString("state")).isEqualTo("ended");
        assertThat(ended.getString("fate.fate")).isEqualTo("released");
        assertThat(ended.getList("custody")).hasSize(3);
        assertThat(ended.getString("custody[2].to")).isEqualTo("2022-02-01T02:00:00Z");
        assertThat(Api.get(COORDINATOR, "/api/cases/" + hatchlings.get(0)).getString("state"))
                .isEqualTo("inCare");

        // Road evidence counts one incident of hers; with eight more at the same bend it is a hotspot.
        for (int i = 0; i < 8; i++) {
            collision(SPECIES, "2021-11-%02dT09:00:00Z".formatted(10 + i), "5.1");
        }
        for (int i = 0; i < 30; i++) {
            collision(
                    "Wallabia bicolor",
                    "2021-11-%02dT09:00:00Z".formatted(1 + i % 28),
                    "%.1f".formatted(2.1 + i * 0.3));
        }
        Json report = report();
        assertThat(report.getInt("inputs.collisionsCounted")).isEqualTo(9);
        assertThat(report.getInt("inputs.collisionsOfAllAnimals")).isEqualTo(39);
        assertThat(report.getList("hotspots")).hasSize(1);
        assertThat(report.getString("hotspots[0].road")).contains("Mill Road");
        assertThat(report.getInt("hotspots[0].incidents")).isEqualTo(9);
        assertThat(report.getDouble("hotspots[0].fromChainageMetres")).isLessThanOrEqualTo(5100);
        assertThat(report.getDouble("hotspots[0].toChainageMetres")).isGreaterThanOrEqualTo(5100);
        assertThat(report.getString("errorRate.sentence")).contains("all animals in the same period and season");

        // One of her young would go back beside it: whoever lets it go has read that first.
        String young = hatchlings.get(0);
        World.signFit(young, org.culvert.support.Clocks.now().toString());
        Json beside = assess(young, site);
        assertThat(beside.getString("tests.find { it.test == 'hotspotsNear' }.verdict"))
                .isEqualTo("fail");
        assertThat(beside.getString("tests.find { it.test == 'hotspotsNear' }.words"))
                .contains("Mill Road", "all animals in the same period and season", "no reason by itself");
        String permitsOfYoung = beside
                .getList("tests.findAll { it.verdict != 'pass' && it.lifting == 'byPermit' }.key", String.class)
                .stream()
                .map(key -> """
                        {"key":"%s","number":"P-1","issuedBy":"the authority","documentName":"permit.pdf",
                         "documentMediaType":"application/pdf","document":"JVBERi0xLjQK"}
                        """.formatted(key))
                .collect(java.util.stream.Collectors.joining(",", ",\"permits\":[", "]"));
        String letGo = "{\"caseIds\":[\"%s\"],\"assessmentIds\":[\"%s\"],\"approvedBy\":\"Dr Vet\"%s%s}";
        Api.post(COORDINATOR, "/api/releases", letGo.formatted(young, beside.getString("id"), permitsOfYoung, ""))
                .statusCode(422)
                .body("reasons[0]", containsString("warningsRead"));
        Json gone = Api.make(
                COORDINATOR,
                "/api/releases",
                letGo.formatted(young, beside.getString("id"), permitsOfYoung, ",\"warningsRead\":[\"hotspotsNear\"]"));
        assertThat(gone.getList("warningsRead")).containsExactly("hotspotsNear");
    }

    private static Json assess(String caseId, String siteId) {
        return Api.make(CARER, "/api/assessments", "{\"caseId\":\"%s\",\"siteId\":\"%s\"}".formatted(caseId, siteId));
    }

    private static void collision(String species, String at, String chainageKilometres) {
        Api.make(DISPATCHER, "/api/calls", """
                {"receivedAt":"%s","happenedAt":"%s","cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"%s","vitality":"dead","pouchChecked":"yes","carcassSigned":true}],
                 "place":{"roadAndChainage":{"road":"Mill Road","chainageKilometres":"%s"}}}
                """.formatted(at, at, species, chainageKilometres));
    }

    private static Json report() {
        String run = Api.post(ROADS_AUTHORITY, "/api/hotspot-runs", """
                        {"periodFrom":"2021-10-01","periodTo":"2021-12-31","taxonGroup":"turtles","simulations":199,
                         "reachMetres":300,"seed":7}
                        """)
                .statusCode(202)
                .extract()
                .jsonPath()
                .getString("id");
        Instant deadline = Instant.now().plus(Duration.ofMinutes(2));
        while (Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + run).get("result") == null) {
            assertThat(Instant.now()).as("the run ends in time").isBefore(deadline);
            LockSupport.parkNanos(200_000_000L);
        }
        return Api.as(ROADS_AUTHORITY)
                .get("/api/hotspot-runs/" + run + "/result")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }
}
