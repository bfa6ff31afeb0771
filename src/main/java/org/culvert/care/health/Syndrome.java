package org.culvert.care.health;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** What animals of a group, or any, may show together. */
@Entity
@Table(name = "syndromes")
class Syndrome extends Recorded {
    String name;

    @Nullable
    UUID taxonGroupId;

    String words;
    String source;
    LocalDate readOn;

    protected Syndrome() {}

    Syndrome(SyndromeEntries.SyndromeEntry entry, @Nullable UUID taxonGroupId) {
        this.name = entry.name();
        this.taxonGroupId = taxonGroupId;
        this.words = entry.words();
        this.source = entry.source();
        this.readOn = entry.readOn();
    }
}
