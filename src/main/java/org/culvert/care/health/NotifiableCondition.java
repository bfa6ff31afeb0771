package org.culvert.care.health;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** A disease that an authority wants to hear of at the first suspicion, and whom to ring. */
@Entity
@Table(name = "notifiable_conditions")
class NotifiableCondition extends Recorded {
    @Nullable
    String jurisdiction;

    String name;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> taxonGroups;

    String signs;
    String source;
    LocalDate readOn;
    LocalDate reviewBy;

    @Nullable
    String hotlineName;

    @Nullable
    String hotlineNumber;

    @Nullable
    String hotlineSource;

    @Nullable
    LocalDate hotlineReadOn;

    @Nullable
    LocalDate hotlineReviewBy;

    protected NotifiableCondition() {}

    static NotifiableCondition of(SuspicionEntries.ConditionEntry entry) {
        var row = new NotifiableCondition();
        row.jurisdiction = entry.jurisdiction();
        row.name = entry.name();
        row.taxonGroups = entry.taxonGroups();
        row.signs = entry.signs();
        row.source = entry.source();
        row.readOn = entry.readOn();
        row.reviewBy = entry.reviewBy();
        row.ring(entry.hotline());
        return row;
    }

    void correct(SuspicionEntries.ConditionCorrection correction) {
        taxonGroups = Objects.requireNonNullElse(correction.taxonGroups().over(taxonGroups), List.of());
        signs = Corrections.words("signs", correction.signs(), signs, SuspicionEntries.LONGEST_WORDS);
        source = Corrections.words("source", correction.source(), source, SuspicionEntries.LONGEST_WORDS);
        readOn = correction.readOn().over("readOn", readOn);
        reviewBy = correction.reviewBy().over("reviewBy", reviewBy);
        revisedBecause(correction.reason());
    }

    void ring(SuspicionEntries.@Nullable HotlineEntry hotline) {
        hotlineName = hotline == null ? null : hotline.name();
        hotlineNumber = hotline == null ? null : hotline.number();
        hotlineSource = hotline == null ? null : hotline.source();
        hotlineReadOn = hotline == null ? null : hotline.readOn();
        hotlineReviewBy = hotline == null ? null : hotline.reviewBy();
    }

    void ring(SuspicionEntries.HotlineEntry hotline, @Nullable String reason) {
        ring(hotline);
        revisedBecause(reason);
    }
}
