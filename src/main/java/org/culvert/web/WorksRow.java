package org.culvert.web;

import java.time.LocalDate;
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
                built(works, words)
                        + (works.endedOn() == null ? "" : "; " + words.endedOn(RegionTimes.plain(works.endedOn()))));
    }

    private static String built(WorksView works, RoadWords words) {
        String from = RegionTimes.plain(works.builtFrom());
        LocalDate until = works.builtUntil();
        return until != null && until.equals(works.builtFrom())
                ? from
                : words.fromTo(from, until == null ? words.underway() : RegionTimes.plain(until));
    }

    private static String metres(double metres) {
        return String.format(Locale.ROOT, "%.0f", metres);
    }
}
