package org.culvert.animal.referral;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** One kind that the network's holders may not hold, with its source and dates. */
@Entity
@Table(name = "referrals")
class Referral extends Recorded {
    String jurisdiction;
    String kind;

    @Nullable
    UUID taxonGroupId;

    @Nullable
    String scientificName;

    String referTo;
    String words;
    String source;
    LocalDate readOn;
    LocalDate reviewBy;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected Referral() {}

    static Referral of(ReferralService.ReferralEntry entry, @Nullable UUID taxonGroupId) {
        var row = new Referral();
        row.jurisdiction = entry.jurisdiction();
        row.kind = entry.kind().name();
        row.taxonGroupId = taxonGroupId;
        row.scientificName = entry.scientificName();
        row.referTo = entry.referTo();
        row.words = entry.words();
        row.source = entry.source();
        row.readOn = entry.readOn();
        row.reviewBy = entry.reviewBy();
        row.validFrom = entry.validFrom();
        row.validTo = entry.validTo();
        return row;
    }

    /** Someone has read the source again and says that it still says this, or until when it did. */
    void review(ReferralService.ReferralReview review) {
        source = review.source() == null ? source : review.source();
        readOn = review.readOn();
        reviewBy = review.reviewBy();
        validTo = review.validTo() == null ? validTo : review.validTo();
        revisedBecause(review.reason());
    }

    boolean isAbout(UUID groupId, String name) {
        return groupId.equals(taxonGroupId)
                || scientificName != null && (name.equals(scientificName) || name.startsWith(scientificName + " "));
    }
}
