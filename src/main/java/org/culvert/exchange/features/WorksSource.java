package org.culvert.exchange.features;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.culvert.exchange.StretchShapes;
import org.culvert.hotspot.works.WorksService;
import org.culvert.hotspot.works.WorksService.WorksView;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.jspecify.annotations.Nullable;

/** Works against collisions, newest record first. */
@ApplicationScoped
class WorksSource implements FeatureSource {
    private static final int READ_AT_ONCE = 200;

    private final WorksService works;
    private final StretchShapes shapes;
    private final RegionService region;

    WorksSource(WorksService works, StretchShapes shapes, RegionService region) {
        this.works = works;
        this.shapes = shapes;
        this.region = region;
    }

    @Override
    public String id() {
        return "works";
    }

    @Override
    public String title() {
        return "Works against collisions";
    }

    @Override
    public String description() {
        return "What was built or done on a stretch of road against collisions, drawn on the network that is current.";
    }

    @Override
    public ShapeType shapeType() {
        return ShapeType.MULTI_LINE_STRING;
    }

    @Override
    public Class<? extends MapFeature> feature() {
        return WorksFeature.class;
    }

    @Override
    public Class<? extends Record> properties() {
        return WorksProperties.class;
    }

    @Override
    public Map<String, String> words() {
        return Map.ofEntries(
                Map.entry("kind", "Kind of works, such as fence or crossing"),
                Map.entry("words", "What was built or done"),
                Map.entry("road", "Label of the road"),
                Map.entry("fromChainageMetres", "Chainage at which they begin, in metres"),
                Map.entry("toChainageMetres", "Chainage at which they end, in metres"),
                Map.entry("endsMetres", "How far beyond each end animals may walk round them, in metres"),
                Map.entry("builtFrom", "First day of building"),
                Map.entry("builtUntilYear", "Year of the last day of building; null while they are under way"),
                Map.entry("builtUntilDayOfYear", "That day, counted from 1 for 1 January"),
                Map.entry("endedOnYear", "Year in which they stopped working; null where they still do"),
                Map.entry("endedOnDayOfYear", "The day of that year, counted from 1 for 1 January"),
                Map.entry("effortChange", "How looking for and answering changed meanwhile"),
                Map.entry("publicityChange", "How many more or fewer people came to know whom to ring"));
    }

    @Override
    public Set<String> filters() {
        return Set.of("kind", "road", "builtUntilYear", "endedOnYear");
    }

    @Override
    public String time() {
        return "builtFrom";
    }

    @Override
    public Slice page(FeatureQuery query, int limit, @Nullable String after) {
        UUID before = after == null ? null : Identifiers.find(after);
        if (after != null && before == null) {
            throw InvalidException.of("cursor", "This is no cursor.", "that of a next link");
        }
        List<MapFeature> features = new ArrayList<>();
        UUID last = before;
        while (true) {
            Page<WorksView> read = works.listWorks(READ_AT_ONCE, last);
            for (WorksView one : read.items()) {
                MapFeature found = findFitting(one, query).orElse(null);
                if (found != null && features.size() == limit) {
                    return new Slice(features, features.get(limit - 1).id().toString());
                }
                if (found != null) {
                    features.add(found);
                }
                last = one.id();
            }
            if (read.next() == null) {
                return new Slice(features, null);
            }
        }
    }

    @Override
    public long count(FeatureQuery query) {
        long count = 0;
        UUID last = null;
        while (true) {
            Page<WorksView> read = works.listWorks(READ_AT_ONCE, last);
            for (WorksView one : read.items()) {
                count += findFitting(one, query).isPresent() ? 1 : 0;
                last = one.id();
            }
            if (read.next() == null) {
                return count;
            }
        }
    }

    @Override
    public Optional<MapFeature> find(String id) {
        UUID asked = Identifiers.find(id);
        if (asked == null) {
            return Optional.empty();
        }
        try {
            WorksView found = works.getWorks(asked);
            return Optional.of(feature(found, lines(found)));
        } catch (NotFoundException none) {
            return Optional.empty();
        }
    }

    private Optional<MapFeature> findFitting(WorksView one, FeatureQuery query) {
        if (!query.time().isEver() && !query.time().meets(one.builtFrom(), region.zone())
                || !query.fits(WorksProperties.of(one))) {
            return Optional.empty();
        }
        List<double[][]> lines = lines(one);
        return query.lies(lines) ? Optional.of(feature(one, lines)) : Optional.empty();
    }

    private List<double[][]> lines(WorksView one) {
        return shapes.find(one.road(), one.fromChainageMetres(), one.toChainageMetres());
    }

    private static MapFeature feature(WorksView one, List<double[][]> lines) {
        return new WorksFeature(
                "Feature", one.id(), lines.isEmpty() ? null : Shape.lines(lines), WorksProperties.of(one), null);
    }
}
