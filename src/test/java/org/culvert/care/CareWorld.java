package org.culvert.care;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.World;

/** Turtles of a kind of their own, in the care of the test's carer since some days. */
public final class CareWorld {
    public static final String GROUP = "short-necked-turtles";
    public static final ZoneId ZONE = ZoneId.of("Australia/Sydney");
    private static final String TURTLE = "Emydura macquarii";

    public final World world = World.shared();
    public final Instant now = Clocks.now();
    public final LocalDate today = now.atZone(ZONE).toLocalDate();

    public CareWorld() {
        Api.post(ADMIN, "/api/taxon-groups", """
                [{"key":"%s","name":"short-necked turtles","pouch":false,"clutches":true,"introduced":false}]
                """.formatted(GROUP)).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"Macquarie turtle","taxonRank":"species","taxonGroup":"%s"}]
                """.formatted(TURTLE, GROUP)).statusCode(200);
        world.authorise(world.carer, GROUP);
    }

    /** Noon of a day that lies some days back. */
    public Instant noon(int daysBack) {
        return today.minusDays(daysBack).atTime(12, 0).atZone(ZONE).toInstant();
    }

    /** A turtle that came to the clinic some days back, and three hours later to the carer; its case and its visit. */
    public Patient patient(int daysBack) {
        Instant found = noon(daysBack).minus(Duration.ofHours(4));
        String incident =
                Api.make(DISPATCHER, "/api/calls", """
                        {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                         "animals":[{"scientificName":"%s","individualCount":1,"vitality":"alive"}],
                         "place":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.0423"}}}
                        """.formatted(TURTLE)).getString("incidentId");
        String caseId = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"%s","holder":{"memberId":"%s"}}
                        """.formatted(incident, TURTLE, found, world.rescuer))
                .getString("id");
        Api.post(
                        RESCUER,
                        "/api/cases/" + caseId + "/whereabouts",
                        "{\"organisationId\":\"%s\",\"at\":\"%s\"}".formatted(world.clinic, found.plusSeconds(600)))
                .statusCode(200);
        String visit = Api.make(
                        CLINIC,
                        "/api/visits",
                        "{\"caseId\":\"%s\",\"clinicId\":\"%s\",\"arrivedAt\":\"%s\"}"
                                .formatted(caseId, world.clinic, found.plusSeconds(1200)))
                .getString("id");
        Api.make(CLINIC, "/api/visits/" + visit + "/discharge", """
                {"vetName":"Dr Vet","vetRegistration":"V-1","at":"%s","reviewOn":"2089-01-04",
                 "plan":"Dry two days, then short swims.","limits":"No water until the third day."}
                """.formatted(found.plusSeconds(9000)));
        String handOver = Api.make(
                        COORDINATOR,
                        "/api/cases/" + caseId + "/placements",
                        "{\"carerMemberId\":\"%s\",\"visitId\":\"%s\",\"at\":\"%s\"}"
                                .formatted(world.carer, visit, found.plusSeconds(9600)))
                .getString("handOverId");
        Api.post(
                        CARER,
                        "/api/hand-overs/" + handOver + "/acceptance",
                        "{\"at\":\"%s\"}".formatted(found.plusSeconds(10800)))
                .statusCode(200);
        return new Patient(caseId, visit);
    }

    public record Patient(String caseId, String visitId) {
        public String path() {
            return "/api/cases/" + caseId;
        }

        /** Its plan of a vet's own steps, from some day on; the path of the plan. */
        public String plan(LocalDate dayZero, String steps) {
            return plan(dayZero, "Quiet.", steps);
        }

        public String plan(LocalDate dayZero, String words, String steps) {
            return "/api/aftercare-plans/"
                    + Api.make(CLINIC, path() + "/aftercare-plans", """
                                    {"steps":[%s],"visitId":"%s","vetName":"Dr Vet","vetRegistration":"V-1","dayZero":"%s",
                                     "words":"%s"}
                                    """.formatted(steps, visitId, dayZero, words))
                            .getString("id");
        }
    }

    /** The address of a new calendar of the test's carer; one that stood before is revoked. */
    public static String calendar(String role) {
        String path = "/api/members/" + World.shared().carer + "/calendars";
        String standing = Api.get(role, path).getString("find { it.revokedAt == null }?.id");
        if (standing != null) {
            Api.post(role, path + "/" + standing + "/revocation", "").statusCode(200);
        }
        return Api.make(role, path, "").getString("address");
    }

    /** A step as JSON. */
    public static String step(String key, int first, int last, String rhythm, String measure, String more) {
        return """
                {"key":"%s","words":"%s, as the vet says","firstDay":%d,"lastDay":%d,"rhythm":"%s","measure":"%s"%s}
                """.formatted(key, key, first, last, rhythm, measure, more);
    }
}
