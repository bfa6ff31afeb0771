package org.culvert.road.network;

/**
 * A point on a link.
 *
 * @param link number of the link
 * @param metres from its from-node, 0 to its length
 */
public record LinkPoint(int link, double metres) {}
