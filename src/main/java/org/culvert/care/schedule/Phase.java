package org.culvert.care.schedule;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Steps that hold from a day of the plan on, in place of all that held before.
 *
 * @param fromDay counted from the plan's day 0
 * @param steps their keys differ; none at all is a plan that pauses
 */
public record Phase(int fromDay, List<Step> steps) {
    /** @throws IllegalArgumentException when two steps have one key */
    public Phase {
        steps = List.copyOf(steps);
        Set<String> keys = new HashSet<>();
        for (Step step : steps) {
            if (!keys.add(step.key())) {
                throw new IllegalArgumentException("two steps are called " + step.key());
            }
        }
        if (fromDay < 0) {
            throw new IllegalArgumentException("a plan begins with day 0");
        }
    }
}
