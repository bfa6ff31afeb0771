package org.culvert.road.network;

import java.util.List;
import java.util.Map;

/**
 * What became of the lines of a source.
 *
 * @param lines lines given
 * @param linesUsed lines of which links were made
 * @param links pieces of road between nodes
 * @param nodes junctions, ends, and places where one line goes on in another
 * @param joinedNodes nodes at which two or more ends or passing lines meet
 * @param unnamedLines lines with neither a name nor a number
 * @param metres length of the whole network
 * @param leftOut number of lines left out by reason
 * @param leftOutExamples keys of the first lines left out, with the reason, to find them in the source
 */
public record BuildReport(
        int lines,
        int linesUsed,
        int links,
        int nodes,
        int joinedNodes,
        int unnamedLines,
        double metres,
        Map<String, Integer> leftOut,
        List<String> leftOutExamples) {}
