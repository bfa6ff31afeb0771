package org.culvert.exchange.features;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.culvert.geo.Bounds;
import org.culvert.platform.InvalidException;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadLinkFeatures;
import org.culvert.road.RoadLinkReader;
import org.culvert.road.RoadService;
import org.jspecify.annotations.Nullable;

/** Links of the current network, found by its index, in its order. */
@ApplicationScoped
class RoadLinkSource implements FeatureSource {
    private final RoadService roads;

    RoadLinkSource(RoadService roads) {
        this.roads = roads;
    }

    @Override
    public String id() {
        return "road-links";
    }

    @Override
    public String title() {
        return "Road links";
    }

    @Override
    public String description() {
        return "Pieces of road between two junctions, of the network that is current, with what is known of each.";
    }

    @Override
    public ShapeType shapeType() {
        return ShapeType.LINE_STRING;
    }

    @Override
    public Class<? extends MapFeature> feature() {
        return RoadLinkFeature.class;
    }

    @Override
    public Class<? extends Record> properties() {
        return RoadLinkFeatures.Properties.class;
    }

    @Override
    public Map<String, String> words() {
        return Map.ofEntries(
                Map.entry("roadName", "Name or label of the road"),
                Map.entry("ref", "Number of the road"),
                Map.entry("roadClass", "Class of the road, as the imported network has it"),
                Map.entry("speedLimitKmh", "Speed limit in km/h; null where it is not known"),
                Map.entry("aadt", "Vehicles a day, averaged over the year; null where nobody counted"),
                Map.entry("owner", "Who keeps the road"),
                Map.entry("carriageway", "Carriageway, where the road has several"),
                Map.entry("level", "Level above (1) or below (-1) what it crosses"),
                Map.entry("structure", "none, bridge or tunnel"),
                Map.entry("fromChainageMetres", "Chainage at which the link begins, in metres"),
                Map.entry("toChainageMetres", "Chainage at which the link ends, in metres"),
                Map.entry("lengthMetres", "Length along the road, in metres"),
                Map.entry(
                        "oneWay", "Whether it is travelled along its course only; null where the source does not say"),
                Map.entry("lanes", "Number of lanes; null where the source does not say"),
                Map.entry(
                        "lastingId",
                        "Its identifier in every version of the roads, as long as its course does not change"));
    }

    @Override
    public Set<String> filters() {
        return Set.of("roadName", "ref", "roadClass", "speedLimitKmh", "owner", "carriageway", "structure");
    }

    @Override
    public @Nullable String time() {
        return null;
    }

    @Override
    public Slice page(FeatureQuery query, int limit, @Nullable String after) {
        CurrentRoads current = roads.findCurrent().orElse(null);
        if (current == null) {
            return new Slice(List.of(), null);
        }
        int last = linkOf(after, current);
        List<MapFeature> features = new ArrayList<>();
        for (int link : candidates(current, query.box())) {
            if (link <= last) {
                continue;
            }
            RoadLinkFeatures.Feature found = RoadLinkReader.feature(current, link);
            if (!fits(found, query)) {
                continue;
            }
            if (features.size() == limit) {
                return new Slice(features, current.number() + "-" + last);
            }
            features.add(feature(found));
            last = link;
        }
        return new Slice(features, null);
    }

    @Override
    public long count(FeatureQuery query) {
        CurrentRoads current = roads.findCurrent().orElse(null);
        if (current == null) {
            return 0;
        }
        if (query.box() == null && query.equal().isEmpty()) {
            return current.network().linkCount();
        }
        return IntStream.of(candidates(current, query.box()))
                .filter(link -> fits(RoadLinkReader.feature(current, link), query))
                .count();
    }

    @Override
    public Optional<MapFeature> find(String id) {
        UUID asked = Identifiers.find(id);
        CurrentRoads current = roads.findCurrent().orElse(null);
        if (asked == null || current == null) {
            return Optional.empty();
        }
        OptionalInt link = current.findLink(asked);
        return link.isPresent()
                ? Optional.of(feature(RoadLinkReader.feature(current, link.getAsInt())))
                : Optional.empty();
    }

    private static int[] candidates(CurrentRoads current, @Nullable Bounds box) {
        return box == null
                ? IntStream.range(0, current.network().linkCount()).toArray()
                : current.network().linksIn(box);
    }

    private static boolean fits(RoadLinkFeatures.Feature link, FeatureQuery query) {
        return query.fits(link.properties())
                && query.lies(List.<double[][]>of(link.geometry().coordinates()));
    }

    private static MapFeature feature(RoadLinkFeatures.Feature link) {
        return new RoadLinkFeature(
                "Feature", link.id(), Shape.line(link.geometry().coordinates()), link.properties(), null);
    }

    /** A cursor is the version's number and the last link shown: on another version it would mean another link. */
    private static int linkOf(@Nullable String cursor, CurrentRoads current) {
        if (cursor == null) {
            return -1;
        }
        String version = current.number() + "-";
        if (cursor.startsWith(version) && cursor.substring(version.length()).matches("\\d{1,9}")) {
            return Integer.parseInt(cursor.substring(version.length()));
        }
        throw InvalidException.of(
                "cursor",
                "This is no cursor of the current network.",
                "that of a next link; begin again if a new network was imported meanwhile");
    }
}
