package org.culvert.hotspot.stats.rate;

import java.util.List;

/**
 * The incidents along one unbroken piece of road. Immutable.
 *
 * <p>A road with a gap, or with two carriageways counted apart, is several pieces.
 *
 * @param road its name
 * @param fromChainageMetres where it starts
 * @param toChainageMetres where it ends, greater
 * @param chainagesMetres where the incidents are, in any order on the way in and in order on the way out
 */
public record RoadChainages(
        String road, double fromChainageMetres, double toChainageMetres, List<Double> chainagesMetres) {
    public RoadChainages {
        if (!(fromChainageMetres < toChainageMetres)
                || !Double.isFinite(fromChainageMetres)
                || !Double.isFinite(toChainageMetres)) {
            throw new IllegalArgumentException("road " + road + " needs a start and an end after it");
        }
        for (double chainage : chainagesMetres) {
            if (!(chainage >= fromChainageMetres && chainage <= toChainageMetres)) {
                throw new IllegalArgumentException("an incident at " + chainage + " m is not on road " + road
                        + " from " + fromChainageMetres + " to " + toChainageMetres
                        + " m: one of unknown place must be left out and counted apart");
            }
        }
        chainagesMetres = chainagesMetres.stream().sorted().toList();
    }

    /** Length in metres. */
    public double lengthMetres() {
        return toChainageMetres - fromChainageMetres;
    }

    /** Incidents from a chainage on and before another; at the road's very end too, where the other is the end. */
    int count(double from, double to) {
        int last = to >= toChainageMetres ? chainagesMetres.size() : firstAtOrAfter(to);
        return last - firstAtOrAfter(from);
    }

    private int firstAtOrAfter(double chainage) {
        int low = 0;
        int high = chainagesMetres.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (chainagesMetres.get(middle) < chainage) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
