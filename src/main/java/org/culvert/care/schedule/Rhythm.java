package org.culvert.care.schedule;

/** How often a step is done, counted from its first day. */
public enum Rhythm {
    /** One time, on whichever of the step's days. */
    once,
    daily,
    everyDays,
    weekly
}
