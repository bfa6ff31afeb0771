package org.culvert.hotspot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.IntStream;
import org.culvert.call.CollisionReport;
import org.culvert.call.IncidentService;
import org.culvert.hotspot.stats.SmallNumbers;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.road.RoadFacts;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Counts collisions by road and year for those who keep roads, without small numbers. */
@ApplicationScoped
public class CollisionCountService {
    private static final int MOST_YEARS = 30;
    private static final String NO_ROAD = "no road known";
    private static final String NOTE =
            "Counts of reports, not hotspots: where more people drive or look, more is reported.";

    private final IncidentService incidents;
    private final SeasonWindowService windows;
    private final RoadFacts roads;
    private final TaxonService taxa;
    private final RegionService regions;
    private final AuthoritySight authority;
    private final Clock clock;

    CollisionCountService(
            IncidentService incidents,
            SeasonWindowService windows,
            RoadFacts roads,
            TaxonService taxa,
            RegionService regions,
            AuthoritySight authority,
            Clock clock) {
        this.incidents = incidents;
        this.windows = windows;
        this.roads = roads;
        this.taxa = taxa;
        this.regions = regions;
        this.authority = authority;
        this.clock = clock;
    }

    /**
     * @param from first day; the start of the fifth year back when left out
     * @param to last day; today when left out
     */
    @Transactional
    public CollisionCountsView count(
            @Nullable String taxonGroup,
            @Nullable String seasonWindow,
            @Nullable LocalDate from,
            @Nullable LocalDate to) {
        ZoneId zone = regions.zone();
        LocalDate last = to == null ? clock.instant().atZone(zone).toLocalDate() : to;
        LocalDate first = from == null ? LocalDate.of(last.getYear() - 4, 1, 1) : from;
        requirePeriod(first, last);
        requireWholeYears(first, to);
        if (taxonGroup != null) {
            taxa.requireGroup("taxonGroup", taxonGroup);
        }
        RunSettings.Season season = season(taxonGroup, seasonWindow, last);
        int years = last.getYear() - first.getYear() + 1;
        Map<String, int[]> byRoad = new TreeMap<>();
        Map<UUID, String> names = new HashMap<>();
        for (CollisionReport report : incidents.listCollisionReports(
                first.atStartOfDay(zone).toInstant(),
                last.plusDays(1).atStartOfDay(zone).toInstant())) {
            LocalDate day = day(report, zone);
            if (!report.joined()
                    && report.collision()
                    && (taxonGroup == null || report.taxonGroups().contains(taxonGroup))
                    && (season == null || season.has(day))) {
                byRoad.computeIfAbsent(roadName(report, names), name -> new int[years])[
                        day.getYear() - first.getYear()]++;
            }
        }
        return view(first, last, taxonGroup, seasonWindow, byRoad, years);
    }

    private CollisionCountsView view(
            LocalDate first,
            LocalDate last,
            @Nullable String taxonGroup,
            @Nullable String seasonWindow,
            Map<String, int[]> byRoad,
            int years) {
        List<String> names = new ArrayList<>(byRoad.keySet());
        int[][] counts = names.isEmpty()
                ? new int[][] {new int[years]}
                : names.stream().map(byRoad::get).toArray(int[][]::new);
        Integer smallest = authority.smallestCount();
        if (authority.withholdsPlacesOf(taxonGroup)) {
            counts = new int[][] {Arrays.copyOf(SmallNumbers.withTotals(counts)[counts.length], years)};
            names = List.of();
        }
        int[][] table = SmallNumbers.withTotals(counts);
        boolean[][] hidden =
                smallest == null ? new boolean[table.length][table[0].length] : SmallNumbers.hidden(counts, smallest);
        List<CollisionCountsView.RoadView> rows = new ArrayList<>();
        for (int row = 0; row < names.size(); row++) {
            rows.add(new CollisionCountsView.RoadView(
                    names.get(row),
                    shown(table[row], hidden[row], years),
                    shown(table[row][years], hidden[row][years])));
        }
        int totals = table.length - 1;
        return new CollisionCountsView(
                first,
                last,
                taxonGroup,
                seasonWindow,
                smallest,
                IntStream.range(0, years).mapToObj(i -> first.getYear() + i).toList(),
                rows,
                shown(table[totals], hidden[totals], years),
                shown(table[totals][years], hidden[totals][years]),
                NOTE);
    }

    private static List<@Nullable Integer> shown(int[] counts, boolean[] hidden, int years) {
        List<@Nullable Integer> shown = new ArrayList<>();
        for (int i = 0; i < years; i++) {
            shown.add(shown(counts[i], hidden[i]));
        }
        return shown;
    }

    private static @Nullable Integer shown(int count, boolean hidden) {
        return hidden ? null : Integer.valueOf(count);
    }

    private RunSettings.@Nullable Season season(
            @Nullable String taxonGroup, @Nullable String seasonWindow, LocalDate on) {
        if (seasonWindow == null) {
            return null;
        }
        if (taxonGroup == null) {
            throw InvalidException.of("taxonGroup", "A season window is of a group.", "the group of the window");
        }
        return windows.findSeason(taxonGroup, seasonWindow, on)
                .orElseThrow(() -> InvalidException.of(
                        "seasonWindow",
                        "There is no such season window.",
                        String.join(", ", windows.namesOf(taxonGroup))));
    }

    private static void requirePeriod(LocalDate first, LocalDate last) {
        if (first.isAfter(last)) {
            throw InvalidException.of("to", "It ends before it begins.", "a day on or after from");
        }
        if (last.getYear() - first.getYear() >= MOST_YEARS || first.getYear() < 1900 || last.getYear() > 2200) {
            throw InvalidException.of("from", "The period is too long.", "at most " + MOST_YEARS + " years");
        }
    }

    /** From counts that begin a day apart, what happened on that day could be told. */
    private void requireWholeYears(LocalDate first, @Nullable LocalDate to) {
        if (authority.smallestCount() == null) {
            return;
        }
        if (first.getDayOfYear() != 1) {
            throw InvalidException.of("from", "Counts are told to you by whole years.", "a first of January");
        }
        if (to != null && (to.getMonthValue() != 12 || to.getDayOfMonth() != 31)) {
            throw InvalidException.of(
                    "to", "Counts are told to you by whole years.", "a 31st of December, or leave it out");
        }
    }

    private String roadName(CollisionReport report, Map<UUID, String> names) {
        UUID link = report.roadLinkId();
        return link == null
                ? NO_ROAD
                : names.computeIfAbsent(
                        link,
                        id -> roads.findLink(id)
                                .map(RoadFacts.LinkFacts::roadName)
                                .orElse(NO_ROAD));
    }

    private static LocalDate day(CollisionReport report, ZoneId zone) {
        Instant happened = report.happenedAt();
        return (happened == null ? report.reportedAt() : happened).atZone(zone).toLocalDate();
    }
}
