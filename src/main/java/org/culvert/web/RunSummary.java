package org.culvert.web;

import java.util.Locale;
import org.culvert.hotspot.ChanceKind;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.RunView;
import org.jspecify.annotations.Nullable;

/** A run in words. */
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
        String requestedAt,
        long exploratoryRunsSoFar,
        RunSettings settings) {
    static RunSummary of(RunView run) {
        RunSettings settings = run.settings();
        String group = settings.taxonGroup();
        String owner = settings.owner();
        return new RunSummary(
                run.id().toString(),
                group == null ? "All animals" : sentenceCase(group.replace('-', ' ')),
                settings.periodFrom() + " to " + settings.periodTo(),
                ReportPage.seasonWords(settings.season()),
                owner == null ? "whole network" : owner,
                chanceWords(settings.chance()),
                run.declared() ? "declared" : "exploratory",
                run.state(),
                run.state().equals("waiting") || run.state().equals("computing"),
                run.simulationsDone(),
                run.simulationsTotal(),
                run.failure(),
                run.cancelledBecause(),
                Times.words(run.requestedAt()),
                run.exploratoryRunsSoFar(),
                settings);
    }

    private static String sentenceCase(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ENGLISH) + words.substring(1);
    }

    private static String chanceWords(String chance) {
        return ChanceKind.find(chance).map(ChanceKind::words).orElse(chance);
    }
}
