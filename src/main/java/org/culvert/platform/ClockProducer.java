package org.culvert.platform;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import java.time.Clock;

/** The one clock of the server. */
@ApplicationScoped
class ClockProducer {
    @Produces
    @ApplicationScoped
    Clock clock() {
        return Clock.tick(Clock.systemUTC(), java.time.Duration.ofNanos(1000));
    }
}
