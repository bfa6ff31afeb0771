package org.culvert.web;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.culvert.hotspot.HotspotReport.Along;
import org.culvert.hotspot.HotspotReport.Stretch;

/**
 * The road around a hotspot as a drawing 360 by 190: what was reported as a line, what chance expects as a dashed one, and shaded
 * up to what would just be significant. The road runs to the right from the lesser chainage; where it has a gap the lines have one.
 *
 * @param shaded paths of areas
 * @param expected paths of lines
 * @param reported paths of lines
 * @param stretchX where the stretch starts in the drawing
 * @param stretchWidth how wide it is there
 * @param from where the road begins in it, in kilometres
 * @param most where most was reported
 * @param above where the line is at or above the edge of the shading
 */
public record RoadCurve(
        int rank,
        String road,
        String from,
        String to,
        Most most,
        List<Span> above,
        List<String> shaded,
        List<String> expected,
        List<String> reported,
        String stretchX,
        String stretchWidth,
        List<Tick> kilometres,
        List<Tick> rates) {
    static final double LEFT = 36;
    static final double RIGHT = 352;
    static final double TOP = 12;
    static final double FOOT = 148;

    /**
     * The densest part, in collisions per kilometre and year.
     *
     * @param significant what would just be significant; empty where nothing would
     */
    public record Most(String kilometre, String reported, String expected, String significant) {}

    /** From one kilometre to another. */
    public record Span(String from, String to) {}

    /** More than that many times what was reported is above the drawing. */
    private static final double TALLEST = 2.5;

    /** Draws the hotspots whose roads are told. */
    static List<RoadCurve> of(List<Stretch> stretches) {
        List<RoadCurve> curves = new ArrayList<>();
        for (Stretch stretch : stretches) {
            List<Along> parts = stretch.alongTheRoad();
            if (parts != null && !parts.isEmpty()) {
                curves.add(new Drawing(stretch, parts).draw());
            }
        }
        return curves;
    }

    private static final class Drawing {
        private final Stretch stretch;
        private final List<Along> parts;
        private final List<List<Along>> unbroken = new ArrayList<>();
        private final double from;
        private final double to;
        private final double highest;

        Drawing(Stretch stretch, List<Along> parts) {
            this.stretch = stretch;
            this.parts = parts;
            this.from = Math.min(stretch.fromChainageMetres(), parts.get(0).fromChainageMetres());
            this.to = Math.max(
                    stretch.toChainageMetres(), parts.get(parts.size() - 1).toChainageMetres());
            double reported = 0;
            double all = 0;
            for (Along part : parts) {
                boolean goesOn = !unbroken.isEmpty()
                        && part.fromChainageMetres()
                                        - last(unbroken.get(unbroken.size() - 1))
                                                .toChainageMetres()
                                < 1;
                if (!goesOn) {
                    unbroken.add(new ArrayList<>());
                }
                unbroken.get(unbroken.size() - 1).add(part);
                Double envelope = part.envelopePerKilometreAndYear();
                reported = Math.max(reported, part.incidentsPerKilometreAndYear());
                all = Math.max(all, Math.max(part.expectedPerKilometreAndYear(), envelope == null ? 0 : envelope));
            }
            double high = 1.1 * Math.max(reported, Math.min(all, TALLEST * reported));
            this.highest = high > 0 ? high : 1;
        }

        private static Along last(List<Along> run) {
            return run.get(run.size() - 1);
        }

        RoadCurve draw() {
            return new RoadCurve(
                    stretch.rank(),
                    stretch.road(),
                    kilometres(from),
                    kilometres(to),
                    most(),
                    above(),
                    unbroken.stream().map(this::area).toList(),
                    unbroken.stream()
                            .map(run -> "M" + line(run, Along::expectedPerKilometreAndYear))
                            .toList(),
                    unbroken.stream()
                            .map(run -> "M" + line(run, Along::incidentsPerKilometreAndYear))
                            .toList(),
                    text(x(stretch.fromChainageMetres())),
                    text(x(stretch.toChainageMetres()) - x(stretch.fromChainageMetres())),
                    Tick.between(from / 1000, to / 1000, kilometre -> x(1000 * kilometre)),
                    Tick.between(0, highest, this::y));
        }

        private Most most() {
            Along most = parts.get(0);
            for (Along part : parts) {
                if (part.incidentsPerKilometreAndYear() > most.incidentsPerKilometreAndYear()) {
                    most = part;
                }
            }
            Double envelope = most.envelopePerKilometreAndYear();
            return new Most(
                    kilometres((most.fromChainageMetres() + most.toChainageMetres()) / 2),
                    figures(most.incidentsPerKilometreAndYear()),
                    figures(most.expectedPerKilometreAndYear()),
                    envelope == null ? "" : figures(envelope));
        }

        private List<Span> above() {
            List<Span> stretches = new ArrayList<>();
            int at = 0;
            while (at < parts.size()) {
                int end = at;
                while (end < parts.size() && parts.get(end).significant()) {
                    end++;
                }
                if (end > at) {
                    stretches.add(new Span(
                            kilometres(parts.get(at).fromChainageMetres()),
                            kilometres(parts.get(end - 1).toChainageMetres())));
                }
                at = end + 1;
            }
            return stretches;
        }

        private String area(List<Along> run) {
            String foot = text(FOOT);
            return "M" + text(x(run.get(0).fromChainageMetres())) + " " + foot + "L"
                    + line(
                            run,
                            part -> part.envelopePerKilometreAndYear() == null
                                    ? highest
                                    : part.envelopePerKilometreAndYear())
                    + "L" + text(x(last(run).toChainageMetres())) + " " + foot + "Z";
        }

        /** Through the middles of the parts, and level to both ends. */
        private String line(List<Along> run, ToDoubleFunction<Along> value) {
            List<String> points = new ArrayList<>();
            points.add(point(run.get(0).fromChainageMetres(), value.applyAsDouble(run.get(0))));
            for (Along part : run) {
                points.add(point((part.fromChainageMetres() + part.toChainageMetres()) / 2, value.applyAsDouble(part)));
            }
            points.add(point(last(run).toChainageMetres(), value.applyAsDouble(last(run))));
            return String.join("L", points);
        }

        private String point(double metres, double rate) {
            return text(x(metres)) + " " + text(y(rate));
        }

        private double x(double metres) {
            return LEFT + (RIGHT - LEFT) * (metres - from) / Math.max(1, to - from);
        }

        private double y(double rate) {
            return FOOT - (FOOT - TOP) * Math.min(1, rate / highest);
        }
    }

    private static String kilometres(double metres) {
        return String.format(Locale.ROOT, "%.2f", metres / 1000);
    }

    private static String figures(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(3, RoundingMode.HALF_EVEN));
        return (rounded.scale() < 0 ? rounded.setScale(0, RoundingMode.UNNECESSARY) : rounded).toPlainString();
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
