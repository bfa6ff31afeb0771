package org.culvert.platform.sight;

import java.util.Map;

/** A view that tells of a place, and how it looks where the place may only be told roughly. */
public interface Generalised {
    /**
     * What remains of the fields that tell of the place; those that are missing are withheld.
     *
     * @param gridDegrees side of the cell within which the place is told; 0 withholds it
     */
    Map<String, Object> generalised(double gridDegrees);
}
