package org.culvert.web;

import java.time.Instant;
import java.time.MonthDay;
import java.util.Locale;
import java.util.stream.Collectors;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.RunView;
import org.culvert.web.words.EvidenceWords;
import org.jspecify.annotations.Nullable;

/**
 * A run in the words of the page.
 *
 * @param kind {@code declared} or {@code exploratory}
 */
public record RunSummary(
        String id,
        String title,
        String period,
        String season,
        String where,
        String chance,
        String kind,
        String state,
        boolean underway,
        int done,
        int total,
        @Nullable String failure,
        @Nullable String cancelledBecause,
        Instant requestedAt,
        long exploratoryRunsSoFar,
        RunSettings settings) {
    static RunSummary of(RunView run) {
        EvidenceWords words = Languages.wordsNow(EvidenceWords.class);
        RunSettings settings = run.settings();
        String group = settings.taxonGroup();
        String owner = settings.owner();
        return new RunSummary(
                run.id().toString(),
                group == null ? words.allAnimals() : sentenceCase(group.replace('-', ' ')),
                words.fromTo(RegionTimes.plain(settings.periodFrom()), RegionTimes.plain(settings.periodTo())),
                season(settings.season(), words),
                owner == null ? words.wholeNetwork() : owner,
                words.chanceName(settings.chance()),
                run.declared() ? "declared" : "exploratory",
                words.stateName(run.state()),
                run.state().equals("waiting") || run.state().equals("computing"),
                run.simulationsDone(),
                run.simulationsTotal(),
                run.failure(),
                run.cancelledBecause(),
                run.requestedAt(),
                run.exploratoryRunsSoFar(),
                settings);
    }

    private static String season(RunSettings.Season season, EvidenceWords words) {
        String window = season.window();
        if (window != null) {
            return words.windowOfDays(window, day(season.from()), day(season.to()));
        }
        return season.months().size() == 12
                ? words.allMonths()
                : season.months().stream().map(ReportPage::monthName).collect(Collectors.joining(", "));
    }

    private static String day(@Nullable MonthDay day) {
        return day == null
                ? ""
                : RegionTimes.format("d MMMM", Languages.now().toLanguageTag()).format(day);
    }

    private static String sentenceCase(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ENGLISH) + words.substring(1);
    }
}
