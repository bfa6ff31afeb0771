package org.culvert.exchange.features;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.culvert.exchange.features.CollectionDescription.Extent;
import org.culvert.exchange.features.CollectionDescription.Spatial;
import org.culvert.exchange.features.CollectionDescription.Temporal;
import org.culvert.platform.RegionService;
import org.culvert.platform.RegionService.RegionDescription;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.jspecify.annotations.Nullable;

/** Where features lie: in the region, and on its roads. That of single features would tell where the outermost one is. */
@ApplicationScoped
class Extents {
    private record OfRoads(UUID networkId, double[] box) {}

    private final RegionService region;
    private final RoadService roads;
    private final AtomicReference<@Nullable OfRoads> known = new AtomicReference<>();

    Extents(RegionService region, RoadService roads) {
        this.region = region;
        this.roads = roads;
    }

    @Nullable
    Extent of(FeatureSource source) {
        RegionDescription told = region.findDescription().orElse(null);
        if (told == null) {
            return null;
        }
        double[] box = {told.west(), told.south(), told.east(), told.north()};
        CurrentRoads current = roads.findCurrent().orElse(null);
        return new Extent(
                new Spatial(List.of(current == null ? box : union(box, ofRoads(current))), CollectionDescription.CRS84),
                source.time() == null ? null : Temporal.OPEN);
    }

    private double[] ofRoads(CurrentRoads current) {
        OfRoads last = known.get();
        if (last == null || !last.networkId().equals(current.networkId())) {
            double[] box = {180, 90, -180, -90};
            for (int link = 0; link < current.network().linkCount(); link++) {
                double[] vertices = current.network().link(link).vertices();
                for (int i = 0; i < vertices.length; i += 2) {
                    box = union(box, new double[] {vertices[i], vertices[i + 1], vertices[i], vertices[i + 1]});
                }
            }
            last = new OfRoads(current.networkId(), box);
            known.set(last);
        }
        return last.box();
    }

    private static double[] union(double[] one, double[] other) {
        return new double[] {
            Math.min(one[0], other[0]),
            Math.min(one[1], other[1]),
            Math.max(one[2], other[2]),
            Math.max(one[3], other[3])
        };
    }
}
