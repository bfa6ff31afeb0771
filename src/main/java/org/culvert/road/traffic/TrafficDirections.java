package org.culvert.road.traffic;

/** Whether figures are of both directions of a road together or of one. */
public enum TrafficDirections {
    both,
    one
}
