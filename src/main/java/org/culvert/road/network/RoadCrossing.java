package org.culvert.road.network;

/**
 * A straight line meets a road.
 *
 * @param link the link that it meets
 * @param metresFromStart how far along the line, in metres of the network's plane
 */
public record RoadCrossing(int link, double metresFromStart) {}
