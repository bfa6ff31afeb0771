package org.culvert.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.beside.IsItLasting;
import org.culvert.hotspot.beside.IsItNew;
import org.culvert.hotspot.beside.RestsOn;
import org.culvert.hotspot.beside.Secondary;
import org.culvert.hotspot.beside.Sensitivity;
import org.jspecify.annotations.Nullable;

/**
 * What a report says beside its hotspots, laid out for reading; null for what it does not say.
 *
 * @param bandwidths as a table
 */
public record BesidePage(
        @Nullable Newer newer,
        @Nullable Lasting lasting,
        @Nullable Bandwidths bandwidths,
        @Nullable Rests rests,
        @Nullable Others others) {
    /** A table with its words. */
    public record Newer(String sentence, List<NewRow> rows, List<String> notControlled) {}

    public record NewRow(
            String road, String kilometre, String radius, LocalDate since, int incidents, String expected, String p) {}

    public record Lasting(String sentence, List<WindowRow> windows, List<LastingRow> rows) {}

    /** @param why it could not be searched, or null */
    public record WindowRow(
            int number,
            LocalDate from,
            LocalDate to,
            String collisions,
            String hotspots,
            @Nullable String why) {}

    public record LastingRow(int rank, String windows, int count, int apart) {}

    public record Bandwidths(String sentence, List<BandwidthRow> rows) {}

    public record BandwidthRow(String metres, int hotspots, String stay, String go, int others) {}

    public record Rests(
            String aboutYears,
            List<YearRow> years,
            List<BandRow> positions,
            String rounded,
            String closePairs,
            String closePairsExpected,
            List<RestsOn.Caveat> caveats) {}

    public record YearRow(int year, boolean whole, String incidents, String placed, String counted) {}

    /** @param to null where it has no end */
    public record BandRow(String from, @Nullable String to, String collisions, String share) {}

    public record Others(
            String sentence, Table segments, Table neighbours, List<GroupTable> groups, List<InWords> together) {}

    /**
     * Groups.
     *
     * @param within metres of each other; empty for any density
     */
    public record GroupTable(
            String method, String within, int count, int fewest, String ungrouped, List<GroupRow> rows) {}

    /**
     * How near together collisions are.
     *
     * @param at metres at which the greatest difference is; empty where it was not asked
     * @param nearer than even; otherwise farther apart
     */
    public record InWords(String method, String at, boolean nearer, String madP, String dclfP) {}

    public record Table(String method, int tested, String metres, List<SegmentRow> rows) {}

    public record SegmentRow(String road, String from, String to, String incidents, String expected, String p) {}

    public record GroupRow(String road, String from, String to, String incidents) {}

    private static final String NOT_TOLD = "–";

    static BesidePage of(HotspotReport report) {
        return new BesidePage(
                newer(report.isItNew()),
                lasting(report.isItLasting()),
                bandwidths(report.sensitivity()),
                rests(report.restsOn()),
                others(report.secondary()));
    }

    private static @Nullable Newer newer(@Nullable IsItNew isNew) {
        return isNew == null
                ? null
                : new Newer(
                        isNew.sentence(),
                        isNew.places().stream()
                                .map(place -> new NewRow(
                                        place.centre().road(),
                                        kilometres(place.centre().chainageMetres()),
                                        number("%.0f", place.radiusMetres()),
                                        place.firstDay(),
                                        place.incidents(),
                                        number("%.2f", place.expected()),
                                        number("%.3f", place.adjustedP())))
                                .toList(),
                        isNew.notControlled());
    }

    private static @Nullable Lasting lasting(@Nullable IsItLasting lasting) {
        if (lasting == null) {
            return null;
        }
        List<IsItLasting.Window> windows = lasting.windows();
        List<WindowRow> rows = new ArrayList<>();
        for (int i = 0; i < windows.size(); i++) {
            IsItLasting.Window window = windows.get(i);
            rows.add(new WindowRow(
                    i + 1,
                    window.from(),
                    window.to(),
                    told(window.collisions()),
                    told(window.hotspots()),
                    window.why()));
        }
        return new Lasting(
                lasting.sentence(),
                rows,
                lasting.hotspots().stream()
                        .map(hotspot -> new LastingRow(
                                hotspot.rank(), list(hotspot.foundIn()), hotspot.windows(), hotspot.windowsApart()))
                        .toList());
    }

    private static @Nullable Bandwidths bandwidths(@Nullable Sensitivity sensitivity) {
        return sensitivity == null
                ? null
                : new Bandwidths(
                        sensitivity.sentence(),
                        sensitivity.bandwidths().stream()
                                .map(one -> new BandwidthRow(
                                        number("%.0f", one.bandwidthMetres()),
                                        one.hotspots(),
                                        list(one.stay()),
                                        list(one.go()),
                                        one.others()))
                                .toList());
    }

    private static @Nullable Rests rests(@Nullable RestsOn rests) {
        return rests == null
                ? null
                : new Rests(
                        rests.aboutYears(),
                        rests.years().stream()
                                .map(year -> new YearRow(
                                        year.year(),
                                        year.whole(),
                                        told(year.incidents()),
                                        told(year.collisionsOfAllAnimals()),
                                        told(year.collisionsCounted())))
                                .toList(),
                        rests.positions().stream()
                                .map(band -> new BandRow(
                                        number("%.0f", band.fromMetres()),
                                        band.toMetres() == null ? null : number("%.0f", band.toMetres()),
                                        told(band.collisions()),
                                        band.share() == null ? NOT_TOLD : number("%.0f %%", 100 * band.share())))
                                .toList(),
                        told(rests.roundedPositions()),
                        told(rests.closePairs()),
                        rests.closePairsExpected() == null ? NOT_TOLD : number("%.1f", rests.closePairsExpected()),
                        rests.caveats());
    }

    private static @Nullable Others others(@Nullable Secondary secondary) {
        if (secondary == null) {
            return null;
        }
        return new Others(
                secondary.sentence(),
                table(secondary.segments()),
                table(secondary.neighbours()),
                List.of(groups(secondary.groups()), groups(secondary.groupsOfAnyDensity())),
                List.of(together(secondary.together()), together(secondary.togetherCorrected())));
    }

    private static GroupTable groups(Secondary.Groups groups) {
        Double eps = groups.epsMetres();
        return new GroupTable(
                groups.method(),
                eps == null ? "" : number("%.0f", eps),
                groups.count(),
                groups.minimumIncidents(),
                told(groups.ungrouped()),
                groups.largest().stream()
                        .map(group -> new GroupRow(
                                group.road(),
                                kilometres(group.fromChainageMetres()),
                                kilometres(group.toChainageMetres()),
                                told(group.incidents())))
                        .toList());
    }

    private static InWords together(Secondary.Together together) {
        Double p = together.madP();
        Double radius = together.madRadiusMetres();
        Double overAll = together.dclfP();
        return p == null || radius == null
                ? new InWords(together.method(), "", false, NOT_TOLD, NOT_TOLD)
                : new InWords(
                        together.method(),
                        number("%.0f", radius),
                        Boolean.TRUE.equals(together.nearer()),
                        number("%.3f", p),
                        overAll == null ? NOT_TOLD : number("%.3f", overAll));
    }

    private static Table table(Secondary.Segments segments) {
        return new Table(
                segments.method(),
                segments.tested(),
                number("%.0f", segments.segmentMetres()),
                segments.found().stream()
                        .map(segment -> new SegmentRow(
                                segment.road(),
                                kilometres(segment.fromChainageMetres()),
                                kilometres(segment.toChainageMetres()),
                                told(segment.incidents()),
                                segment.expected() == null ? NOT_TOLD : number("%.2f", segment.expected()),
                                number("%.3f", segment.adjustedP())))
                        .toList());
    }

    private static String told(@Nullable Integer count) {
        return count == null ? NOT_TOLD : count.toString();
    }

    private static String list(List<Integer> numbers) {
        return numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }

    private static String kilometres(double metres) {
        return number("%.2f", metres / 1000);
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
