package org.culvert.taxon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Other names of taxa. All names are invented. */
@QuarkusTest
class SynonymResourceTest {
    private static final String SYNONYMS = "/api/taxon-synonyms";

    private String taxon;

    @BeforeEach
    void world() {
        World.shared();
        Api.post(COORDINATOR, "/api/taxon-groups", """
                [{"key":"renamed","name":"renamed animals","pouch":false,"clutches":false,"introduced":false}]
                """).statusCode(200);
        taxon = Api.post(COORDINATOR, "/api/taxa", """
                        [{"scientificName":"Renamia nova","vernacularName":"renamed one","taxonRank":"species",
                          "taxonGroup":"renamed"}]
                        """)
                .statusCode(200)
                .extract()
                .path("[0].id");
    }

    private String entry(String kind, String name, String more) {
        return "{\"taxonId\":\"%s\",\"kind\":\"%s\",\"name\":\"%s\",\"source\":\"made for a test\"%s}"
                .formatted(taxon, kind, name, more);
    }

    @Test
    void anotherNameIsKeptAndEnded() {
        String id = Api.post(COORDINATOR, SYNONYMS, entry("vernacularName", " Umbenannte ", ",\"language\":\"de\""))
                .statusCode(201)
                .body("name", equalTo("Umbenannte"))
                .body("language", equalTo("de"))
                .body("endedAt", nullValue())
                .body("record.recordedAt", notNullValue())
                .extract()
                .path("id");
        Api.post(COORDINATOR, SYNONYMS, entry("vernacularName", "UMBENANNTE", ",\"language\":\"de\""))
                .statusCode(409);
        assertThat(Api.get(DISPATCHER, SYNONYMS).getList("id")).contains(id);
        Api.change(COORDINATOR, SYNONYMS + "/" + id, "/ending", "{\"reason\":\"nobody calls it so\"}")
                .statusCode(200)
                .body("endedBecause", equalTo("nobody calls it so"));
        Api.change(COORDINATOR, SYNONYMS + "/" + id, "/ending", "{\"reason\":\"again\"}")
                .statusCode(409);
        assertThat(Api.get(DISPATCHER, SYNONYMS).getList("id"))
                .as("nothing is deleted")
                .contains(id);
        Api.post(COORDINATOR, SYNONYMS, entry("vernacularName", "Umbenannte", ",\"language\":\"de\""))
                .statusCode(201);
    }

    @Test
    void whatIsWrongIsNamed() {
        Api.post(COORDINATOR, SYNONYMS, entry("vernacularName", "x", ""))
                .statusCode(400)
                .body("errors[0].field", equalTo("language"));
        Api.post(COORDINATOR, SYNONYMS, entry("scientificName", "Renamia vetus", ",\"language\":\"la\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("language"));
        Api.post(COORDINATOR, SYNONYMS, entry("scientificName", "renamia nova", ""))
                .statusCode(400)
                .body("errors[0].field", equalTo("name"));
        Api.post(
                        COORDINATOR,
                        SYNONYMS,
                        entry("scientificName", "Renamia vetus", "").replace(taxon, SOME_ID))
                .statusCode(400)
                .body("errors[0].field", equalTo("taxonId"));
        Api.post(DISPATCHER, SYNONYMS, entry("scientificName", "Renamia vetus", ""))
                .statusCode(403);
    }

    private static final String SOME_ID = "01920000-0000-7000-8000-00000000dead";
}
