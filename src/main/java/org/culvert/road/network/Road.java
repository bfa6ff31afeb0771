package org.culvert.road.network;

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
}
