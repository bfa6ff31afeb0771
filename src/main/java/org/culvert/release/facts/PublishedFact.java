package org.culvert.release.facts;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.culvert.platform.Recorded;
import org.culvert.release.rules.SpeciesFact;
import org.jspecify.annotations.Nullable;

/** One fact with its source and dates. */
@Entity
@Table(name = "species_facts")
class PublishedFact extends Recorded {
    String kind;
    String scientificName;

    @Nullable
    Double metres;

    @Nullable
    String activePeriod;

    String words;
    String source;
    LocalDate readOn;
    LocalDate reviewBy;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected PublishedFact() {}

    static PublishedFact of(SpeciesFactService.FactEntry entry) {
        var row = new PublishedFact();
        row.kind = entry.kind().name();
        row.scientificName = entry.scientificName();
        row.metres = entry.metres();
        row.activePeriod =
                entry.activePeriod() == null ? null : entry.activePeriod().name();
        row.words = entry.words();
        row.source = entry.source();
        row.readOn = entry.readOn();
        row.reviewBy = entry.reviewBy();
        row.validFrom = entry.validFrom();
        row.validTo = entry.validTo();
        return row;
    }

    /** Someone has read the source again and says that it still says this, or until when it did. */
    void review(SpeciesFactService.FactReview review) {
        source = review.source() == null ? source : review.source();
        readOn = review.readOn();
        reviewBy = review.reviewBy();
        validTo = review.validTo() == null ? validTo : review.validTo();
        revisedBecause(review.reason());
    }

    SpeciesFact fact() {
        return new SpeciesFact(
                SpeciesFact.Kind.valueOf(kind),
                scientificName,
                metres,
                activePeriod == null ? null : SpeciesFact.ActivePeriod.valueOf(activePeriod),
                words,
                source,
                readOn,
                reviewBy);
    }
}
