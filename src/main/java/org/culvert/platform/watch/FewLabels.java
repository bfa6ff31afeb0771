package org.culvert.platform.watch;

import io.micrometer.core.instrument.Meter;
import io.micrometer.core.instrument.Tag;
import io.micrometer.core.instrument.config.MeterFilter;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Set;

/** Keeps what askers make up out of the labels: a figure for each would fill the memory, and may name somebody. */
@Singleton
class FewLabels {
    private static final String OTHER = "other";
    private static final Set<String> METHODS =
            Set.of("GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "CONNECT");

    @Produces
    @Singleton
    MeterFilter ofRequests() {
        return new MeterFilter() {
            @Override
            public Meter.Id map(Meter.Id id) {
                return id.getName().startsWith("http.server") ? bounded(id) : id;
            }
        };
    }

    private static Meter.Id bounded(Meter.Id id) {
        List<Tag> tags = id.getTags().stream().map(FewLabels::bounded).toList();
        return id.replaceTags(tags);
    }

    private static Tag bounded(Tag tag) {
        boolean known = switch (tag.getKey()) {
            case "method" -> METHODS.contains(tag.getValue());
            case "uri" -> Operation.isKnown(tag.getValue());
            default -> true;
        };
        return known ? tag : Tag.of(tag.getKey(), OTHER);
    }
}
