package org.culvert.exchange.features;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.culvert.platform.sight.Resources;
import org.culvert.platform.sight.Sight;

/** Which collections there are, and what of them the asker may see: by the table of who sees what. */
@ApplicationScoped
class FeatureCatalogue {
    private final List<FeatureSource> sources;
    private final Sight sight;

    FeatureCatalogue(Instance<FeatureSource> sources, Sight sight) {
        this.sources =
                sources.stream().sorted(Comparator.comparing(FeatureSource::id)).toList();
        this.sight = sight;
    }

    /** Those that the asker may see. */
    List<FeatureSource> listOpen() {
        return sources.stream().filter(this::isOpen).toList();
    }

    Optional<FeatureSource> find(String id) {
        return sources.stream().filter(source -> source.id().equals(id)).findFirst();
    }

    boolean isOpen(FeatureSource source) {
        return sight.sees(Resources.name(source.feature()), "properties") && !source.isClosed();
    }

    /** The properties that the asker sees in any feature of a collection, in their order. */
    List<FeatureProperty> properties(FeatureSource source) {
        String resource = Resources.name(source.properties());
        return Arrays.stream(source.properties().getRecordComponents())
                .filter(component -> sight.sees(resource, component.getName()))
                .map(component -> FeatureProperty.of(
                        component,
                        Objects.requireNonNull(
                                source.words().get(component.getName()), "nothing says what " + component + " is"),
                        source.filters().contains(component.getName())))
                .toList();
    }

    /** Those that features can be asked for by. */
    List<FeatureProperty> filters(FeatureSource source) {
        return properties(source).stream().filter(FeatureProperty::filter).toList();
    }
}
