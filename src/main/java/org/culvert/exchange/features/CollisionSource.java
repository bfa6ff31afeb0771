package org.culvert.exchange.features;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.culvert.exchange.occurrence.OccurrenceFilter;
import org.culvert.exchange.occurrence.OccurrenceService;
import org.culvert.exchange.occurrence.OccurrenceView;
import org.culvert.geo.Bounds;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.jspecify.annotations.Nullable;

/** Occurrences whose cause is a collision: as exactly, as late and as far as occurrences are told to whoever asks. */
@ApplicationScoped
class CollisionSource implements FeatureSource {
    private final OccurrenceService occurrences;
    private final RegionService region;

    CollisionSource(OccurrenceService occurrences, RegionService region) {
        this.occurrences = occurrences;
        this.region = region;
    }

    @Override
    public String id() {
        return "collisions";
    }

    @Override
    public String title() {
        return "Collisions with animals";
    }

    @Override
    public String description() {
        return "Kinds of animals at incidents whose cause is a collision. Unless you may see them exactly, each is told as the"
                + " centre of a cell and some time after it happened; of a sensitive species the cell is larger and only"
                + " the year is told, and some species are not told of at all.";
    }

    @Override
    public ShapeType shapeType() {
        return ShapeType.POINT;
    }

    @Override
    public Class<? extends MapFeature> feature() {
        return CollisionFeature.class;
    }

    @Override
    public Class<? extends Record> properties() {
        return CollisionProperties.class;
    }

    @Override
    public Map<String, String> words() {
        return Map.ofEntries(
                Map.entry("scientificName", "Scientific name, where the kind was recognised"),
                Map.entry("vernacularName", "Name in plain words"),
                Map.entry("taxonRank", "Rank of the name"),
                Map.entry("taxonGroup", "Key of the group of animals"),
                Map.entry("individualCount", "How many animals"),
                Map.entry("cause", "Cause, by its key"),
                Map.entry("eventDay", "Day on which it happened or was reported; null where only the year is told"),
                Map.entry("eventYear", "Year in which it happened or was reported"),
                Map.entry(
                        "coordinateUncertaintyInMeters", "Within how many metres the place is, generalising included"),
                Map.entry("locality", "Name of the road"),
                Map.entry("dataGeneralizations", "What is told roughly, and how"),
                Map.entry("informationWithheld", "What is not told"),
                Map.entry("occurrence", "What it is made of"));
    }

    @Override
    public Set<String> filters() {
        return Set.of("taxonGroup", "scientificName", "cause");
    }

    @Override
    public String time() {
        return "eventDay";
    }

    @Override
    public Slice page(FeatureQuery query, int limit, @Nullable String after) {
        Page<OccurrenceView> page = occurrences.listOccurrences(filter(query, null), limit, after);
        return new Slice(
                page.items().stream().<MapFeature>map(CollisionFeature::of).toList(), page.next());
    }

    @Override
    public long count(FeatureQuery query) {
        return occurrences.countOccurrences(filter(query, null));
    }

    @Override
    public Optional<MapFeature> find(String id) {
        if (!OccurrenceService.isIdentifier(id)) {
            return Optional.empty();
        }
        return occurrences.listOccurrences(filter(FeatureQuery.ALL, id), 1, null).items().stream()
                .<MapFeature>map(CollisionFeature::of)
                .findFirst();
    }

    private OccurrenceFilter filter(FeatureQuery query, @Nullable String id) {
        Bounds box = query.box();
        return new OccurrenceFilter(
                (String) query.wanted("taxonGroup"),
                query.time().firstDay(region.zone()),
                query.time().lastDay(region.zone()),
                box == null ? null : new double[] {box.west(), box.south(), box.east(), box.north()},
                (String) query.wanted("scientificName"),
                (String) query.wanted("cause"),
                true,
                id);
    }
}
