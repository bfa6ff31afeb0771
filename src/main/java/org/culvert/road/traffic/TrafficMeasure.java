package org.culvert.road.traffic;

/** What vehicles a day are an average of. */
public enum TrafficMeasure {
    /** All days of a year, where need be by factors from some of them: AADT. */
    annualAverage,
    /** The days that were counted and no others; nobody made an annual average of it. */
    averageOfDaysCounted
}
