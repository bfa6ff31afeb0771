package org.culvert.taxon;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A taxon at any rank, with how far its places are generalised in public. */
@Entity
@Table(name = "taxa")
class Taxon extends Recorded {
    String scientificName;
    String vernacularName;
    String taxonRank;
    UUID taxonGroupId;

    @Nullable
    Double sensitivityGrid;

    @Nullable
    String sensitivityReason;

    @Nullable
    LocalDate sensitivityReviewBy;

    protected Taxon() {}

    static Taxon of(TaxonService.TaxonEntry entry, UUID groupId) {
        var taxon = new Taxon();
        taxon.scientificName = entry.scientificName();
        taxon.update(entry, groupId);
        return taxon;
    }

    void update(TaxonService.TaxonEntry entry, UUID groupId) {
        vernacularName = entry.vernacularName();
        taxonRank = entry.taxonRank();
        taxonGroupId = groupId;
        // A list of names that says nothing of sensitivity must not lift it
        if (entry.sensitivityGridDegrees() != null) {
            sensitivityGrid = entry.sensitivityGridDegrees();
            sensitivityReason = entry.sensitivityReason();
            sensitivityReviewBy = entry.sensitivityReviewBy();
        }
    }

    void keepTo(double gridDegrees, String reason, LocalDate reviewBy) {
        sensitivityGrid = gridDegrees;
        sensitivityReason = reason;
        sensitivityReviewBy = reviewBy;
        revisedBecause(reason);
    }

    void noLongerSensitive(String reason) {
        sensitivityGrid = null;
        sensitivityReason = null;
        sensitivityReviewBy = null;
        revisedBecause(reason);
    }
}
