package org.culvert.hotspot.effort;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.hotspot.works.RoadPieces;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.culvert.roster.RosterService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps surveys of roads. */
@ApplicationScoped
public class RoadSurveyService {
    static final int LONGEST_ROAD = 300;
    static final int LONGEST_WORDS = 2000;
    private static final int FASTEST_KMH = 200;
    private static final int MOST_OBSERVERS = 100;
    private static final Duration LONGEST = Duration.ofHours(24);
    private static final Duration CLOCKS_APART = Duration.ofMinutes(5);
    private static final Instant FIRST = Instant.parse("1900-01-01T00:00:00Z");

    /**
     * A survey as it is entered, also one that found nothing. Going out and coming back are two.
     *
     * @param organisationId who made it
     * @param road label of the road on the current network
     * @param fromChainageMetres the smaller end of what was looked at, whichever way it went
     * @param startedAt when it began; the survey is of this day, in the region's zone
     * @param endedAt when it ended, within 24 hours
     * @param speedKmh usual speed; null where nobody knows
     * @param observers how many people looked; null where nobody knows
     * @param taxonGroups keys of the groups that were looked for; empty where every kind of animal was
     * @param words how it was made, in words
     */
    public record RoadSurveyEntry(
            @NotNull UUID organisationId,
            @NotBlank @Size(max = LONGEST_ROAD) String road,

            @NotNull @DecimalMin("-1000000") @DecimalMax("10000000")
            Double fromChainageMetres,

            @NotNull @DecimalMin("-1000000") @DecimalMax("10000000")
            Double toChainageMetres,

            @NotNull Instant startedAt,
            @NotNull Instant endedAt,
            @NotNull Travel travelledBy,

            @Nullable @DecimalMin(value = "0", inclusive = false) @DecimalMax("200")
            Double speedKmh,

            @Nullable @Min(1) @Max(MOST_OBSERVERS) Integer observers,
            @NotNull @Size(max = 100) List<String> taxonGroups,
            @Nullable @Size(max = LONGEST_WORDS) String words) {}

    /** What can be corrected of a survey; a field that is left out stays as it is. */
    public record RoadSurveyCorrection(
            Change<UUID> organisationId,
            Change<String> road,
            Change<Double> fromChainageMetres,
            Change<Double> toChainageMetres,
            Change<Instant> startedAt,
            Change<Instant> endedAt,
            Change<Travel> travelledBy,
            Change<Double> speedKmh,
            Change<Integer> observers,
            Change<List<String>> taxonGroups,
            Change<String> words,
            @NotBlank @Size(max = 2000) String reason) {
        boolean movesIt() {
            return road.isMade() || fromChainageMetres.isMade() || toChainageMetres.isMade();
        }
    }

