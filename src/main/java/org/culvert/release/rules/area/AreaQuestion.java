package org.culvert.release.rules.area;

import java.util.List;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.UncertainPosition;

/**
 * What is asked of {@link AreaFinder}.
 *
 * @param origin where the animal comes from
 * @param limits at least one; all hold together
 * @param lands what the maps say that are entered; those that ended are left out before
 * @param keepToCatchment whether a rule keeps it to the catchment that it comes from
 */
public record AreaQuestion(UncertainPosition origin, List<Limit> limits, List<Land> lands, boolean keepToCatchment) {
    public AreaQuestion {
        limits = List.copyOf(limits);
        lands = List.copyOf(lands);
        if (limits.isEmpty()) {
            throw new IllegalArgumentException("an area needs at least one limit");
        }
    }
}
