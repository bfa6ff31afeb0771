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
    /** A file of a kind, and what is asked beside it. */
    record FileAct(BroughtFileKind kind, Act<?> act) {}

    private static final Map<String, FileAct> BY_KIND = Map.of(
            "road-networks", file(BroughtFileKind.roadNetworks, "POST /api/road-networks"),
            "land-areas", file(BroughtFileKind.landAreas, "POST /api/land-areas/files"),
            "release-sites", file(BroughtFileKind.releaseSites, "POST /api/release-sites/files"));

    /** Which kinds do. */
    static final Set<String> KINDS = BY_KIND.keySet();

    private static FileAct file(BroughtFileKind kind, String operation) {
        return new FileAct(kind, new Act<>("file", operation, null, false, kind.entry(), Set.of()));
    }

    @Nullable
    FileAct find(String kind) {
        return BY_KIND.get(kind);
    }
}
