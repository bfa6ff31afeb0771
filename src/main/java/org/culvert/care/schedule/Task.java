package org.culvert.care.schedule;

import java.time.Instant;
import java.time.LocalDate;

/**
 * One time that a step is to be done.
 *
 * @param day what it is called by, with the step's key: counted from the plan's day 0; of a step that is done once its first day
 * @param date the first local date on which it is due
 * @param lastDate the last; later than the first only for a step that is done once
 * @param dueFrom the first instant at which it is due
 * @param dueUntil the first instant at which it is overdue
 */
public record Task(Step step, int day, LocalDate date, LocalDate lastDate, Instant dueFrom, Instant dueUntil) {
    public boolean isOn(LocalDate asked) {
        return !asked.isBefore(date) && !asked.isAfter(lastDate);
    }
}
