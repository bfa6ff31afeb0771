package org.culvert.exchange.demo;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import org.culvert.platform.Role;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** With {@code culvert.demo} set, loads the invented region before the server answers, and says what it does. */
@ApplicationScoped
class DemoStart {
    private static final Logger SAY = Logger.getLogger("culvert.demo");

    private final DemoRegionLoader loader;
    private final boolean wanted;
    private final String host;

    DemoStart(
            DemoRegionLoader loader,
            @ConfigProperty(name = "culvert.demo", defaultValue = "false") boolean wanted,
            @ConfigProperty(name = "quarkus.http.host", defaultValue = "localhost") String host) {
        this.loader = loader;
        this.wanted = wanted;
        this.host = host;
    }

    /** Before the first administrator is made, who would have a password of his own. */
    void start(@Observes @Priority(5) StartupEvent event) {
        if (!wanted) {
            return;
        }
        if (!host.equals("localhost") && !host.equals("127.0.0.1")) {
            throw new IllegalStateException("The passwords of the demo are known to everybody: it answers this machine"
                    + " only. Leave CULVERT_HOST out, or start without CULVERT_DEMO.");
        }
        SAY.infof(
                "The demo region is invented: land, roads, people, calls. Its accounts are named like their roles: %s."
                        + " The password of all is %s; programs use tokens, such as %s.",
                String.join(", ", Role.ALL), DemoAccounts.PASSWORD, DemoAccounts.token(Role.COORDINATOR));
        if (!loader.isLoaded()) {
            long before = System.nanoTime();
            loader.load(
                    DemoRegion.committed(),
                    words -> SAY.infof("  %4d s  %s", (System.nanoTime() - before) / 1_000_000_000, words));
        }
    }
}
