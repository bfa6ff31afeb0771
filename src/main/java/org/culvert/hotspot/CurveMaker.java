package org.culvert.hotspot;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.stats.AlongRoad;
import org.culvert.hotspot.stats.Chainage;
import org.culvert.hotspot.stats.Findings;
import org.culvert.hotspot.stats.Hotspot;
import org.jspecify.annotations.Nullable;

/** Writes down the roads around the first hotspots, for drawing. */
final class CurveMaker {
    private static final int MOST_HOTSPOTS = 12;
    private static final int MOST_PARTS = 200;
    private static final double BEYOND_METRES = 1000;
    private static final int FIGURES = 4;
    /** More would let single collisions be worked out of their sum. */
    private static final int FIGURES_OUTSIDE = 2;

    private final AlongRoad along;
    private final double perKilometreAndYear;

    CurveMaker(Findings findings, Chainage chainage, RunSettings settings) {
        this.along = new AlongRoad(findings, chainage);
        this.perKilometreAndYear = 1000 / settings.years();
    }

    /** @param hotspots those of the report, in its order */
    HotspotReport addTo(HotspotReport report, List<Hotspot> hotspots) {
        List<HotspotReport.Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < hotspots.size(); i++) {
            HotspotReport.Stretch stretch = report.hotspots().get(i);
            stretches.add(i < MOST_HOTSPOTS ? stretch.with(curve(hotspots.get(i))) : stretch);
        }
        return report.told(report.months(), stretches, report.beside(), report.informationWithheld());
    }

    private List<HotspotReport.Along> curve(Hotspot hotspot) {
        return along.curve(hotspot, BEYOND_METRES, MOST_PARTS).stream()
                .map(part -> new HotspotReport.Along(
                        Words.rounded(part.fromChainageMetres(), 1),
                        Words.rounded(part.toChainageMetres(), 1),
                        figures(part.density() * perKilometreAndYear, FIGURES),
                        figures(part.expected() * perKilometreAndYear, FIGURES),
                        Double.isInfinite(part.envelope())
                                ? null
                                : Double.valueOf(figures(part.envelope() * perKilometreAndYear, FIGURES)),
                        part.significant()))
                .toList();
    }

    /**
     * The curve for whoever is told no small numbers: of the stretch itself alone, since beside it single collisions would
     * show, and in two figures; null where the stretch has fewer than are told.
     */
    static @Nullable List<HotspotReport.Along> withoutSmall(HotspotReport.Stretch stretch, int smallest) {
        List<HotspotReport.Along> whole = stretch.alongTheRoad();
        if (whole == null || stretch.incidents() < smallest) {
            return null;
        }
        return whole.stream()
                .filter(part -> {
                    double middle = (part.fromChainageMetres() + part.toChainageMetres()) / 2;
                    return middle >= stretch.fromChainageMetres() && middle <= stretch.toChainageMetres();
                })
                .map(part -> new HotspotReport.Along(
                        part.fromChainageMetres(),
                        part.toChainageMetres(),
                        figures(part.incidentsPerKilometreAndYear(), FIGURES_OUTSIDE),
                        figures(part.expectedPerKilometreAndYear(), FIGURES_OUTSIDE),
                        part.envelopePerKilometreAndYear() == null
                                ? null
                                : Double.valueOf(figures(part.envelopePerKilometreAndYear(), FIGURES_OUTSIDE)),
                        part.significant()))
                .toList();
    }

    private static double figures(double value, int figures) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(figures, RoundingMode.HALF_EVEN))
                .doubleValue();
    }
}
