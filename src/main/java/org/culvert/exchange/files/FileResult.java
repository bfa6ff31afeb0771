package org.culvert.exchange.files;

import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What came of a file.
 *
 * @param madeId network of roads, or import of land or sites
 * @param networkNumber which version of the roads it is; null of other files
 * @param features how many the file has
 * @param entered how many links, land areas or sites there are now of it
 * @param keptLinks how many links were there before; null of other files
 * @param kilometres of road; null of other files
 * @param leftOut how many features became nothing, by reason
 * @param notUnderstood how many values made no sense, by what they should have been
 */
public record FileResult(
        UUID madeId,
        @Nullable Integer networkNumber,
        long features,
        long entered,
        @Nullable Integer keptLinks,
        @Nullable Double kilometres,
        Map<String, Integer> leftOut,
        Map<String, Integer> notUnderstood) {}
