package org.culvert.care.clutch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** In what the eggs lie. */
@Entity
@Table(name = "clutch_set_ups")
class SetUp extends ClutchPart {
    String medium;

    @Nullable
    Double waterParts;

    @Nullable
    Double mediumParts;

    String box;
    String topMarked;
    String setUpBy;

    @Nullable
    String words;

    protected SetUp() {}

    SetUp(UUID clutchId, ClutchEntries.SetUpEntry entry, Instant at) {
        super(clutchId, at);
        this.medium = entry.medium();
        this.waterParts = entry.waterParts();
        this.mediumParts = entry.mediumParts();
        this.box = entry.box();
        this.topMarked = entry.topMarked().name();
        this.setUpBy = entry.setUpBy();
        this.words = entry.words();
    }
}
