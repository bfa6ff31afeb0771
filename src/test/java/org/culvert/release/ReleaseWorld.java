package org.culvert.release;

import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.hotspot.HostileEvidence;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.World;

/** Turtles of a kind of their own, under a law of their own each: they go back where they were found. */
public final class ReleaseWorld {
    public static final String TURTLE = "Elseya dentata";
    public static final double LATITUDE = -30.5;
    public static final double LONGITUDE = 150.0412345;

    /** ISO 3166 leaves XA to XZ to users. */
    private static int laws;

    public final World world = World.shared();
    public final String jurisdiction = "XR-" + ++laws;

    public ReleaseWorld() {
        Api.post(COORDINATOR, "/api/taxon-groups", """
                        [{"key":"snapping-turtles","name":"snapping turtles","pouch":false,"clutches":true,"introduced":false}]
                        """).statusCode(200);
        Api.post(COORDINATOR, "/api/taxa", """
                        [{"scientificName":"%s","vernacularName":"northern snapping turtle","taxonRank":"species",
                          "taxonGroup":"snapping-turtles"}]
                        """.formatted(TURTLE)).statusCode(200);
        Api.make(COORDINATOR, "/api/release-rules", """
                        {"jurisdiction":"%s","kind":"code","scientificName":"%s","test":"foundPlaceFirst",
                         "unknownOrigin":"notReleasable","words":"back where it was found","source":"made for a test",
                         "readOn":"2020-01-01","reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                        """.formatted(jurisdiction, TURTLE));
    }

    /** A turtle struck on the road, held by the rescuer and for a day at the clinic. */
    public Json newCase() {
        String incident = Api.make(DISPATCHER, "/api/calls", """
                        {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                         "animals":[{"scientificName":"%s","individualCount":1,"vitality":"alive"}],
                         "place":{"decimalDegrees":{"latitude":"%.7f","longitude":"%.7f"}}}
                        """.formatted(TURTLE, LATITUDE, LONGITUDE))
                .getString("incidentId");
        Json made = Api.make(RESCUER, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"%s","sex":"female"},"foundAt":"2021-11-20T09:30:00Z",
                 "holder":{"memberId":"%s"}}
                """.formatted(incident, TURTLE, world.rescuer));
        Api.post(
                        RESCUER,
                        "/api/cases/" + made.getString("id") + "/whereabouts",
                        "{\"organisationId\":\"%s\"}".formatted(world.clinic))
                .statusCode(200);
        return made;
    }

    /** A site known to 20 m that is fit for one group. */
    public static void site(String name, String jurisdiction, double latitude, double longitude, String group) {
        Api.make(
                COORDINATOR,
                "/api/release-sites",
                HostileEvidence.json(Map.of(
                        "name", name,
                        "jurisdiction", jurisdiction,
                        "decimalLatitude", latitude,
                        "decimalLongitude", longitude,
                        "coordinateUncertaintyInMeters", 20,
                        "habitat", name,
                        "taxonGroups", List.of(group))));
    }

    /** An assessment at the place where it was found, of an animal that a vet has signed. */
    public String assess(String caseId) {
        World.signFit(caseId, Clocks.now().toString());
        return Api.make(CARER, "/api/assessments", """
                        {"caseId":"%s","position":{"jurisdiction":"%s","decimalLatitude":%s,"decimalLongitude":%s,
                         "coordinateUncertaintyInMeters":10}}
                        """.formatted(caseId, jurisdiction, LATITUDE, LONGITUDE))
                .getString("id");
    }

    /** A release of some cases, each assessed now. */
    public String release(List<String> cases, String more) {
        List<String> assessments = new ArrayList<>();
        cases.forEach(id -> assessments.add(assess(id)));
        return "{\"caseIds\":[\"%s\"],\"assessmentIds\":[\"%s\"],\"approvedBy\":\"Dr Vet\"%s}"
                .formatted(String.join("\",\"", cases), String.join("\",\"", assessments), more);
    }
}
