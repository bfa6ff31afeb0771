package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A hotspot's road as a curve: the density from some way before the stretch to as far behind it, beside what chance expects
 * and the density that would just be significant there.
 *
 * <p>It follows one carriageway, that with more of the stretch's events, as far as its links go. Where two links of it claim
 * the same chainage, that with the stretch on it counts, then the first.
 */
public final class AlongRoad {
    private static final double TOUCH_METRES = 0.5;

    private final Findings findings;
    private final Pieces pieces;
    private final Chainage chainage;

    public AlongRoad(Findings findings, Chainage chainage) {
        this.findings = findings;
        this.pieces = findings.pieces();
        this.chainage = chainage;
    }

    /**
     * A part of the road, of one piece or of several neighbours; of these it tells the one that comes nearest to its envelope
     * or farthest beyond it. Densities are in events per metre.
     *
     * @param fromChainageMetres where it starts along the road
     * @param toChainageMetres where it ends; the next part starts there, unless the road has a gap
     * @param density of the events
     * @param expected that chance expects
     * @param envelope from which on a density is significant; infinite where none is
     * @param significant whether the density is
     */
    public record Part(
            double fromChainageMetres,
            double toChainageMetres,
            double density,
            double expected,
            double envelope,
            boolean significant) {}

    private record Cut(int piece, double from, double to) {}

    /**
     * The curve of a hotspot, in order of chainage.
     *
     * @param beyondMetres how far it goes on before and behind the stretch
     * @param most the greatest number of parts, unless the road has more gaps than that
     */
    public List<Part> curve(Hotspot hotspot, double beyondMetres, int most) {
        List<Cut> cuts = cuts(hotspot, beyondMetres);
        int together = Math.max(1, (int) Math.ceil((double) cuts.size() / most));
        List<Part> parts = new ArrayList<>();
        int at = 0;
        while (at < cuts.size()) {
            int end = at + 1;
            while (end < cuts.size()
                    && end < at + together
                    && cuts.get(end).from() - cuts.get(end - 1).to() < TOUCH_METRES) {
                end++;
            }
            parts.add(part(cuts.subList(at, end)));
            at = end;
        }
        return parts;
    }

    private Part part(List<Cut> neighbours) {
        int told = neighbours.stream()
                .map(Cut::piece)
                .max(Comparator.comparingDouble(this::nearness))
                .orElseThrow();
        double density = findings.density(told);
        double envelope = findings.envelope(told);
        return new Part(
                neighbours.get(0).from(),
                neighbours.get(neighbours.size() - 1).to(),
                density,
                findings.expectedDensity(told),
                envelope,
                density >= envelope);
    }

    /** How far up to its envelope, or beyond it, the density comes: 1 is just there. */
    private double nearness(int piece) {
        return findings.density(piece) / findings.envelope(piece);
    }

    private List<Cut> cuts(Hotspot hotspot, double beyondMetres) {
        int nearLink = mainLink(hotspot);
        var onStretch = new BitSet();
        hotspot.spans().forEach(span -> onStretch.set(span.link()));
        double from = hotspot.fromChainageMetres() - beyondMetres;
        double to = hotspot.toChainageMetres() + beyondMetres;
        List<Integer> links = chainage.linksBeside(nearLink).stream()
                .filter(link -> chainage.strand(link) == chainage.strand(nearLink))
                .sorted(Comparator.comparing(link -> !onStretch.get(link)))
                .toList();
        List<Cut> cuts = new ArrayList<>();
        List<Integer> taken = new ArrayList<>();
        for (int link : links) {
            for (int piece = pieces.first(link); piece < pieces.first(link + 1); piece++) {
                double start = chainage.at(link, pieces.start(piece));
                double end = chainage.at(link, pieces.end(piece));
                double middle = (start + end) / 2;
                if (middle >= from
                        && middle <= to
                        && taken.stream()
                                .noneMatch(other -> middle > chainage.low(other) && middle < chainage.high(other))) {
                    cuts.add(new Cut(piece, Math.min(start, end), Math.max(start, end)));
                }
            }
            taken.add(link);
        }
        cuts.sort(Comparator.comparingDouble(Cut::from).thenComparingInt(Cut::piece));
        return cuts;
    }

    /** A link of the stretch on the carriageway with more of its events; of two with as many, the one of the lower number. */
    private int mainLink(Hotspot hotspot) {
        Map<Integer, Integer> events = new HashMap<>();
        hotspot.spans().forEach(span -> events.merge(chainage.strand(span.link()), span.incidents(), Integer::sum));
        return hotspot.spans().stream()
                .map(Hotspot.Span::link)
                .max(Comparator.<Integer>comparingInt(link -> events.getOrDefault(chainage.strand(link), 0))
                        .thenComparing(chainage::strand, Comparator.reverseOrder()))
                .orElseThrow();
    }
}
