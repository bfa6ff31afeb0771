package org.culvert.care.clutch;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;

import org.culvert.support.Api;
import org.culvert.support.World;

/** Mothers and clutches for tests, all invented. */
final class ClutchWorld {
    static final String LONG_NECKED = "Chelodina longicollis";
    static final String PIG_NOSED = "Carettochelys insculpta";
    static final String SNAPPING = "Chelydra serpentina";

    final World world = World.shared();

    ClutchWorld() {
        Api.post(ADMIN, "/api/taxa", """
                        [{"scientificName":"%s","vernacularName":"pig-nosed turtle","taxonRank":"species","taxonGroup":"turtles"},
                         {"scientificName":"%s","vernacularName":"snapping turtle","taxonRank":"species","taxonGroup":"turtles"}]
                        """.formatted(PIG_NOSED, SNAPPING)).statusCode(200);
    }

    /** A struck female, found on 20 November 2025, with the clinic. */
    String mother(String scientificName) {
        String incident = World.call(scientificName, 150.03, "").getString("incidentId");
        String mother = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","foundAt":"2025-11-20T08:00:00Z","animal":{"scientificName":"%s","sex":"female"},
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, scientificName, world.rescuer))
                .getString("id");
        Api.post(
                        COORDINATOR,
                        "/api/cases/" + mother + "/whereabouts",
                        "{\"organisationId\":\"%s\",\"at\":\"2025-11-20T10:00:00Z\"}".formatted(world.clinic))
                .statusCode(200);
        return mother;
    }

    String film(String mother, int eggs, String confidence, String at) {
        return Api.make(CLINIC, "/api/visits", """
                        {"caseId":"%s","clinicId":"%s","arrivedAt":"%s","gravid":"yes",
                         "readings":[{"what":"eggs","counted":%d,"reader":"Dr Vet","confidence":"%s","at":"%s"}]}
                        """.formatted(mother, world.clinic, at, eggs, confidence, at))
                .getString("id");
    }

    /** Set at an instant; answers the path. */
    String clutch(String mother, int set, String how, String at) {
        return "/api/clutches/"
                + Api.make(COORDINATOR, "/api/clutches", """
                        {"motherCaseId":"%s","holder":{"memberId":"%s"},
                         "eggs":{"recovered":%d,"setToIncubate":%d,"broken":0,"discarded":0,"how":"%s","at":"%s"}}
                        """.formatted(
                                        mother, world.incubatorKeeper, set, set, how, at))
                        .getString("id");
    }
}
