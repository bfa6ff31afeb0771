package org.culvert.road;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.culvert.platform.ConflictException;
import org.culvert.road.network.Road;
import org.culvert.road.network.RoadAttributes;
import org.jspecify.annotations.Nullable;

/**
 * The current roads. Every use asks the database, in one small query, whether a newer network has been imported, so that
 * several servers on one database follow; only one thread then loads it.
 */
@ApplicationScoped
public class RoadService implements RoadFacts {
    /** A road as it is suggested while someone types. */
    public record Suggestion(
            String roadName, @Nullable String ref, @Nullable String carriageway) {}

    private final NetworkStore store;
    private final AtomicReference<@Nullable CurrentRoads> loaded = new AtomicReference<>();
    private final Object loading = new Object();

    RoadService(NetworkStore store) {
        this.store = store;
    }

    /** The newest network, or empty before the first import. */
    public Optional<CurrentRoads> findCurrent() {
        Optional<NetworkStore.Newest> newest = store.findNewest();
        if (newest.isEmpty()) {
            return Optional.empty();
        }
        UUID id = newest.get().id();
        CurrentRoads known = loaded.get();
        if (known != null && known.networkId().equals(id)) {
            return Optional.of(known);
        }
        synchronized (loading) {
            CurrentRoads meanwhile = loaded.get();
            if (meanwhile == null || !meanwhile.networkId().equals(id)) {
                loaded.set(store.load(id));
            }
            return Optional.ofNullable(loaded.get());
        }
    }

    /**
     * The newest network.
     *
     * @throws ConflictException before the first import
     */
    public CurrentRoads current() {
        return findCurrent().orElseThrow(() -> new ConflictException("No road network has been imported yet."));
    }

    /** The network as this server has just imported it: it need not be read back. */
    void became(CurrentRoads roads) {
        synchronized (loading) {
            CurrentRoads known = loaded.get();
            if (known == null || known.number() < roads.number()) {
                loaded.set(roads);
            }
        }
    }

    @Override
    public Optional<LinkFacts> findLink(UUID roadLinkId) {
        CurrentRoads known = loaded.get();
        if (known != null && known.findLink(roadLinkId).isPresent()) {
            int link = known.findLink(roadLinkId).getAsInt();
            RoadAttributes attributes = known.network().attributes(link);
            return Optional.of(new LinkFacts(
                    roadLinkId,
                    known.network().roadOf(link).label(),
                    attributes.roadClass(),
                    asDouble(attributes.speedLimitKmh()),
                    asDouble(attributes.aadt()),
                    attributes.owner()));
        }
        return store.findFacts(roadLinkId);
    }

    /** Named roads that begin with, or contain, what someone has typed so far. */
    public List<Suggestion> suggestRoads(String typed, int limit) {
        return findCurrent()
                .map(roads -> roads.network().suggestRoads(typed, limit).stream()
                        .map(RoadService::suggestion)
                        .toList())
                .orElse(List.of());
    }

    private static Suggestion suggestion(Road road) {
        return new Suggestion(road.label(), road.ref(), road.carriageway());
    }

    static @Nullable Double asDouble(@Nullable Integer value) {
        return value == null ? null : Double.valueOf(value);
    }
}
