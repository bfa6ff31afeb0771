package org.culvert.web;

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
            String road, String kilometre, String radius, String since, int incidents, String expected, String p) {}

    public record Lasting(String sentence, List<WindowRow> windows, List<LastingRow> rows) {}

    public record WindowRow(int number, String period, String collisions, String hotspots) {}

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

    public record YearRow(String year, String incidents, String placed, String counted) {}

    public record BandRow(String metres, String collisions, String share) {}

    public record Others(
            String sentence, Table segments, Table neighbours, List<GroupTable> groups, List<InWords> together) {}

    public record GroupTable(String caption, String method, String inWords, List<GroupRow> rows) {}

    public record InWords(String method, @Nullable String words) {}

    public record Table(String method, String tested, List<SegmentRow> rows) {}

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
                                        place.firstDay().toString(),
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
                    window.from() + " to " + window.to(),
                    told(window.collisions()),
                    window.why() == null ? told(window.hotspots()) : window.why()));
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
                                        year.year() + (year.whole() ? "" : " (in part)"),
                                        told(year.incidents()),
                                        told(year.collisionsOfAllAnimals()),
                                        told(year.collisionsCounted())))
                                .toList(),
                        rests.positions().stream()
                                .map(band -> new BandRow(
                                        band(band),
                                        told(band.collisions()),
                                        band.share() == null ? NOT_TOLD : number("%.0f %%", 100 * band.share())))
                                .toList(),
                        told(rests.roundedPositions()),
                        told(rests.closePairs()),
                        rests.closePairsExpected() == null ? NOT_TOLD : number("%.1f", rests.closePairsExpected()),
                        rests.caveats());
    }

    private static String band(RestsOn.Band band) {
        String from = number("%.0f", band.fromMetres());
        return band.toMetres() == null ? "more than " + from : from + " to " + number("%.0f", band.toMetres());
    }

    private static @Nullable Others others(@Nullable Secondary secondary) {
        if (secondary == null) {
            return null;
        }
        return new Others(
                secondary.sentence(),
                table(secondary.segments()),
                table(secondary.neighbours()),
                List.of(
                        groups("The largest groups within one distance", secondary.groups()),
                        groups("The largest groups of any density", secondary.groupsOfAnyDensity())),
                List.of(together(secondary.together()), together(secondary.togetherCorrected())));
    }

    private static GroupTable groups(String caption, Secondary.Groups groups) {
        String ungrouped = told(groups.ungrouped()) + " collisions in none.";
        Double eps = groups.epsMetres();
        return new GroupTable(
                caption,
                groups.method(),
                groups.count() + " groups of at least " + groups.minimumIncidents() + " collisions"
                        + (eps == null ? "; " : " within " + number("%.0f", eps) + " m of each other; ") + ungrouped,
                groups.largest().stream()
                        .map(group -> new GroupRow(
                                group.road(),
                                kilometres(group.fromChainageMetres()),
                                kilometres(group.toChainageMetres()),
                                told(group.incidents())))
                        .toList());
    }

    private static InWords together(Secondary.Together together) {
        return new InWords(
                together.method(),
                together.madP() == null || together.madRadiusMetres() == null
                        ? null
                        : "The greatest difference is at " + number("%.0f", together.madRadiusMetres())
                                + " m, where they are "
                                + (Boolean.TRUE.equals(together.nearer()) ? "nearer together" : "farther apart")
                                + " than even: p " + number("%.3f", together.madP()) + " (MAD); p "
                                + number("%.3f", together.dclfP() == null ? Double.NaN : together.dclfP())
                                + " over all distances (DCLF).");
    }

    private static Table table(Secondary.Segments segments) {
        return new Table(
                segments.method(),
                segments.tested() + " segments of " + number("%.0f", segments.segmentMetres()) + " m tested, "
                        + segments.found().size() + " told.",
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
        return numbers.isEmpty()
                ? "none"
                : numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }

    private static String kilometres(double metres) {
        return number("%.2f", metres / 1000);
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
