package org.culvert.release;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.release.rules.Ground;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.RuleKind;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** One release rule with its kind, source and dates. */
@Entity
@Table(name = "release_rules")
class ReleaseRule extends Recorded {
    String jurisdiction;
    String kind;

    @Nullable
    UUID taxonGroupId;

    @Nullable
    String scientificName;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> exceptScientificNames;

    String appliesTo;

    @Nullable
    String appliesDefinition;

    String test;

    @Nullable
    Double greatestDistanceMetres;

    @Nullable
    Integer greatestDays;

    @Nullable
    Double originKnownWithinMetres;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> orderOfPreference;

    boolean asksSecondPerson;

    @JdbcTypeCode(SqlTypes.JSON)
    List<Ground> allowedGrounds;

    @Nullable
    String unknownOriginOutcome;

    @Nullable
    String consents;

    String words;
    String source;
    LocalDate readOn;
    LocalDate reviewBy;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected ReleaseRule() {}

    static ReleaseRule of(RuleService.RuleEntry entry, @Nullable UUID taxonGroupId) {
        var row = new ReleaseRule();
        row.jurisdiction = entry.jurisdiction();
        row.kind = entry.kind().name();
        row.taxonGroupId = taxonGroupId;
        row.scientificName = entry.scientificName();
        row.exceptScientificNames = entry.exceptScientificNames();
        row.appliesTo = entry.appliesTo().name();
        row.appliesDefinition = entry.appliesDefinition();
        row.test = entry.test().name();
        row.greatestDistanceMetres = entry.greatestDistanceMetres();
        row.greatestDays = entry.greatestDays();
        row.orderOfPreference = entry.orderOfPreference();
        row.asksSecondPerson = entry.asksSecondPerson();
        row.originKnownWithinMetres = entry.originKnownWithinMetres();
        row.allowedGrounds = entry.allowedGrounds();
        row.unknownOriginOutcome =
                entry.unknownOrigin() == null ? null : entry.unknownOrigin().name();
        row.consents = entry.consents();
        row.words = entry.words();
        row.source = entry.source();
        row.readOn = entry.readOn();
        row.reviewBy = entry.reviewBy();
        row.validFrom = entry.validFrom();
        row.validTo = entry.validTo();
        return row;
    }

    /** Someone has read the source again and says that the row still says what it says, or until when it did. */
    void review(RuleService.ReviewEntry entry) {
        source = entry.source() == null ? source : entry.source();
        readOn = entry.readOn();
        reviewBy = entry.reviewBy();
        validTo = entry.validTo() == null ? validTo : entry.validTo();
        revisedBecause(entry.reason());
    }

    /**
     * The rule as the calculation takes it.
     *
     * @param groupKey key of the group it is about, null when it is about none in particular
     */
    Rule rule(@Nullable String groupKey) {
        return new Rule(
                id(),
                version(),
                jurisdiction,
                RuleKind.valueOf(kind),
                groupKey,
                scientificName,
                exceptScientificNames,
                Rule.AppliesTo.valueOf(appliesTo),
                appliesDefinition,
                Rule.Question.valueOf(test),
                greatestDistanceMetres,
                greatestDays,
                originKnownWithinMetres,
                orderOfPreference,
                asksSecondPerson,
                allowedGrounds,
                unknownOriginOutcome == null ? null : Rule.UnknownOrigin.valueOf(unknownOriginOutcome),
                consents,
                words,
                source,
                readOn,
                reviewBy,
                validFrom,
                validTo);
    }
}