    /** Why a survey is taken back. */
    public record RoadSurveyWithdrawal(
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * A survey as others see it.
     *
     * @param networkNumber version of the network whose chainages these are
     * @param withdrawnAt when it was taken back; null while it counts
     */
    public record RoadSurveyView(
            UUID id,
            UUID organisationId,
            String road,
            double fromChainageMetres,
            double toChainageMetres,
            int networkNumber,
            Instant startedAt,
            Instant endedAt,
            String travelledBy,
            @Nullable Double speedKmh,
            @Nullable Integer observers,
            List<String> taxonGroups,
            @Nullable String words,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<RoadSurvey, UUID> {}

    private final Rows rows;
    private final RoadService roads;
    private final RosterService roster;
    private final TaxonService taxa;
    private final RegionService regions;
    private final RecordViews records;
    private final Clock clock;

    RoadSurveyService(
            Rows rows,
            RoadService roads,
            RosterService roster,
            TaxonService taxa,
            RegionService regions,
            RecordViews records,
            Clock clock) {
        this.rows = rows;
        this.roads = roads;
        this.roster = roster;
        this.taxa = taxa;
        this.regions = regions;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public RoadSurveyView enter(RoadSurveyEntry entry) {
        RoadSurvey survey = RoadSurvey.of(entry);
        check(survey);
        place(survey, roads.current());
        rows.persistAndFlush(survey);
        return view(survey);
    }

    @Transactional
    public RoadSurveyView getSurvey(UUID id) {
        return view(require(id));
    }

    /**
     * Surveys, newest record first, those that were withdrawn among them.
     *
     * @param from the first day on which one began, or null
     * @param to the last such day, included, or null
     * @param road label of a road, which may have several pieces and carriageways, or the name of one of these
     */
    @Transactional
    public Page<RoadSurveyView> listSurveys(
            @Nullable LocalDate from, @Nullable LocalDate to, @Nullable String road, int limit, @Nullable UUID before) {
        if (from != null && to != null && to.isBefore(from)) {
            throw InvalidException.of("to", "The period ends before it begins.", "a day on or after from");
        }
        List<String> conditions = new ArrayList<>(List.of("1 = 1"));
        Map<String, Object> values = new HashMap<>();
        if (before != null) {
            conditions.add("id < :before");
            values.put("before", before);
        }
        if (from != null) {
            conditions.add("happenedAt >= :from");
            values.put("from", from.atStartOfDay(regions.zone()).toInstant());
        }
        if (to != null) {
            conditions.add("happenedAt < :to");
            values.put("to", to.plusDays(1).atStartOfDay(regions.zone()).toInstant());
        }
        if (road != null) {
            conditions.add("(lower(road) = lower(:road) or locate(lower(:carriageways), lower(road)) = 1"
                    + " or locate(lower(:parts), lower(road)) = 1)");
            values.put("road", road.strip());
            values.put("carriageways", road.strip() + " (");
            values.put("parts", road.strip() + ", part ");
        }
        List<RoadSurvey> found = rows.find(String.join(" and ", conditions) + " order by id desc", values)
                .page(0, limit + 1)
                .list();
        return Page.of(found, limit, this::view, survey -> survey.id().toString());
    }

    /** Corrects a survey. Where it is moved, it is placed on the network that is current now. */
    @Transactional
    public RoadSurveyView correct(UUID id, RoadSurveyCorrection correction) {
        RoadSurvey survey = requireStanding(id);
        survey.correct(correction);
        check(survey);
        if (correction.movesIt()) {
            place(survey, roads.current());
        }
        rows.flush();
        return view(survey);
    }

    /** Takes a survey back: it is kept and shown, and counts no longer. */
    @Transactional
    public RoadSurveyView withdraw(UUID id, String reason) {
        RoadSurvey survey = requireStanding(id);
        survey.withdraw(clock.instant(), reason);
        rows.flush();
        return view(survey);
    }

    /** Surveys that stand and began within some time, in a fixed order. */
    List<RoadSurvey> listStanding(Instant from, Instant before) {
        return rows.list("happenedAt >= ?1 and happenedAt < ?2 and withdrawnAt is null order by id", from, before);
    }

    private RoadSurvey require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("road survey", id));
    }

    private RoadSurvey requireStanding(UUID id) {
        RoadSurvey survey = require(id);
        if (survey.withdrawnAt != null) {
            throw new ConflictException("This survey was withdrawn: " + survey.withdrawnBecause);
        }
        return survey;
    }

    private static void place(RoadSurvey survey, CurrentRoads current) {
        List<RoadPieces.Part> parts = RoadPieces.of(current.network())
                .requireStretch("", survey.road, survey.fromChainageMetres, survey.toChainageMetres);
        RoadPieces.Piece first = parts.get(0).piece();
        survey.lieOn(parts.size() == 1 ? first.id() : first.label(), current.number());
    }

    private void check(RoadSurvey survey) {
        List<FieldError> errors = new ArrayList<>();
        checkPast("startedAt", survey.startedAt(), errors);
        checkPast("endedAt", survey.endedAt, errors);
        if (!survey.endedAt.isAfter(survey.startedAt())) {
            errors.add(error("endedAt", "The survey would end before it began.", "an instant after startedAt"));
        } else if (Duration.between(survey.startedAt(), survey.endedAt).compareTo(LONGEST) > 0) {
            errors.add(error(
                    "endedAt",
                    "The survey would last longer than a day and a night.",
                    "at most 24 hours after startedAt; enter a survey for each day"));
        }
        if (!(survey.fromChainageMetres < survey.toChainageMetres)) {
            errors.add(error(
                    "toChainageMetres",
                    "The stretch ends before it begins.",
                    "a chainage greater than fromChainageMetres"));
        }
        if (survey.speedKmh != null && !(survey.speedKmh > 0 && survey.speedKmh <= FASTEST_KMH)) {
            errors.add(error(
                    "speedKmh",
                    "Nobody looks at that speed.",
                    "more than 0 and at most " + FASTEST_KMH + " km/h, or leave it out where nobody knows"));
        }
        if (survey.observers != null && (survey.observers < 1 || survey.observers > MOST_OBSERVERS)) {
            errors.add(error(
                    "observers",
                    "So many people do not look.",
                    "1 to " + MOST_OBSERVERS + ", or leave it out where nobody knows"));
        }
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        survey.taxonGroups.forEach(key -> taxa.requireGroup("taxonGroups", key));
        roster.getOrganisation(survey.organisationId);
    }

    private void checkPast(String field, Instant instant, List<FieldError> errors) {
        if (instant.isBefore(FIRST)) {
            errors.add(error(field, "No such year is meant.", "an instant such as 2024-07-01T08:00:00Z"));
        } else if (instant.isAfter(clock.instant().plus(CLOCKS_APART))) {
            errors.add(error(field, "This lies in the future.", "an instant that has passed"));
        }
    }

    private static FieldError error(String field, String detail, String wanted) {
        return new FieldError(field, detail, wanted, null);
    }

    private RoadSurveyView view(RoadSurvey survey) {
        return new RoadSurveyView(
                survey.id(),
                survey.organisationId,
                survey.road,
                survey.fromChainageMetres,
                survey.toChainageMetres,
                survey.networkNumber,
                survey.startedAt(),
                survey.endedAt,
                survey.travelledBy,
                survey.speedKmh,
                survey.observers,
                survey.taxonGroups,
                survey.words,
                survey.withdrawnAt,
                survey.withdrawnBecause,
                records.of(survey, survey.endedAt));
    }
}
