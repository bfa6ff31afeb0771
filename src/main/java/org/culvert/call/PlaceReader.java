package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.NotFoundException;

/** Shows places to the rooms above. */
@ApplicationScoped
public class PlaceReader {
    private final Ledger.Places places;

    PlaceReader(Ledger.Places places) {
        this.places = places;
    }

    @Transactional
    public PlaceView getPlace(UUID id) {
        return places.findByIdOptional(id).map(Place::view).orElseThrow(() -> new NotFoundException("place", id));
    }

    /** Places by identifier, in one question; those that are not there are left out. */
    @Transactional
    public Map<UUID, PlaceView> placesById(Collection<UUID> ids) {
        return ids.isEmpty()
                ? Map.of()
                : places.list("id in ?1", Set.copyOf(ids)).stream().collect(Collectors.toMap(Place::id, Place::view));
    }
}
