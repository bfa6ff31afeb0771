package org.culvert.care.clutch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** One published finding of eggs, with its source and dates. */
@Entity
@Table(name = "incubation_facts")
class IncubationFact extends Recorded {
    String kind;
    String scientificName;
    String basis;

    @Nullable
    String setting;

    @Nullable
    Double celsiusLow;

    @Nullable
    Double celsiusHigh;

    @Nullable
    Double daysLow;

    @Nullable
    Double daysHigh;

    @Nullable
    Double thresholdCelsius;

    @Nullable
    Double degreeDays;

    @Nullable
    Double statedError;

    @Nullable
    Boolean waitsAfterwards;

    @Nullable
    String sexBy;

    String words;
    String source;
    LocalDate readOn;
    LocalDate reviewBy;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected IncubationFact() {}

    IncubationFact(IncubationFactService.IncubationFactEntry entry) {
        kind = entry.kind().name();
        scientificName = entry.scientificName();
        basis = entry.basis().name();
        setting = entry.setting() == null ? null : entry.setting().name();
        celsiusLow = entry.celsiusLow();
        celsiusHigh = entry.celsiusHigh();
        daysLow = entry.daysLow();
        daysHigh = entry.daysHigh();
        thresholdCelsius = entry.thresholdCelsius();
        degreeDays = entry.degreeDays();
        statedError = entry.statedError();
        waitsAfterwards = entry.waitsAfterwards();
        sexBy = entry.sexBy() == null ? null : entry.sexBy().name();
        words = entry.words();
        source = entry.source();
        readOn = entry.readOn();
        reviewBy = entry.reviewBy();
        validFrom = entry.validFrom();
        validTo = entry.validTo();
    }

    /** Someone has read the source again and says that it still says this, or until when it did. */
    void review(IncubationFactService.IncubationFactReview review) {
        source = review.source() == null ? source : review.source();
        readOn = review.readOn();
        reviewBy = review.reviewBy();
        validTo = review.validTo() == null ? validTo : review.validTo();
        revisedBecause(review.reason());
    }

    /** Whether it is of a taxon, or of one that the taxon belongs to by its name. */
    boolean isAbout(String name) {
        return name.equals(scientificName) || name.startsWith(scientificName + " ");
    }
}
