package org.culvert.exchange.files;

import java.util.Map;
import java.util.UUID;
import org.culvert.road.traffic.TrafficFileTrial;
import org.jspecify.annotations.Nullable;

/**
 * What came of a file, or what would come of it.
 *
 * @param madeId network of roads, or import of land, sites or counts; null of a trial
 * @param networkNumber which version of the roads it is; null of other files
 * @param features how many the file has
 * @param entered how many links, land areas, sites or counts there are now of it
 * @param keptLinks how many links were there before; null of other files
 * @param kilometres of road; null of other files
 * @param leftOut how many features became nothing, by reason
 * @param notUnderstood how many values made no sense, by what they should have been
 * @param trial what was understood of each row where nothing was to be entered yet; else null
 */
public record FileResult(
        @Nullable UUID madeId,
        @Nullable Integer networkNumber,
        long features,
        long entered,
        @Nullable Integer keptLinks,
        @Nullable Double kilometres,
        Map<String, Integer> leftOut,
        Map<String, Integer> notUnderstood,
        @Nullable TrafficFileTrial trial) {
    boolean isOfATrial() {
        return trial != null;
    }
}
