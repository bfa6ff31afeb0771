package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.call.PlaceView;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.culvert.release.rules.Assessor;
import org.culvert.release.rules.Circumstances;
import org.culvert.release.rules.Conditions;
import org.culvert.release.rules.Finding;
import org.culvert.release.rules.Ground;
import org.culvert.release.rules.Origin;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.Site;
import org.culvert.release.rules.Subject;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.release.rules.Unsuitability;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Runs the rules for a case and a place, and keeps every run. */
@ApplicationScoped
public class AssessmentService {
    /** What every assessment says of itself. */
    public static final String NOTE = "This says what the rules entered here make of these figures, and no more."
            + " Check your local code and your licensed vet.";

    /** A bare position, with the jurisdiction it lies in. */
    public record PositionEntry(
            @NotNull @Pattern(regexp = Rule.ISO_3166, message = "must be an ISO 3166 code")
            String jurisdiction,

            @NotNull @DecimalMin("-90") @DecimalMax("90") Double decimalLatitude,
            @NotNull @DecimalMin("-180") @DecimalMax("180") Double decimalLongitude,
            @NotNull @Positive Double coordinateUncertaintyInMeters) {}

    /**
     * Asks for an assessment of a case at a site, or at a bare position.
     *
     * @param light when of the day it would go
     * @param weather whether that is fair, or hard on it
     * @param matesGoToo whether those that it was raised with go with it; yes too where it was raised alone
     */
    public record AssessmentEntry(
            @NotNull UUID caseId,
            @Nullable UUID siteId,
            @Nullable @Valid PositionEntry position,
            Conditions.@Nullable Light light,
            Conditions.@Nullable Weather weather,
            Site.Consent matesGoToo) {
        public AssessmentEntry {
            matesGoToo = matesGoToo == null ? Site.Consent.unknown : matesGoToo;
        }

        Conditions conditions() {
            return new Conditions(light, weather, matesGoToo);
        }
    }

    /**
     * The place where an animal was found is unsuitable.
     *
     * @param ground key of a ground that a rule allows
     * @param words what was seen there
     * @param seenAt when; now when left out
     */
    public record UnsuitableEntry(
            @NotBlank @Size(max = 200) String ground,
            @NotBlank @Size(max = 2000) String words,
            @Nullable Instant seenAt) {}

    public record UnsuitableView(
            UUID id,
            UUID placeId,
            String ground,
            String words,
            @Nullable Instant seenAt,
            UUID recordedBy,
            RecordView record) {}

    /**
     * An assessment as it was kept.
     *
     * @param subject the animal as it was known then
     * @param circumstances what was known beside; null in assessments that were made before it was kept
     * @param tests each test, with its figures and where there is one the rule as it stood
     * @param overall {@code pass}, {@code fail} or {@code cantTell}, over the tests that are no mere advice
     */
    public record AssessmentView(
            UUID id,
            UUID caseId,
            @Nullable UUID siteId,
            String jurisdiction,
            double decimalLatitude,
            double decimalLongitude,
            double coordinateUncertaintyInMeters,
            LocalDate assessedOn,
            Subject subject,
            @Nullable Circumstances circumstances,
            List<Finding> tests,
            String overall,
            Instant recordedAt,
            UUID recordedBy,
            String note,
            RecordView record) {}

    private final ReleaseRepositories.Assessments assessments;
    private final ReleaseRepositories.UnsuitablePlaces unsuitablePlaces;
    private final RuleService rules;
    private final SiteService sites;
    private final CircumstanceReader circumstances;
    private final CaseService cases;
    private final TaxonService taxa;
    private final RegionService region;
    private final RecordViews records;
    private final Sight sight;
    private final Clock clock;

    AssessmentService(
            ReleaseRepositories.Assessments assessments,
            ReleaseRepositories.UnsuitablePlaces unsuitablePlaces,
            RuleService rules,
            SiteService sites,
            CircumstanceReader circumstances,
            CaseService cases,
            TaxonService taxa,
            RegionService region,
            RecordViews records,
            Sight sight,
            Clock clock) {
        this.assessments = assessments;
        this.unsuitablePlaces = unsuitablePlaces;
        this.rules = rules;
        this.sites = sites;
        this.circumstances = circumstances;
        this.cases = cases;
        this.taxa = taxa;
        this.region = region;
        this.records = records;
        this.sight = sight;
        this.clock = clock;
    }

