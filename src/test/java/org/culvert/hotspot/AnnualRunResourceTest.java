package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.culvert.platform.Patience;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.Test;

/** That parts of alpha add up to alpha is Bonferroni's inequality. */
@QuarkusTest
class AnnualRunResourceTest {
    private static String entry(String cells) {
        return """
                {"periodFrom":"%d-01-01","periodTo":"%d-12-31","plan":"the meeting in autumn","reachMetres":300,
                 "cells":%s}
                """.formatted(EvidenceWorld.year(), EvidenceWorld.year(), cells);
    }

    @Test
    void theCellsOfAYearShareOneErrorRate() {
        EvidenceWorld.make();
        String id = Api.post(
                        COORDINATOR,
                        "/api/annual-runs",
                        entry("[{\"taxonGroup\":\"macropods\"},{\"taxonGroup\":\"macropods\",\"months\":[1,2,3]}]"))
                .statusCode(202)
                .body("cells", equalTo(2))
                .body("sentence", containsString("all 2 together would name any hotspot in at most 5 %"))
                .body("sentence", containsString("each is made at 2.5 %"))
                .extract()
                .path("id");
        Patience.until(
                "both are done",
                () -> Api.get(COORDINATOR, "/api/annual-runs/" + id).getInt("done") == 2);

        Json annual = Api.get(COORDINATOR, "/api/annual-runs/" + id);
        assertThat(annual.getList("runs.declared")).containsExactly(true, true);
        assertThat(annual.getList("runs.settings.declaration.cells")).containsExactly(2, 2);
        assertThat(annual.<List<Integer>>getList("runs.settings.season.months").stream()
                        .map(List::size))
                .containsExactly(12, 3);
        String run = annual.getString("runs[1].id");
        Json result = Api.get(COORDINATOR, "/api/hotspot-runs/" + run + "/result");
        assertThat(result.getDouble("errorRate.alpha")).isEqualTo(0.025);
        assertThat(result.getString("errorRate.sentence")).contains("one of 2 runs decided on together");
        assertThat(Api.get(COORDINATOR, "/api/annual-runs").getList("items.id")).contains(id);
    }

    @Test
    void whatIsWrongWithOneCellRefusesAll() {
        EvidenceWorld.make();
        int before = Api.get(COORDINATOR, "/api/annual-runs?limit=1000")
                .getList("items")
                .size();
        Api.post(
                        COORDINATOR,
                        "/api/annual-runs",
                        entry("[{\"taxonGroup\":\"macropods\"},{\"taxonGroup\":\"no such\"}]"))
                .statusCode(400)
                .body("errors.size()", equalTo(1))
                .body("errors[0].field", equalTo("cells.1.taxonGroup"));
        Api.post(
                        COORDINATOR,
                        "/api/annual-runs",
                        entry("[{\"taxonGroup\":\"macropods\"},{\"taxonGroup\":\"macropods\"}]"))
                .statusCode(400)
                .body("errors[0].field", equalTo("cells.1"))
                .body("errors[0].detail", containsString("declared twice"));
        assertThat(Api.get(COORDINATOR, "/api/annual-runs?limit=1000").getList("items"))
                .hasSize(before);
    }
}
