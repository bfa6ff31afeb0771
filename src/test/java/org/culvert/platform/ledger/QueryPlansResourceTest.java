package org.culvert.platform.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import org.culvert.platform.Role;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.hibernate.SessionFactory;
import org.junit.jupiter.api.Test;

/**
 * A question that was asked before is planned already. Hibernate keeps plans by the words of a query and what is to come of it;
 * some ways of asking are new to it each time, so that they push all others out.
 */
@QuarkusTest
class QueryPlansResourceTest {
    private static final int ROUNDS = 3;

    @Inject
    SessionFactory sessions;

    @Test
    void nothingIsPlannedTwice() {
        World.shared();
        Json call = World.call("Chelodina longicollis", 150.0512, "");
        work(call, "once");
        var statistics = sessions.getStatistics();
        statistics.setStatisticsEnabled(true);
        try {
            statistics.clear();
            for (int round = 0; round < ROUNDS; round++) {
                work(call, "again " + round);
            }
            assertThat(statistics.getQueryPlanCacheHitCount()).isGreaterThan(ROUNDS);
            assertThat(statistics.getQueryPlanCacheMissCount()).isLessThan(ROUNDS);
        } finally {
            statistics.setStatisticsEnabled(false);
        }
    }

    private static void work(Json call, String words) {
        for (String path : List.of("/api/incidents/" + call.getString("incidentId"), "/api/region", "/api/cases")) {
            Api.get(Role.COORDINATOR, path);
        }
        Api.correct(
                        Role.DISPATCHER,
                        "/api/calls/" + call.getString("callId"),
                        "{\"words\":\"%s\",\"reason\":\"said so\"}".formatted(words))
                .statusCode(200);
    }
}
