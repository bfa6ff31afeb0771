package org.culvert.hotspot.beside;

import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.stats.Hotspot;

/**
 * Which hotspots stay when the bandwidth is another.
 *
 * @param simulations how many sets were simulated at each
 */
public record Sensitivity(String sentence, int simulations, List<Bandwidth> bandwidths) {
    /**
     * The search at another bandwidth.
     *
     * @param timesBandwidth 0.5 or 2
     * @param bandwidthMetres the bandwidth: reach, or sigma of the heat kernel
     * @param hotspots how many were found at it
     * @param stay ranks of the run's hotspots that were found, at least half of the shorter stretch on the other
     * @param go ranks of those that were not
     * @param others how many were found that the run has not
     */
    public record Bandwidth(
            double timesBandwidth,
            double bandwidthMetres,
            int hotspots,
            List<Integer> stay,
            List<Integer> go,
            int others) {}

    /** The search at so many times the bandwidth. */
    @FunctionalInterface
    public interface Search {
        List<Hotspot> at(double timesBandwidth);
    }

    public static Sensitivity ask(List<Hotspot> hotspots, double bandwidthMetres, int simulations, Search search) {
        List<Bandwidth> bandwidths = new ArrayList<>();
        for (double times : new double[] {0.5, 2}) {
            List<Hotspot> found = search.at(times);
            List<Integer> stay = new ArrayList<>();
            List<Integer> go = new ArrayList<>();
            for (Hotspot hotspot : hotspots) {
                (Overlap.isAmong(hotspot, found) ? stay : go).add(hotspot.rank());
            }
            int others = (int) found.stream()
                    .filter(hotspot -> !Overlap.isAmong(hotspot, hotspots))
                    .count();
            bandwidths.add(
                    new Bandwidth(times, Figures.rounded(times * bandwidthMetres, 1), found.size(), stay, go, others));
        }
        return new Sensitivity(
                "The same search at half and at twice the bandwidth, with " + simulations + " simulated sets each. A"
                        + " hotspot that stays hangs less on a choice that nobody can justify to the metre. What is found at"
                        + " another bandwidth alone is not claimed: choosing among bandwidths would name too much.",
                simulations,
                bandwidths);
    }
}
