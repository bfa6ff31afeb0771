package org.culvert.release.file;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * What came of a file.
 *
 * @param sha256 of its octets
 * @param features that it has
 * @param entered how many records were made of them
 * @param leftOut number of features of which none was made, by reason
 * @param ids of the records, in the order of the file
 */
public record FeatureFileView(
        UUID importId, String sha256, int features, int entered, Map<String, Integer> leftOut, List<UUID> ids) {}
