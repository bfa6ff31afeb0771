package org.culvert.exchange.features;

import java.time.LocalDate;
import org.culvert.hotspot.works.WorksService.WorksView;
import org.jspecify.annotations.Nullable;

/** What is known of works. Of their days one is a date and the others are numbers, since programs filter by any date. */
public record WorksProperties(
        String kind,
        String words,
        String road,
        double fromChainageMetres,
        double toChainageMetres,
        double endsMetres,
        LocalDate builtFrom,
        @Nullable Integer builtUntilYear,
        @Nullable Integer builtUntilDayOfYear,
        @Nullable Integer endedOnYear,
        @Nullable Integer endedOnDayOfYear,
        @Nullable String effortChange,
        @Nullable String publicityChange) {
    static WorksProperties of(WorksView works) {
        LocalDate until = works.builtUntil();
        LocalDate ended = works.endedOn();
        return new WorksProperties(
                works.kind(),
                works.words(),
                works.road(),
                works.fromChainageMetres(),
                works.toChainageMetres(),
                works.endsMetres(),
                works.builtFrom(),
                until == null ? null : until.getYear(),
                until == null ? null : until.getDayOfYear(),
                ended == null ? null : ended.getYear(),
                ended == null ? null : ended.getDayOfYear(),
                works.effortChange(),
                works.publicityChange());
    }
}
