package org.culvert.road.network;

import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * A place at which traffic was counted or estimated, year by year.
 *
 * @param link that it lies on; of a stretch the one in its middle
 * @param metres from the link's from-node
 * @param links all links that a counted stretch covers; none of a point
 * @param counted whether the figures were counted; else they were estimated
 * @param byYear annual average daily traffic of both directions together by calendar year, at least one
 */
public record TrafficStation(
        int link, double metres, int[] links, boolean counted, NavigableMap<Integer, Double> byYear) {
    public TrafficStation {
        if (byYear.isEmpty()) {
            throw new IllegalArgumentException("a station has a figure of some year");
        }
        links = links.clone();
        byYear = new TreeMap<>(byYear);
    }

    /** What it says of a period: the mean of the years that it knows, and how many these are. */
    public record OfPeriod(double vehiclesPerDay, int years) {}

    /**
     * The traffic of a year: the figure of that year, or on the straight line between those of the nearest years before and
     * after it. Nothing before its first year and after its last.
     */
    public OptionalDouble ofYear(int year) {
        Map.Entry<Integer, Double> before = byYear.floorEntry(year);
        Map.Entry<Integer, Double> after = byYear.ceilingEntry(year);
        if (before == null || after == null) {
            return OptionalDouble.empty();
        }
        if (before.getKey().equals(after.getKey())) {
            return OptionalDouble.of(before.getValue());
        }
        double share = (year - before.getKey()) / (double) (after.getKey() - before.getKey());
        return OptionalDouble.of(before.getValue() + share * (after.getValue() - before.getValue()));
    }

    /** The mean over those years of a period that it knows; of no years where it knows none. */
    public OfPeriod of(int firstYear, int lastYear) {
        double sum = 0;
        int years = 0;
        for (int year = Math.max(firstYear, byYear.firstKey()); year <= Math.min(lastYear, byYear.lastKey()); year++) {
            sum += ofYear(year).orElseThrow();
            years++;
        }
        return new OfPeriod(years == 0 ? Double.NaN : sum / years, years);
    }
}
