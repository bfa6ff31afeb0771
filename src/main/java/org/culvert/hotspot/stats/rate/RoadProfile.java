package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Basis;
import org.culvert.hotspot.stats.rate.Windows.Window;

/**
 * An unbroken piece of road with its incidents, and what is known of it from section to section. Immutable.
 *
 * @param road the road and its incidents
 * @param sections from its start to its end, each starting where the one before ends
 */
public record RoadProfile(RoadChainages road, List<Section> sections) {
    private static final double TOUCH_METRES = 1e-6;

    /**
     * A part of the road that is alike throughout.
     *
     * @param fromChainageMetres where it starts
     * @param toChainageMetres where it ends, greater
     * @param aadt vehicles a day, above 0; NaN where not known
     * @param roadClass class of road
     * @param treated whether works against collisions stand on it
     */
    public record Section(
            double fromChainageMetres, double toChainageMetres, double aadt, String roadClass, boolean treated) {
        public Section {
            if (!(fromChainageMetres < toChainageMetres)) {
                throw new IllegalArgumentException("a section goes from a chainage to a greater one");
            }
        }
    }

    public RoadProfile {
        sections = List.copyOf(sections);
        double reached = road.fromChainageMetres();
        for (Section section : sections) {
            if (Math.abs(section.fromChainageMetres() - reached) > TOUCH_METRES) {
                throw new IllegalArgumentException("the sections of road " + road.road() + " leave a gap or overlap at "
                        + reached + " m; one of unknown traffic is a section too");
            }
            reached = section.toChainageMetres();
        }
        if (Math.abs(road.toChainageMetres() - reached) > TOUCH_METRES) {
            throw new IllegalArgumentException("the sections of road " + road.road() + " end at " + reached
                    + " m, and the road at " + road.toChainageMetres() + " m");
        }
    }

    /**
     * The road cut at every change of section, and within sections into segments: sites for a model, which share no incident
     * and lose none.
     *
     * @param longestMetres length of a segment that no section's end cuts short, above 0
     * @param years for which incidents were counted
     */
    public List<Site> sites(double longestMetres, double years) {
        if (!(longestMetres > 0 && Double.isFinite(longestMetres))) {
            throw new IllegalArgumentException("a segment needs a length above 0");
        }
        Windows.requireFew(road, longestMetres);
        List<Site> sites = new ArrayList<>();
        for (int i = 0; i < sections.size(); i++) {
            Section section = sections.get(i);
            double from = i == 0 ? road.fromChainageMetres() : section.fromChainageMetres();
            double end = i + 1 == sections.size()
                    ? road.toChainageMetres()
                    : sections.get(i + 1).fromChainageMetres();
            int pieces = (int) Math.max(1, Math.ceil((end - from) / longestMetres - 1e-9));
            for (int piece = 0; piece < pieces; piece++) {
                double start = from + piece * longestMetres;
                double to = piece + 1 == pieces ? end : from + (piece + 1) * longestMetres;
                sites.add(new Window(road.road(), start, to, road.count(start, to))
                        .site(years, section.aadt(), section.roadClass(), section.treated()));
            }
        }
        return sites;
    }

    /**
     * Incidents that a model expects on part of the road: the sum over its sections.
     *
     * @param fromChainageMetres from here
     * @param toChainageMetres to here, greater; beyond the road's ends nothing is expected
     */
    public double expected(
            SafetyPerformance performance, double fromChainageMetres, double toChainageMetres, double years) {
        double sum = 0;
        for (Section section : sections) {
            double length = Math.min(toChainageMetres, section.toChainageMetres())
                    - Math.max(fromChainageMetres, section.fromChainageMetres());
            if (length > 0) {
                sum += performance.expected(length, years, section.aadt(), section.roadClass());
            }
        }
        return sum;
    }

    /** Why a model expects nothing of this road, or nothing where it does. */
    String obstacle(SafetyPerformance performance) {
        for (Section section : sections) {
            String obstacle = performance.design().obstacle(section.aadt(), section.roadClass());
            if (!obstacle.isEmpty()) {
                return obstacle;
            }
        }
        return "";
    }

    /** Whether works stand on any of a part of the road. */
    public boolean isTreated(double fromChainageMetres, double toChainageMetres) {
        return sections.stream()
                .anyMatch(section -> section.treated() && touches(section, fromChainageMetres, toChainageMetres));
    }

    /** Burden where the traffic on any of a part of the road is not known. */
    public Basis basis(SafetyPerformance performance, double fromChainageMetres, double toChainageMetres) {
        return sections.stream()
                        .filter(section -> touches(section, fromChainageMetres, toChainageMetres))
                        .anyMatch(section -> performance.basis(section.aadt()) == Basis.BURDEN)
                ? Basis.BURDEN
                : Basis.RISK;
    }

    private static boolean touches(Section section, double from, double to) {
        return section.fromChainageMetres() < to && from < section.toChainageMetres();
    }
}
