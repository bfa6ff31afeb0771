package org.culvert.taxon;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** How a law lists one taxon, with its source and dates. */
@Entity
@Table(name = "species_listings")
class SpeciesListing extends Recorded {
    String jurisdiction;
    String scientificName;
    String listedAs;
    String source;
    LocalDate readOn;
    LocalDate reviewBy;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected SpeciesListing() {}

    static SpeciesListing of(ListingService.ListingEntry entry) {
        var row = new SpeciesListing();
        row.jurisdiction = entry.jurisdiction();
        row.scientificName = entry.scientificName();
        row.listedAs = entry.listedAs();
        row.source = entry.source();
        row.readOn = entry.readOn();
        row.reviewBy = entry.reviewBy();
        row.validFrom = entry.validFrom();
        row.validTo = entry.validTo();
        return row;
    }

    /** Someone has read the source again and says that it still says this, or until when it did. */
    void review(ListingService.ListingReview review) {
        source = review.source() == null ? source : review.source();
        readOn = review.readOn();
        reviewBy = review.reviewBy();
        validTo = review.validTo() == null ? validTo : review.validTo();
        revisedBecause(review.reason());
    }
}
