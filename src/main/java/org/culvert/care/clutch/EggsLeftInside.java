package org.culvert.care.clutch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Somebody's reading of how many eggs are still in the mother. */
@Entity
@Table(name = "eggs_left_inside")
class EggsLeftInside extends ClutchPart {
    int counted;
    String reader;

    @Nullable
    String words;

    protected EggsLeftInside() {}

    EggsLeftInside(UUID clutchId, ClutchEntries.EggsInsideEntry entry, Instant at) {
        super(clutchId, at);
        this.counted = entry.counted();
        this.reader = entry.reader();
        this.words = entry.words();
    }
}
