package org.culvert.hotspot;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.culvert.hotspot.beside.Beside;
import org.culvert.hotspot.stats.Chance;
import org.culvert.hotspot.stats.Hotspot;
import org.culvert.hotspot.stats.HotspotSearch;
import org.culvert.hotspot.stats.RecordDoubts;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.traffic.TrafficUsed;
import org.jspecify.annotations.Nullable;

/** Writes down what a search found, in words and numbers that an engineer can check. */
final class ReportMaker {
    private static final String ABOUT_INTERVALS =
            "Each interval is the exact 95 % interval of a Poisson count (Garwood 1936). It is not corrected for the"
                    + " stretch having been chosen because its count is high: expect fewer there in other years, whatever"
                    + " is done.";

    private final RoadNetwork network;
    private final RunSettings settings;

    ReportMaker(RoadNetwork network, RunSettings settings) {
        this.network = network;
        this.settings = settings;
    }

    HotspotReport report(
            int networkNumber,
            String networkSha256,
            Evidence evidence,
            @Nullable TrafficUsed traffic,
            Chance chance,
            RecordDoubts doubts,
            List<Hotspot> hotspots,
            Beside beside) {
        List<String> notControlled = new ArrayList<>(chance.uncontrolled());
        notControlled.addAll(doubts.words());
        return new HotspotReport(
                new HotspotReport.Engine("org.culvert.hotspot.stats", HotspotSearch.VERSION),
                new HotspotReport.Network(
                        networkNumber,
                        networkSha256,
                        network.linkCount(),
                        Words.rounded(network.graph().totalLength() / 1000, 3)),
                settings,
                new HotspotReport.Inputs(
                        evidence.incidentsInPeriod(),
                        evidence.group().size(),
                        evidence.reports().size(),
                        evidence.timedByReport(),
                        evidence.placedByJunction(),
                        evidence.sha256(),
                        traffic),
                new HotspotReport.ErrorRate(
                        sentence(chance, notControlled),
                        notControlled.isEmpty(),
                        settings.runAlpha(),
                        chance.clause(),
                        List.copyOf(notControlled),
                        chance.assumptions()),
                evidence.leftOut().entrySet().stream()
                        .map(entry -> new HotspotReport.Reason(entry.getKey().words(), entry.getValue()))
                        .toList(),
                IntStream.rangeClosed(1, 12)
                        .mapToObj(month -> new HotspotReport.Month(month, evidence.months()[month - 1]))
                        .toList(),
                ABOUT_INTERVALS,
                hotspots.stream().map(this::stretch).toList(),
                beside.isItNew(),
                beside.isItLasting(),
                beside.sensitivity(),
                beside.restsOn(),
                beside.secondary(),
                null);
    }

    private String sentence(Chance chance, List<String> notControlled) {
        String percent = Words.number(100 * settings.runAlpha(), 4) + " %";
        String words = "If " + chance.clause() + ", a run like this one would name a hotspot anywhere on the network"
                + " in at most " + percent + " of cases; that was found with " + settings.simulations()
                + " simulated sets of collisions, rounded and spread as the real ones are.";
        if (!notControlled.isEmpty()) {
            words += " This is not claimed of the real roads, because the run does not control: "
                    + String.join("; ", notControlled) + ".";
        }
        RunEntry.Declaration declaration = settings.declaration();
        return words
                + (declaration == null
                        ? " The run is exploratory: who makes many of them will meet false hotspots more often than that."
                        : declaration.cells() == 1
                                ? " The run was decided on beforehand."
                                : " It is one of " + declaration.cells() + " runs decided on together beforehand, which"
                                        + " together keep " + Words.number(100 * settings.alpha(), 4) + " %.");
    }

    private HotspotReport.Stretch stretch(Hotspot hotspot) {
        List<double[][]> lines = lines(hotspot);
        double[][] first = lines.get(0);
        return new HotspotReport.Stretch(
                hotspot.rank(),
                network.roadOf(hotspot.spans().get(0).link()).label(),
                owner(hotspot),
                Words.rounded(hotspot.fromChainageMetres(), 0),
                Words.rounded(hotspot.toChainageMetres(), 0),
                Words.rounded(hotspot.lengthMetres(), 0),
                hotspot.incidents(),
                Words.rounded(hotspot.intervalLow(), 2),
                Words.rounded(hotspot.intervalHigh(), 2),
                Words.rounded(hotspot.expected(), 3),
                Words.rounded(hotspot.excess(), 3),
                Words.rounded(hotspot.adjustedP(), 5),
                Words.rounded(hotspot.incidents() / (hotspot.lengthMetres() / 1000) / settings.years(), 2),
                point(first[0]),
                point(first[first.length - 1]),
                lines,
                null);
    }

    private static HotspotReport.Point point(double[] longitudeLatitude) {
        return new HotspotReport.Point(longitudeLatitude[1], longitudeLatitude[0]);
    }

    /** Only owners of links on which something happened. */
    private @Nullable String owner(Hotspot hotspot) {
        Set<String> owners = new LinkedHashSet<>();
        for (Hotspot.Span span : hotspot.spans()) {
            String owner = network.attributes(span.link()).owner();
            if (span.incidents() > 0 && owner != null) {
                owners.add(owner);
            }
        }
        return owners.isEmpty() ? null : String.join(", ", owners);
    }

    /** The spans' courses, joined where one goes on as the next. */
    private List<double[][]> lines(Hotspot hotspot) {
        List<List<double[]>> lines = new ArrayList<>();
        List<Hotspot.Span> ends = new ArrayList<>();
        for (Hotspot.Span span : hotspot.spans()) {
            List<double[]> course = course(span);
            int before = -1;
            for (int i = 0; i < ends.size() && before < 0; i++) {
                before = goesOn(ends.get(i), span) ? i : -1;
            }
            if (before < 0) {
                lines.add(course);
                ends.add(span);
            } else {
                lines.get(before).addAll(course.subList(1, course.size()));
                ends.set(before, span);
            }
        }
        return lines.stream().map(line -> line.toArray(double[][]::new)).toList();
    }

    private boolean goesOn(Hotspot.Span span, Hotspot.Span next) {
        return span.toMetres() >= network.graph().length(span.link()) - 1e-6
                && next.fromMetres() <= 1e-6
                && network.graph().to(span.link()) == network.graph().from(next.link());
    }

    private List<double[]> course(Hotspot.Span span) {
        double[] flat = network.course(span.link(), span.fromMetres(), span.toMetres());
        List<double[]> course = new ArrayList<>();
        for (int i = 0; i < flat.length; i += 2) {
            course.add(new double[] {Words.rounded(flat[i], 6), Words.rounded(flat[i + 1], 6)});
        }
        return course;
    }
}
