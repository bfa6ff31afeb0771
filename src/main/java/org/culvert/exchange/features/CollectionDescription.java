package org.culvert.exchange.features;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A collection as it is described.
 *
 * @param extent what holds all features, or null where nobody has said which region this is
 * @param itemType always {@code feature}
 * @param crs coordinate systems: longitude and latitude on WGS 84 alone
 */
public record CollectionDescription(
        String id,
        String title,
        String description,
        List<WebLink> links,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Extent extent,
        String itemType,
        List<String> crs) {
    static final String CRS84 = "http://www.opengis.net/def/crs/OGC/1.3/CRS84";

    /** Where and when; {@code temporal} is missing where features have no time. */
    public record Extent(
            Spatial spatial,

            @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable
            Temporal temporal) {}

    /**
     * @param bbox west, south, east, north of one box
     */
    public record Spatial(List<double[]> bbox, String crs) {}

    /**
     * @param interval one interval, whose ends are null: open
     */
    public record Temporal(List<List<@Nullable String>> interval, String trs) {
        static final Temporal OPEN = new Temporal(
                List.of(java.util.Arrays.asList(null, null)), "http://www.opengis.net/def/uom/ISO-8601/0/Gregorian");
    }
}