    @Transactional
    public AssessmentView assess(AssessmentEntry entry) {
        sight.requireSeen("case", entry.caseId());
        CaseView told = cases.getCase(entry.caseId());
        if (told.fate() != null) {
            throw new ConflictException("That case has ended: " + told.fate().fate() + ".");
        }
        Target target = target(entry);
        Circumstances known = circumstances.of(told, subject(told), today()).at(target, entry.conditions());
        var row = new Assessment(
                told.id(), target, subject(told), known, run(told, target, known), clock.instant(), today());
        assessments.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public AssessmentView getAssessment(UUID id) {
        return view(require(id));
    }

    /** Assessments of a case, or all, newest first. */
    @Transactional
    public Page<AssessmentView> listAssessments(@Nullable UUID caseId, int limit, @Nullable UUID before) {
        List<Assessment> rows = sight.seesOwnOnly("assessment")
                ? listOwn(caseId, limit, before)
                : assessments
                        .find(
                                "(?1 is null or caseId = ?1) and (?2 is null or id < ?2) order by id desc",
                                caseId,
                                before)
                        .page(0, limit + 1)
                        .list();
        return Page.of(rows, limit, this::view, row -> row.id().toString());
    }

    private List<Assessment> listOwn(@Nullable UUID caseId, int limit, @Nullable UUID before) {
        String ofCase = caseId == null
                ? null
                : "exists (select 1 from assessments a where a.id = h.id and a.case_id = '" + caseId + "')";
        return assessments.list("id in ?1 order by id desc", sight.listOwn("assessment", before, limit + 1, ofCase));
    }

    /** Records that the place where an animal was found is unsuitable, before another may be considered. */
    @Transactional
    public UnsuitableView recordUnsuitable(UUID caseId, UnsuitableEntry entry) {
        CaseView told = cases.getCase(caseId);
        PlaceView found = told.foundPlace();
        if (found == null) {
            throw new ConflictException("Nobody knows where that animal was found, so that place cannot be judged.");
        }
        List<Ground> known = groundsFor(subject(told));
        if (known.stream().noneMatch(ground -> ground.key().equals(entry.ground()))) {
            throw InvalidException.of(
                    "ground",
                    "No rule about this animal allows that ground.",
                    known.isEmpty()
                            ? "none is allowed by the rules entered here"
                            : known.stream()
                                    .map(ground -> ground.key() + " (" + ground.words() + ")")
                                    .distinct()
                                    .collect(Collectors.joining("; ")));
        }
        var row = new UnsuitablePlace(
                caseId,
                found.id(),
                told.animal().taxonId(),
                entry.ground(),
                entry.words(),
                entry.seenAt() == null ? clock.instant() : entry.seenAt());
        unsuitablePlaces.persistAndFlush(row);
        return view(row);
    }

    /** What is recorded against the place where the animal of a case was found. */
    @Transactional
    public List<UnsuitableView> listUnsuitable(UUID caseId) {
        return unsuitable(cases.getCase(caseId)).stream().map(this::view).toList();
    }

    Assessment require(UUID id) {
        return assessments.findByIdOptional(id).orElseThrow(() -> new NotFoundException("assessment", id));
    }

    /** What the rules say today of a place that was assessed before, with what is known now. */
    List<Finding> runAgain(CaseView told, Assessment before) {
        Conditions said = before.circumstances == null ? Conditions.NOT_SAID : before.circumstances.conditions();
        Target target = before.target();
        return run(told, target, circumstances.of(told, subject(told), today()).at(target, said));
    }

    /** What the rules say today. */
    List<Finding> run(CaseView told, Target target, Circumstances known) {
        LocalDate day = today();
        Site site = target.site(sites.consentOn(target.siteId(), day));
        return Assessor.assessWhole(subject(told), site, unsuitabilities(told), rules.listRules(), known, day);
    }

    /** What is recorded against the place where the animal of a case was found, as the rules ask of it. */
    List<Unsuitability> unsuitabilities(CaseView told) {
        return unsuitable(told).stream()
                .map(row -> new Unsuitability(
                        row.ground,
                        row.words + " (seen " + row.happenedAt() + ", recorded by " + row.recordedBy() + ")"))
                .toList();
    }

    /** The animal of a case as the rules ask of it. */
    Subject subject(CaseView told) {
        PlaceView found = told.foundPlace();
        Origin origin = found == null
                ? Origin.unknown()
                : new Origin(
                        Origin.OriginState.valueOf(told.origin()),
                        UncertainPosition.of(
                                found.decimalLatitude(),
                                found.decimalLongitude(),
                                found.coordinateUncertaintyInMeters()));
        return new Subject(
                told.animal().scientificName(),
                told.animal().taxonGroup(),
                taxa.getGroup(told.animal().taxonGroupId()).introduced(),
                told.dependentYoung(),
                "hatchling".equalsIgnoreCase(told.animal().lifeStage()),
                origin);
    }

    private List<UnsuitablePlace> unsuitable(CaseView told) {
        PlaceView found = told.foundPlace();
        return found == null
                ? List.of()
                : unsuitablePlaces.list(
                        "placeId = ?1 and taxonId = ?2 order by id",
                        found.id(),
                        told.animal().taxonId());
    }

    private List<Ground> groundsFor(Subject subject) {
        LocalDate day = today();
        return rules.listRules().stream()
                .filter(rule -> rule.holdsOn(day) && rule.isAbout(subject))
                .map(Rule::allowedGrounds)
                .flatMap(List::stream)
                .toList();
    }

    private Target target(AssessmentEntry entry) {
        PositionEntry position = entry.position();
        UUID siteId = entry.siteId();
        if (siteId != null && position == null) {
            return sites.target(siteId);
        }
        if (siteId == null && position != null) {
            return new Target(
                    null,
                    position.jurisdiction(),
                    position.decimalLatitude(),
                    position.decimalLongitude(),
                    position.coordinateUncertaintyInMeters());
        }
        throw InvalidException.of("siteId", "One place is assessed at a time.", "either siteId or position");
    }

    private LocalDate today() {
        return clock.instant().atZone(region.zone()).toLocalDate();
    }

    private AssessmentView view(Assessment row) {
        return new AssessmentView(
                row.id(),
                row.caseId,
                row.siteId,
                row.jurisdiction,
                row.decimalLatitude,
                row.decimalLongitude,
                row.coordinateUncertaintyInMeters,
                row.assessedOn,
                row.subject,
                row.circumstances,
                row.findings,
                row.overall,
                row.recordedAt(),
                row.recordedBy(),
                NOTE,
                records.of(row));
    }

    private UnsuitableView view(UnsuitablePlace row) {
        return new UnsuitableView(
                row.id(), row.placeId, row.ground, row.words, row.happenedAt(), row.recordedBy(), records.of(row));
    }
}
