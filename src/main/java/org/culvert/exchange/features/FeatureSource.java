package org.culvert.exchange.features;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** One collection: what its features are, who may see it, and its features a page at a time. */
interface FeatureSource {
    /**
     * A page.
     *
     * @param next after what the next page begins, or null on the last
     */
    record Slice(List<MapFeature> features, @Nullable String next) {}

    /** Its name in addresses. */
    String id();

    String title();

    String description();

    ShapeType shapeType();

    /** The record of its features, by which the table says who sees the collection. */
    Class<? extends MapFeature> feature();

    /** The record of its features' properties, by which the table says who sees which. */
    Class<? extends Record> properties();

    /** What each property is, by its name. */
    Map<String, String> words();

    /** Names of the properties that features can be asked for by. */
    Set<String> filters();

    /** The one property that {@code datetime} is about, or null where there is none. */
    @Nullable
    String time();

    /** Whether a setting of the network closes it to the asker although the table would let them see it. */
    default boolean isClosed() {
        return false;
    }

    /**
     * Features in an order that stays.
     *
     * @param after the cursor of the page before, or null for the first
     * @throws org.culvert.platform.InvalidException naming {@code cursor} where it is none
     */
    Slice page(FeatureQuery query, int limit, @Nullable String after);

    /** How many features there are in all pages together. */
    long count(FeatureQuery query);

    /** One feature, or empty where there is none, or none that the asker may see. */
    Optional<MapFeature> find(String id);
}
