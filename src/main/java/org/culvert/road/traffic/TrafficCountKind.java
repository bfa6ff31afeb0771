package org.culvert.road.traffic;

/** How traffic is known. */
public enum TrafficCountKind {
    /** By a counter that stands there all the year. */
    continuous,
    /** By counting on some days. */
    shortTerm,
    /** By a model, by growth from other years, or by eye. */
    estimated
}
