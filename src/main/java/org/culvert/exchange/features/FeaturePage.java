package org.culvert.exchange.features;

import java.time.Instant;
import java.util.List;

/**
 * A page of features (RFC 7946).
 *
 * @param type always {@code FeatureCollection}
 * @param timeStamp when it was read
 * @param numberMatched how many features there are in all pages
 * @param numberReturned how many are here
 * @param links the next page among them, where there is one
 */
public record FeaturePage(
        String type,
        Instant timeStamp,
        long numberMatched,
        int numberReturned,
        List<WebLink> links,
        List<MapFeature> features) {}
