package org.culvert.hotspot;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.Uni;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.UUID;

/** Tells how far a run has come as it goes, and ends when the run does. */
@ApplicationScoped
class RunEvents {
    private static final Duration BETWEEN = Duration.ofMillis(500);

    private final HotspotRunService runs;
    private final ObjectMapper mapper;

    RunEvents(HotspotRunService runs, ObjectMapper mapper) {
        this.runs = runs;
        this.mapper = mapper;
    }

    /** Where the run stands, as JSON, now and then; the last says how it ended. */
    Multi<String> follow(UUID id) {
        return Multi.createBy()
                .repeating()
                .uni(() -> Uni.createFrom()
                        .item(() -> runs.getStanding(id))
                        .runSubscriptionOn(Infrastructure.getDefaultWorkerPool()))
                .withDelay(BETWEEN)
                .whilst(standing -> standing.state().isUnderWay())
                .map(this::json);
    }

    private String json(HotspotRunService.Standing standing) {
        try {
            return mapper.writeValueAsString(mapper.createObjectNode()
                    .put("state", standing.state().word())
                    .put("simulationsDone", standing.simulationsDone())
                    .put("simulationsTotal", standing.simulationsTotal()));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an event cannot be written", e);
        }
    }
}
