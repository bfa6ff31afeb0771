package org.culvert.care.schedule;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A task through the changes of its plan, whether or not the plan asks for it still.
 *
 * @param task as it is asked for, or as it was asked for last
 * @param askedFor whether the last phase that was decided left it in
 * @param since place of the phase with which it came, from 0
 * @param changes how often a later phase changed it, took it out, or asked for it again
 */
public record TaskHistory(Task task, boolean askedFor, int since, int changes) {
    private record Called(String key, int day) {}

    /**
     * All tasks that a plan ever asked for, in the order in which they came.
     *
     * @param phases in the order in which they were decided
     */
    public static List<TaskHistory> of(LocalDate dayZero, ZoneId zone, List<Phase> phases) {
        Map<Called, TaskHistory> told = new LinkedHashMap<>();
        for (int place = 0; place < phases.size(); place++) {
            Set<Called> asked = new HashSet<>();
            for (Task task : new Schedule(dayZero, zone, phases.subList(0, place + 1)).tasks()) {
                var called = new Called(task.step().key(), task.day());
                asked.add(called);
                TaskHistory before = told.get(called);
                told.put(called, before == null ? new TaskHistory(task, true, place, 0) : before.asked(task));
            }
            told.replaceAll((called, history) -> asked.contains(called) ? history : history.leftOut());
        }
        return new ArrayList<>(told.values());
    }

    private TaskHistory asked(Task now) {
        return askedFor && now.equals(task) ? this : new TaskHistory(now, true, since, changes + 1);
    }

    private TaskHistory leftOut() {
        return askedFor ? new TaskHistory(task, false, since, changes + 1) : this;
    }
}
