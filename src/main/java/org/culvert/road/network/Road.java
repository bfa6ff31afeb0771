package org.culvert.road.network;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A road: all links of one name (or number, where there is no name) and one carriageway. A line with neither is a road of
 * its own.
 *
 * @param number from 0 within the network
 * @param label what to call it: the name or number, or for instance "unnamed residential (line 12)"
 * @param ref its number where it has one besides the name
 * @param carriageway null where the road is not divided or the source does not say
 * @param named whether the label is a name that people would say
 * @param links its links in the order of the source
 */
public record Road(
        int number,
        String label,
        @Nullable String ref,
        @Nullable String carriageway,
        boolean named,
        int[] links) {
    /** The label with the carriageway where there is one. */
    public String fullLabel() {
        return carriageway == null ? label : label + " (" + carriageway + ")";
    }

    /** Whether two words mean the same carriageway or direction: the same words, or the same point of the compass. */
    public static boolean sameCarriageway(String one, String other) {
        if (one.strip().equalsIgnoreCase(other.strip())) {
            return true;
        }
        Optional<Double> here = TravelDirection.degrees(one);
        Optional<Double> there = TravelDirection.degrees(other);
        return here.isPresent() && there.isPresent() && TravelDirection.between(here.get(), there.get()) <= 22.5;
    }
}
