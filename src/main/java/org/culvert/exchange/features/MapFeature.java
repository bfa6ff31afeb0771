package org.culvert.exchange.features;

import java.util.List;
import org.culvert.platform.sight.EveryFieldTold;
import org.jspecify.annotations.Nullable;

/**
 * A feature of GeoJSON (RFC 7946): a record for each collection, so that the table of who sees what has a row for each. Its
 * properties are scalars, and each is in every feature, null where it is not known.
 */
public sealed interface MapFeature extends EveryFieldTold
        permits RoadLinkFeature, WorksFeature, HotspotFeature, CollisionFeature, IncidentFeature {
    /** Its identifier within the collection, which stays. */
    Object id();

    @Nullable
    Shape geometry();

    Record properties();

    /** The same with links, as it is told by itself. */
    MapFeature linked(List<WebLink> links);
}
