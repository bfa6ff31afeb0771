package org.culvert.taxon;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Another name of a taxon than those that it goes by here. */
@Entity
@Table(name = "taxon_synonyms")
class TaxonSynonym extends Recorded {
    UUID taxonId;

    @Enumerated(EnumType.STRING)
    SynonymService.SynonymKind kind;

    String name;

    @Nullable
    String language;

    String source;

    @Nullable
    Instant endedAt;

    @Nullable
    String endedBecause;

    protected TaxonSynonym() {}

    static TaxonSynonym of(SynonymService.SynonymEntry entry) {
        var row = new TaxonSynonym();
        row.taxonId = entry.taxonId();
        row.kind = entry.kind();
        row.name = entry.name().strip();
        row.language = entry.language();
        row.source = entry.source();
        return row;
    }

    void end(Instant at, String reason) {
        if (endedAt != null) {
            throw new ConflictException("That name has been ended already.");
        }
        endedAt = at;
        endedBecause = reason;
        revisedBecause(reason);
    }
}
