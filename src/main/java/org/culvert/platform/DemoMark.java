package org.culvert.platform;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;

/** Whether the region of this server is invented, so that every page can say so without asking the database. */
@ApplicationScoped
public class DemoMark {
    private final RegionService regions;
    private volatile boolean set;

    DemoMark(RegionService regions) {
        this.regions = regions;
    }

    /** After the demo region was laid, where it was asked for. */
    void read(@Observes @Priority(50) StartupEvent event) {
        read();
    }

    /** Reads it anew, after the region was told. */
    public void read() {
        set = regions.findDescription()
                .map(RegionService.RegionDescription::demo)
                .orElse(false);
    }

    public boolean isSet() {
        return set;
    }
}
