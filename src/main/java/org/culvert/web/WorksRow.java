package org.culvert.web;

import java.util.Locale;
import java.util.UUID;
import org.culvert.hotspot.works.WorksService.WorksView;

/** Works in a few words. */
public record WorksRow(UUID id, String words, String kind, String road, String stretch, String ends, String built) {
    static WorksRow of(WorksView works) {
        return new WorksRow(
                works.id(),
                works.words(),
                works.kind(),
                works.road(),
                metres(works.fromChainageMetres()) + " to " + metres(works.toChainageMetres()),
                metres(works.endsMetres()),
                works.builtFrom() + " to " + (works.builtUntil() == null ? "now: still under way" : works.builtUntil())
                        + (works.endedOn() == null ? "" : "; ended on " + works.endedOn()));
    }

    private static String metres(double metres) {
        return String.format(Locale.ROOT, "%.0f", metres);
    }
}
