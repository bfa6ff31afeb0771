package org.culvert.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.culvert.hotspot.works.StretchAnswer;
import org.culvert.hotspot.works.StretchWorks;

/**
 * Counts by year as bars, in a drawing 360 by 142, with a line where building of works began.
 *
 * @param marks of works that were begun in these years, by the letter that they have in the list beside it
 * @param words the counts in words
 */
public record YearsPicture(List<ReportPage.Bar> bars, List<Mark> marks, String words) {
    private static final int WIDTH = 360;
    private static final int HEIGHT = 84;
    private static final int TOP = 28;
    private static final int MOST_WHOLE_NAMES = 10;

    /** Works in the drawing. */
    public record Mark(String x, String letter) {}

    static YearsPicture of(List<StretchAnswer.Count> years, List<StretchWorks> works) {
        int most = years.stream()
                .mapToInt(year -> year.incidents() == null ? 0 : year.incidents())
                .max()
                .orElse(0);
        int step = WIDTH / Math.max(5, years.size());
        List<ReportPage.Bar> bars = new ArrayList<>();
        for (int i = 0; i < years.size(); i++) {
            StretchAnswer.Count year = years.get(i);
            int count = year.incidents() == null ? 0 : year.incidents();
            int height = Math.round((float) count / Math.max(1, most) * HEIGHT);
            bars.add(new ReportPage.Bar(
                    year.of(),
                    years.size() > MOST_WHOLE_NAMES ? "’" + year.of().substring(2) : year.of(),
                    year.incidents() == null ? "–" : year.incidents().toString(),
                    i * step + 2,
                    TOP + HEIGHT - height,
                    step - 4,
                    height));
        }
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < works.size() && !years.isEmpty(); i++) {
            LocalDate begun = works.get(i).works().builtFrom();
            double at = begun.getYear()
                    - Integer.parseInt(years.get(0).of())
                    + (begun.getDayOfYear() - 1.0) / begun.lengthOfYear();
            if (at >= 0 && at < years.size()) {
                marks.add(new Mark(String.format(Locale.ROOT, "%.1f", at * step), letter(i)));
            }
        }
        return new YearsPicture(
                bars,
                marks,
                bars.stream().map(bar -> bar.name() + " " + bar.incidents()).collect(Collectors.joining(", ")));
    }

    static String letter(int number) {
        return number < 26 ? String.valueOf((char) ('A' + number)) : Integer.toString(number + 1);
    }
}
