package org.culvert.exchange.features;

import java.time.LocalDate;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.RunSettings;
import org.jspecify.annotations.Nullable;

/** What is claimed of a hotspot, as in the files of a run; of the period's days one is a date. */
public record HotspotProperties(
        int rank,
        String road,
        @Nullable String owner,
        @Nullable String council,
        double fromChainageMetres,
        double toChainageMetres,
        double lengthMetres,
        int incidents,
        double intervalLow,
        double intervalHigh,
        double expected,
        double excess,
        double adjustedP,
        double incidentsPerKilometreAndYear,
        @Nullable String taxonGroup,
        @Nullable String season,
        int periodFromYear,
        int periodToYear,
        @Nullable LocalDate periodTo,
        String chance,
        double alpha,
        boolean errorRateClaimed,
        @Nullable String errorRateSentence) {
    /**
     * @param council in which the middle of the stretch lies
     * @param withSeason whether the time of year may be told
     */
    static HotspotProperties of(
            HotspotReport.Stretch stretch, @Nullable String council, HotspotReport report, boolean withSeason) {
        RunSettings settings = report.settings();
        return new HotspotProperties(
                stretch.rank(),
                stretch.road(),
                stretch.owner(),
                council,
                stretch.fromChainageMetres(),
                stretch.toChainageMetres(),
                stretch.lengthMetres(),
                stretch.incidents(),
                stretch.intervalLow(),
                stretch.intervalHigh(),
                stretch.expected(),
                stretch.excess(),
                stretch.adjustedP(),
                stretch.incidentsPerKilometreAndYear(),
                settings.taxonGroup(),
                withSeason ? settings.season().words() : null,
                settings.periodFrom().getYear(),
                settings.periodTo().getYear(),
                withSeason ? settings.periodTo() : null,
                settings.chance(),
                report.errorRate().alpha(),
                report.errorRate().claimed(),
                withSeason ? report.errorRate().sentence() : null);
    }
}
