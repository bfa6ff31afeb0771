package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.Set;
import org.culvert.exchange.files.BroughtFileKind;
import org.culvert.web.acts.Act;
import org.jspecify.annotations.Nullable;

/** Kinds of settings that come in files, and what is asked beside each. */
@ApplicationScoped
class SheetFiles {
    /**
     * A file of a kind, and what is asked beside it.
     *
     * @param called words of fields that are asked otherwise here than elsewhere, by their names
     * @param isTried whether somebody may be told first what would come of it
     */
    record FileAct(BroughtFileKind kind, Act<?> act, Map<String, String> called, boolean isTried) {}

    /** What is to be done with a file that may be tried; buttons say it. */
    static final String WANTED = "wanted";

    private static final Map<String, FileAct> BY_KIND = Map.of(
            "road-networks", file(BroughtFileKind.roadNetworks, "POST /api/road-networks"),
            "land-areas", file(BroughtFileKind.landAreas, "POST /api/land-areas/files"),
            "release-sites", file(BroughtFileKind.releaseSites, "POST /api/release-sites/files"),
            "traffic-counts",
                    new FileAct(
                            BroughtFileKind.trafficCounts,
                            act(BroughtFileKind.trafficCounts, "POST /api/traffic-counts/files", WANTED),
                            Map.of(
                                    "measure", "measureOfAll",
                                    "kind", "kindOfAll",
                                    "directions", "directionsOfAll",
                                    "year", "yearOfAll",
                                    "uncertaintyMetres", "uncertaintyOfAll"),
                            true));

    /** Which kinds do. */
    static final Set<String> KINDS = BY_KIND.keySet();

    private static FileAct file(BroughtFileKind kind, String operation) {
        return new FileAct(kind, act(kind, operation), Map.of(), false);
    }

    private static Act<?> act(BroughtFileKind kind, String operation, String... leftOut) {
        return new Act<>("file", operation, null, false, kind.entry(), Set.of(leftOut));
    }

    @Nullable
    FileAct find(String kind) {
        return BY_KIND.get(kind);
    }
}
