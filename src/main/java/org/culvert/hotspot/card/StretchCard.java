package org.culvert.hotspot.card;

import java.util.List;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.when.StretchTimes;
import org.culvert.hotspot.works.StretchAnswer;
import org.culvert.hotspot.works.StretchWorks;
import org.jspecify.annotations.Nullable;

/**
 * One hotspot of a run.
 *
 * @param stretch as the run found it and the asker is told it
 * @param councils in whose area its middle lies; none where nobody entered one or it is not told
 * @param crossings roads that cross or meet it, and the next ones before and behind it; none where they are not told
 * @param now what the records tell of the stretch as they stand; null where nothing is told
 * @param whyNotNow why nothing is told of that
 */
public record StretchCard(
        HotspotReport.Stretch stretch,
        List<String> councils,
        List<Crossing> crossings,
        @Nullable Now now,
        @Nullable String whyNotNow) {
    /**
     * A road that meets the hotspot's road.
     *
     * @param metresBeyond how far before its beginning or behind its end; 0 on the stretch
     */
    public record Crossing(String road, double chainageMetres, double metresBeyond) {}

    /**
     * The records of today on the same stretch, in whole calendar years of the run's period.
     *
     * @param fromChainageMetres where the counting begins; to some it is told by whole hundreds of metres alone
     * @param answer of the run's animals in its season
     * @param allYear the same of all months; the very same where the season is the whole year
     * @param times hours and light in all months; null where they are not told
     */
    public record Now(
            double fromChainageMetres,
            double toChainageMetres,
            StretchAnswer answer,
            StretchAnswer allYear,
            @Nullable StretchTimes times,
            List<StretchWorks> works) {}
}
