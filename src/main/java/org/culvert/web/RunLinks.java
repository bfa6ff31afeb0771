package org.culvert.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.RunView;
import org.culvert.hotspot.SeasonWindowService.WindowView;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.web.words.EvidenceWords;
import org.jspecify.annotations.Nullable;

/**
 * Ways from a run to the same days of other animals and seasons.
 *
 * @param runs that exist
 * @param forms that are filled in, for what was not asked yet
 */
public record RunLinks(List<Link> runs, List<Link> forms) {
    /** A way: to which run or form, and whether one stands there already. */
    public record Link(String animals, String season, String address, boolean isHere) {}

    static RunLinks of(RunView here, List<RunView> alike, List<GroupView> groups, List<WindowView> windows) {
        EvidenceWords words = Languages.wordsNow(EvidenceWords.class);
        List<Link> runs = new ArrayList<>();
        Set<List<@Nullable String>> asked = new HashSet<>();
        for (RunView run : alike) {
            RunSummary told = RunSummary.of(run);
            runs.add(new Link(told.title(), told.season(), "/hotspots/" + run.id(), isSame(run.id(), here.id())));
            asked.add(key(run.settings()));
        }
        runs.sort(Comparator.comparing((Link link) -> !link.animals().equals(words.allAnimals()))
                .thenComparing(Link::animals)
                .thenComparing(Link::season));
        List<Link> forms = new ArrayList<>();
        RunSettings settings = here.settings();
        if (!asked.contains(Arrays.asList(null, null))) {
            forms.add(new Link(words.allAnimals(), words.allMonths(), form(settings, null, null), false));
        }
        for (GroupView group : groups) {
            if (!asked.contains(Arrays.asList(group.key(), null))) {
                forms.add(new Link(group.name(), words.allMonths(), form(settings, group.key(), null), false));
            }
        }
        String group = settings.taxonGroup();
        windows.stream()
                .filter(window -> window.taxonGroup().equals(group))
                .map(WindowView::name)
                .distinct()
                .filter(window -> !asked.contains(Arrays.asList(group, window)))
                .forEach(window -> forms.add(
                        new Link(Objects.requireNonNullElse(group, ""), window, form(settings, group, window), false)));
        return new RunLinks(runs, forms);
    }

    private static boolean isSame(UUID one, UUID other) {
        return one.equals(other);
    }

    private static List<@Nullable String> key(RunSettings settings) {
        RunSettings.Season season = settings.season();
        String name = season.window() != null
                ? season.window()
                : season.months().size() == 12 ? null : season.months().toString();
        return Arrays.asList(settings.taxonGroup(), name);
    }

    private static String form(RunSettings settings, @Nullable String group, @Nullable String window) {
        return String.format(
                Locale.ROOT,
                "/hotspots?periodFrom=%s&periodTo=%s&taxonGroup=%s&seasonWindow=%s#ask",
                settings.periodFrom(),
                settings.periodTo(),
                encoded(group),
                encoded(window));
    }

    private static String encoded(@Nullable String text) {
        return text == null ? "" : URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
