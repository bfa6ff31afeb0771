package org.culvert.road;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Links of the current network as a GeoJSON feature collection (RFC 7946).
 *
 * @param type always {@code FeatureCollection}
 * @param networkNumber version of the network
 * @param numberReturned number of features here
 * @param next cursor of the next page, or null on the last
 */
public record RoadLinkFeatures(
        String type,
        int networkNumber,
        int numberReturned,
        @Nullable String next,
        List<Feature> features) {

    /** One link; {@code type} is always {@code Feature}. */
    public record Feature(String type, UUID id, Geometry geometry, Properties properties) {}

    /** Longitude before latitude, seven decimals; {@code type} is always {@code LineString}. */
    public record Geometry(String type, double[][] coordinates) {}

    /**
     * What is known of a link; null where it is not.
     *
     * @param roadName name or label of its road
     * @param lastingId what it is called from version to version, as long as its course does not change
     * @param oneWay whether it is travelled along its course only
     */
    public record Properties(
            String roadName,
            @Nullable String ref,
            @Nullable String roadClass,
            @Nullable Integer speedLimitKmh,
            @Nullable Integer aadt,
            @Nullable String owner,
            @Nullable String carriageway,
            int level,
            String structure,
            double fromChainageMetres,
            double toChainageMetres,
            double lengthMetres,
            @Nullable Boolean oneWay,
            @Nullable Integer lanes,
            String lastingId) {}
}
