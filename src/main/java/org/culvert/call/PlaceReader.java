package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.UUID;
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
}
