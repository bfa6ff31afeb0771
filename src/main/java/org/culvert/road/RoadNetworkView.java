package org.culvert.road;

import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;

/**
 * A network version as shown.
 *
 * @param number 1 for the first import, and so on
 * @param sourceCrs reference system in which the source gave its coordinates
 * @param attributeNames which attribute of the source was read as what
 * @param joinedNodes nodes at which two or more lines meet
 * @param keptLinks links whose course is that of a link of the version before: they keep its lasting identifier
 * @param leftOut number of lines left out, by reason
 * @param notUnderstood number of values that made no sense and count as unknown, by what they should have been
 * @param bbox west, south, east, north
 */
public record RoadNetworkView(
        UUID id,
        int number,
        String name,
        Instant recordedAt,
        String sourceCrs,
        String sha256,
        Map<String, String> attributeNames,
        int lines,
        int linesUsed,
        int links,
        int nodes,
        int joinedNodes,
        int unnamedLines,
        int keptLinks,
        double kilometres,
        Map<String, Integer> leftOut,
        Map<String, Integer> notUnderstood,
        double[] bbox,
        RecordView record) {}
