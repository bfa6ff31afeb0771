package org.culvert.animal.referral;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.support.Api;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class ReferralResourceTest {
    /** Wildlife Rehabilitator Authorisation Guide of Victoria, 30 June 2023; the genera are from memory, and say so. */
    @Test
    void whatTheVictorianGuideExcludesIsShipped() {
        List<Map<String, Object>> shipped = Api.get(OFFICER, "/api/referrals")
                .<Map<String, Object>>getList("findAll { it.jurisdiction == 'AU-VIC' }");
        assertThat(shipped)
                .extracting(row -> row.get("words"))
                .extracting(Object::toString)
                .containsAll(List.of(
                                "platypus",
                                "seals",
                                "dolphins",
                                "whales",
                                "marine turtles",
                                "deer",
                                "introduced game birds")
                        .stream()
                        .map(kind -> "A wildlife rehabilitator's authorisation excludes " + kind + ".")
                        .toList());
        assertThat(shipped)
                .allSatisfy(row -> assertThat((String) row.get("source"))
                        .contains("from memory")
                        .contains("Check your local code and your licensed vet."));
    }

    @Test
    void custodyIsRecordedAndWhereItGoesIsSaid() {
        World world = World.shared();
        String taxon = "Vetita " + UUID.randomUUID().toString().replaceAll("[^a-f]", "x");
        Api.post(ADMIN, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"excluded one","taxonRank":"species","taxonGroup":"turtles"}]
                """.formatted(taxon)).statusCode(200);
        String entry = """
                {"jurisdiction":"%s","kind":"%s","scientificName":"%s","referTo":"the zoo's hospital","words":"not ours",
                 "source":"made for a test","readOn":"2026-01-05","reviewBy":"2026-02-01","validFrom":"2020-01-01"}
                """;
        Api.post(COORDINATOR, "/api/referrals", entry.formatted("network", "statute", taxon))
                .statusCode(400)
                .body("errors[0].field", equalTo("jurisdiction"));
        Api.make(COORDINATOR, "/api/referrals", entry.formatted("NZ", "statute", taxon));
        String incident = World.call(taxon, 150.04, "").getString("incidentId");
        String opening = """
                {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z","holder":{"memberId":"%s"}}
                """.formatted(incident, taxon, world.rescuer);
        Api.post(RESCUER, "/api/cases", opening).statusCode(201).body("referOut", empty());
        String referral = Api.make(COORDINATOR, "/api/referrals", entry.formatted("network", "policy", taxon))
                .getString("id");
        String id = Api.post(RESCUER, "/api/cases", opening)
                .statusCode(201)
                .body("referOut", hasSize(1))
                .body("referOut[0].referralId", equalTo(referral))
                .body("referOut[0].referTo", equalTo("the zoo's hospital"))
                .body("referOut[0].reviewDue", equalTo(true))
                .extract()
                .path("id");
        String handOver = Api.post(
                        RESCUER,
                        "/api/cases/" + id + "/hand-overs",
                        "{\"taker\":{\"organisationId\":\"%s\"}}".formatted(world.clinic))
                .statusCode(201)
                .body("referOut[0].words", equalTo("not ours"))
                .extract()
                .path("id");
        Api.change(COORDINATOR, "/api/hand-overs/" + handOver, "/refusal", "{\"reason\":\"not ours\"}")
                .statusCode(200);
        String authority = Api.make(ADMIN, "/api/organisations", """
                        {"kind":"wildlifeAuthority","name":"%s","xRay":false,"surgery":false}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        Api.post(
                        RESCUER,
                        "/api/cases/" + id + "/hand-overs",
                        "{\"taker\":{\"organisationId\":\"%s\"}}".formatted(authority))
                .statusCode(201)
                .body("referOut", empty());
    }
}
