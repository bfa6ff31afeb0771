package org.culvert.care.clutch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What somebody saw when light was held to the eggs. */
@Entity
@Table(name = "candlings")
class Candling extends ClutchPart {
    int developing;
    int notDeveloping;
    int cannotTell;
    String candledBy;

    @Nullable
    String words;

    protected Candling() {}

    Candling(UUID clutchId, ClutchEntries.CandlingEntry entry, Instant at) {
        super(clutchId, at);
        this.developing = entry.developing();
        this.notDeveloping = entry.notDeveloping();
        this.cannotTell = entry.cannotTell();
        this.candledBy = entry.candledBy();
        this.words = entry.words();
    }
}
