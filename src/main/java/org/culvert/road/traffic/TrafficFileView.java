package org.culvert.road.traffic;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * What came of a file of counts.
 *
 * @param sha256 of its octets
 * @param features that it has
 * @param entered how many records were made of them
 * @param leftOut number of features of which none was made, by reason
 * @param refused the first thousand rows that were refused, each with what is wrong
 * @param ids of the records, in the order of the file
 */
public record TrafficFileView(
        UUID importId,
        String sha256,
        int features,
        int entered,
        Map<String, Integer> leftOut,
        List<TrafficFileTrial.CountRow> refused,
        List<UUID> ids) {}
