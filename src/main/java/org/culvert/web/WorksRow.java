package org.culvert.web;

import java.util.Locale;
import java.util.UUID;
import org.culvert.hotspot.works.WorksService.WorksView;
import org.culvert.web.words.RoadWords;

/** Works in a few words. */
public record WorksRow(UUID id, String words, String kind, String road, String stretch, String ends, String built) {
    static WorksRow of(WorksView works, RoadWords words) {
        return new WorksRow(
                works.id(),
                works.words(),
                works.kind(),
                works.road(),
                words.fromTo(metres(works.fromChainageMetres()), metres(works.toChainageMetres())),
                metres(works.endsMetres()),
                words.fromTo(works.builtFrom(), works.builtUntil() == null ? words.underway() : works.builtUntil())
                        + (works.endedOn() == null ? "" : "; " + words.endedOn(works.endedOn())));
    }

    private static String metres(double metres) {
        return String.format(Locale.ROOT, "%.0f", metres);
    }
}
