package org.culvert.hotspot;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.Uni;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
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

    /** Events named {@code progress}, the last of which says how the run ended. */
    Multi<OutboundSseEvent> follow(UUID id, Sse sse) {
        return Multi.createBy()
                .repeating()
                .uni(() -> Uni.createFrom()
                        .item(() -> runs.getStanding(id))
                        .runSubscriptionOn(Infrastructure.getDefaultWorkerPool()))
                .withDelay(BETWEEN)
                .whilst(standing -> standing.state().isUnderWay())
                .map(standing -> sse.newEventBuilder()
                        .name("progress")
                        .data(json(standing))
                        .build());
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
