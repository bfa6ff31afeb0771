package org.culvert.web.animal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.culvert.animal.CaseView;
import org.culvert.web.HolderNames;
import org.jspecify.annotations.Nullable;

/**
 * The chain of custody as a line in time, 640 by 56, with the spans in which nobody is recorded; beside it the same in words.
 *
 * @param until when the line ends: with the case, or now
 */
public record CustodyPicture(List<Bar> bars, List<Row> rows, Instant from, Instant until, boolean ended) {
    private static final double WIDTH = 640;
    private static final double NARROWEST = 3;

    /**
     * A part of the line.
     *
     * @param sign the number under which it stands in words
     */
    public record Bar(String sign, boolean gap, String x, String width, String middle, boolean wide) {}

    /**
     * The same in words.
     *
     * @param who null in a gap
     * @param to null while it lasts
     */
    public record Row(
            String sign,
            @Nullable String who,
            Instant from,
            @Nullable Instant to,
            CaseView.@Nullable CustodyView link) {}

    static CustodyPicture of(CaseView told, HolderNames names, Instant now) {
        CaseView.FateView fate = told.fate();
        Instant end = fate == null ? now : Objects.requireNonNullElse(fate.at(), now);
        Instant start = told.foundAt();
        List<Row> rows = new ArrayList<>();
        int sign = 0;
        Instant last = start;
        for (CaseView.CustodyView link : told.custody()) {
            if (link.from().isAfter(last)) {
                rows.add(new Row(String.valueOf(++sign), null, last, link.from(), null));
            }
            rows.add(new Row(String.valueOf(++sign), names.of(link.holder()), link.from(), link.to(), link));
            last = Objects.requireNonNullElse(link.to(), end);
        }
        if (last.isBefore(end)) {
            rows.add(new Row(String.valueOf(++sign), null, last, fate == null ? null : end, null));
        }
        double all = Math.max(1, Duration.between(start, end).toSeconds());
        List<Bar> bars = rows.stream()
                .map(row -> {
                    double x = at(start, row.from(), all);
                    double to = at(start, Objects.requireNonNullElse(row.to(), end), all);
                    double width = Math.max(NARROWEST, to - x);
                    return new Bar(
                            row.sign(), row.who() == null, text(x), text(width), text(x + width / 2), width > 14);
                })
                .toList();
        return new CustodyPicture(bars, rows, start, end, fate != null);
    }

    private static double at(Instant start, Instant at, double all) {
        return Math.max(
                0, Math.min(WIDTH - NARROWEST, Duration.between(start, at).toSeconds() / all * WIDTH));
    }

    private static String text(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }
}
