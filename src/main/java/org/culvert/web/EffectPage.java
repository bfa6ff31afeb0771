package org.culvert.web;

import java.util.List;
import java.util.Locale;
import org.culvert.hotspot.works.AnswerBasis;
import org.culvert.hotspot.works.EffectView;
import org.jspecify.annotations.Nullable;

/** What works did, laid out for reading. */
public record EffectPage(EffectView effect, List<Row> rows) {
    /** A part as a row of the table. */
    public record Row(
            String part,
            String length,
            String before,
            String after,
            String expected,
            String ratio,
            String interval,
            String verdict) {}

    static EffectPage of(EffectView effect) {
        return new EffectPage(
                effect, effect.parts().stream().map(EffectPage::row).toList());
    }

    /** How many incidents are left out of what it rests on. */
    public int leftOutTotal() {
        AnswerBasis basis = effect.basis();
        return basis == null
                ? 0
                : basis.leftOut().stream()
                        .mapToInt(AnswerBasis.Reason::incidents)
                        .sum();
    }

    private static Row row(EffectView.PartView part) {
        boolean isTold = part.before() != null;
        return new Row(
                part.part(),
                number("%.1f", part.lengthMetres() / 1000),
                isTold ? String.valueOf(part.before()) : "–",
                part.after() == null ? "–" : String.valueOf(part.after()),
                number("%.1f", part.expected()),
                part.ratio() == null && part.upperBound() != null && isTold
                        ? "< " + number("%.2f", part.upperBound())
                        : number("%.2f", part.ratio()),
                part.ratioLow() == null
                        ? "–"
                        : number("%.2f", part.ratioLow()) + " – "
                                + (part.ratioHigh() == null ? "∞" : number("%.2f", part.ratioHigh())),
                part.verdict());
    }

    private static String number(String format, @Nullable Double value) {
        return value == null ? "–" : String.format(Locale.ROOT, format, value);
    }
}
