package org.culvert.hotspot.effort;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** One going along a stretch, looking for struck animals; it happened when it began. */
@Entity
@Table(name = "road_surveys")
class RoadSurvey extends Recorded {
    UUID organisationId;
    String road;
    double fromChainageMetres;
    double toChainageMetres;
    int networkNumber;
    Instant endedAt;
    String travelledBy;

    @Nullable
    Double speedKmh;

    @Nullable
    Integer observers;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> taxonGroups;

    @Nullable
    String words;

    /** When it was taken back that it was made, or was made so; null while it stands. */
    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected RoadSurvey() {}

    static RoadSurvey of(RoadSurveyService.RoadSurveyEntry entry) {
        var survey = new RoadSurvey();
        survey.happenedAt(entry.startedAt());
        survey.organisationId = entry.organisationId();
        survey.road = entry.road();
        survey.fromChainageMetres = entry.fromChainageMetres();
        survey.toChainageMetres = entry.toChainageMetres();
        survey.endedAt = entry.endedAt();
        survey.travelledBy = entry.travelledBy().name();
        survey.speedKmh = entry.speedKmh();
        survey.observers = entry.observers();
        survey.taxonGroups = entry.taxonGroups().stream().distinct().sorted().toList();
        survey.words = entry.words();
        return survey;
    }

    void correct(RoadSurveyService.RoadSurveyCorrection correction) {
        happenedAt(correction.startedAt().over("startedAt", startedAt()));
        organisationId = correction.organisationId().over("organisationId", organisationId);
        road = Corrections.words("road", correction.road(), road, RoadSurveyService.LONGEST_ROAD);
        fromChainageMetres = correction.fromChainageMetres().over("fromChainageMetres", fromChainageMetres);
        toChainageMetres = correction.toChainageMetres().over("toChainageMetres", toChainageMetres);
        endedAt = correction.endedAt().over("endedAt", endedAt);
        travelledBy = Corrections.name("travelledBy", correction.travelledBy(), travelledBy);
        speedKmh = correction.speedKmh().over(speedKmh);
        observers = correction.observers().over(observers);
        List<String> groups = correction.taxonGroups().over("taxonGroups", taxonGroups);
        if (groups.stream().anyMatch(Objects::isNull)) {
            throw InvalidException.of("taxonGroups", "A group is missing in the list.", "keys of taxon groups");
        }
        taxonGroups = groups.stream().distinct().sorted().toList();
        words = Corrections.text("words", correction.words(), words, RoadSurveyService.LONGEST_WORDS);
        revisedBecause(correction.reason());
    }

    Instant startedAt() {
        return Objects.requireNonNull(happenedAt());
    }

    /** Puts it where a network has it. */
    void lieOn(String label, int number) {
        road = label;
        networkNumber = number;
    }

    boolean looksFor(@Nullable String taxonGroup) {
        return taxonGroups.isEmpty() || (taxonGroup != null && taxonGroups.contains(taxonGroup));
    }

    void withdraw(Instant at, String reason) {
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
