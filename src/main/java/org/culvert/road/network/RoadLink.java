package org.culvert.road.network;

/**
 * A piece of road between two nodes, as it is kept. It runs in the direction of increasing chainage.
 *
 * @param fromNode number of the node at its start
 * @param toNode number of the node at its end
 * @param lineKey the source's key of the line that it is a piece of
 * @param lineNumber that line's number in the source, from 0: an unnamed line is a road of its own
 * @param attributes what is known of it
 * @param fromChainageMetres chainage at its start; metres along the link are added to it
 * @param vertices longitude and latitude (or x and y) in turn, in the frame of the network
 */
public record RoadLink(
        int fromNode,
        int toNode,
        String lineKey,
        int lineNumber,
        RoadAttributes attributes,
        double fromChainageMetres,
        double[] vertices) {}
