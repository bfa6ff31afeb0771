package org.culvert.care.clock;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.care.clock.limit.Length;
import org.culvert.care.clock.limit.Limit;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** One limit with its kind, source and dates. */
@Entity
@Table(name = "time_limits")
class TimeLimit extends Recorded {
    String jurisdiction;
    String kind;

    @Nullable
    UUID taxonGroupId;

    @Nullable
    String scientificName;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> exceptScientificNames;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> listedAs;

    String binds;
    String starts;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> ends;

    int length;
    String lengthUnit;
    int warnBeforeHours;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> extensionGrounds;

    String words;
    String source;
    LocalDate readOn;
    LocalDate reviewBy;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected TimeLimit() {}

    static TimeLimit of(LimitService.LimitEntry entry, @Nullable UUID taxonGroupId) {
        var row = new TimeLimit();
        row.jurisdiction = entry.jurisdiction();
        row.kind = entry.kind().name();
        row.taxonGroupId = taxonGroupId;
        row.scientificName = entry.scientificName();
        row.exceptScientificNames = entry.exceptScientificNames();
        row.listedAs = entry.listedAs();
        row.binds = entry.binds().name();
        row.starts = entry.starts().name();
        row.ends = entry.ends().stream().map(Enum::name).distinct().toList();
        row.length = entry.length();
        row.lengthUnit = entry.lengthUnit().name();
        row.warnBeforeHours = entry.warnBeforeHours();
        row.extensionGrounds = entry.extensionGrounds();
        row.words = entry.words();
        row.source = entry.source();
        row.readOn = entry.readOn();
        row.reviewBy = entry.reviewBy();
        row.validFrom = entry.validFrom();
        row.validTo = entry.validTo();
        return row;
    }

    /** Someone has read the source again and says that the row still says what it says, or until when it did. */
    void review(LimitService.LimitReview review) {
        source = review.source() == null ? source : review.source();
        readOn = review.readOn();
        reviewBy = review.reviewBy();
        validTo = review.validTo() == null ? validTo : review.validTo();
        revisedBecause(review.reason());
    }

    Limit limit() {
        return new Limit(
                id(),
                Limit.Binds.valueOf(binds),
                Limit.Starts.valueOf(starts),
                ends(),
                new Length(length, Length.Unit.valueOf(lengthUnit)),
                warnBeforeHours,
                listedAs,
                validFrom,
                validTo);
    }

    Set<Limit.Ends> ends() {
        return ends.stream().map(Limit.Ends::valueOf).collect(Collectors.toUnmodifiableSet());
    }

    /** Whether it may concern a kind of animal, apart from how that is listed. */
    boolean isAbout(UUID groupId, String name) {
        return (taxonGroupId == null || taxonGroupId.equals(groupId))
                && (scientificName == null || isOf(scientificName, name))
                && exceptScientificNames.stream().noneMatch(except -> isOf(except, name));
    }

    private static boolean isOf(String wider, String name) {
        return name.equals(wider) || name.startsWith(wider + " ");
    }

    /** In words, such as {@code 24 hours}. */
    String lengthInWords() {
        return length + " " + (length == 1 ? lengthUnit.substring(0, lengthUnit.length() - 1) : lengthUnit);
    }
}
