package org.culvert.hotspot.works;

import static org.culvert.platform.Role.COORDINATOR;

import org.culvert.support.Api;

/** The invented roads and works for tests in other rooms. */
public final class WorksWorlds {
    private WorksWorlds() {}

    public static void make() {
        WorksWorld.make();
    }

    /** Works on Works Road through 2019 that helped. */
    public static String fence() {
        return Api.make(COORDINATOR, "/api/works", WorksWorld.fence("")).getString("id");
    }
}
