package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** A moving of places to a version of the roads, as it was asked for; it never changes. */
@Entity
@Table(name = "place_moves")
class PlaceMove extends Recorded {
    UUID roadNetworkId;

    protected PlaceMove() {}

    PlaceMove(UUID roadNetworkId) {
        this.roadNetworkId = roadNetworkId;
    }
}
