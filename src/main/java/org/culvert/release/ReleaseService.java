package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.LargestBody;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RefusedException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.roster.RosterService;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** Records releases, once nothing stands in their way that nothing has lifted. */
@ApplicationScoped
public class ReleaseService {
    /**
     * A permit that lifts one test of statute or code.
     *
     * @param key the test's key in the assessment
     * @param document the permit itself, in base64
     */
    public record Permit(
            @NotBlank @Size(max = 200) String key,
            @NotBlank @Size(max = 200) String number,
            @NotBlank @Size(max = 200) String issuedBy,
            @NotBlank @Size(max = 200) String documentName,

            @NotNull
            @Pattern(
                    regexp = "application/pdf|image/png|image/jpeg",
                    message = "must be application/pdf, image/png or image/jpeg")
            String documentMediaType,

            @Schema(type = SchemaType.STRING, format = "byte") @NotEmpty @Size(max = 20_000_000)
            byte[] document) {}

    /**
     * A decision to go on although one test of the network's own is not passed, by whoever enters it.
     *
     * @param agreedByMemberId a second person who agrees; needed where the rule asks for one
     */
    public record Overriding(
            @NotBlank @Size(max = 200) String key,
            @NotBlank @Size(max = 2000) String reason,
            @Nullable UUID agreedByMemberId) {}

    /** What light they were let go in. */
    public enum Light {
        day,
        twilight,
        night
    }

    /** How they were let go: soft with support feeding at the place, hard without. */
    public enum Manner {
        hard,
        soft
    }

    /**
     * A release, of one animal or of a batch at one place: all of them or none.
     *
     * @param assessmentIds one of each case, all of the same place
     * @param at when they were let go; now when left out
     * @param approvedBy who approved the release
     * @param warningsRead keys of the warnings that whoever lets them go has read: of a hotspot beside the place
     * @param releasedByMemberId who let them go
     * @param weather as it was seen
     * @param supportFeedingUntil of a soft release, the last day on which they are meant to be fed at the place
     * @param othersPresent who else was there
     * @param raisedTogether whether they were raised together; null: nobody knows
     */
    @LargestBody(bytes = 30_000_000)
    public record ReleaseEntry(
            @NotEmpty @Size(max = 500) List<@NotNull UUID> caseIds,
            @NotEmpty @Size(max = 500) List<@NotNull UUID> assessmentIds,
            @Nullable Instant at,
            @NotBlank @Size(max = 200) String approvedBy,
            @Nullable UUID releasedByMemberId,
            List<@Valid Permit> permits,
            List<@Valid Overriding> overrides,
            @Size(max = 20) List<@NotBlank @Size(max = 200) String> warningsRead,
            @Nullable @Size(max = 500) String weather,
            @Nullable Light light,
            @Nullable Manner manner,
            @Nullable LocalDate supportFeedingUntil,
            @Nullable @Size(max = 2000) String othersPresent,
            @Nullable Boolean raisedTogether) {
        public ReleaseEntry {
            permits = permits == null ? List.of() : List.copyOf(permits);
            overrides = overrides == null ? List.of() : List.copyOf(overrides);
            warningsRead = warningsRead == null ? List.of() : List.copyOf(warningsRead);
        }
    }

    /**
     * One animal of a release.
     *
     * @param withdrawnAt when it was taken back that it was let go; null while it stands
     * @param withdrawnBecause why
     */
    public record ReleasedAnimalView(
            UUID caseId,
            UUID assessmentId,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause) {}

    /** The end of the support feeding; now when {@code at} is left out. */
    public record SupportFeedingEnd(
            @Nullable Instant at, @NotBlank @Size(max = 200) String endedBy) {}

    /** Of how a release was made and by whom; where and when it was is taken back and recorded anew. */
    public record ReleaseCorrection(
            Change<String> approvedBy,
            Change<UUID> releasedByMemberId,
            Change<String> weather,
            Change<Light> light,
            Change<Manner> manner,
            Change<LocalDate> supportFeedingUntil,
            Change<Instant> supportFeedingEndedAt,
            Change<String> supportFeedingEndedBy,
            Change<String> othersPresent,
            Change<Boolean> raisedTogether,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * What lifted a test.
     *
     * @param kind {@code permit} or {@code override}
     * @param by the account that recorded it; the author of an override
     */
    public record LiftedView(
            UUID id,
            String key,
            String kind,
            @Nullable String reason,
            @Nullable UUID agreedByMemberId,
            @Nullable String number,
            @Nullable String issuedBy,
            @Nullable String documentName,
            UUID by,
            Instant recordedAt) {}

    /** A release as recorded. */
    public record ReleaseView(
            UUID id,
            @Nullable UUID siteId,
            double decimalLatitude,
            double decimalLongitude,
            double coordinateUncertaintyInMeters,
            @Nullable Instant at,
            String approvedBy,
            @Nullable UUID releasedByMemberId,
            List<String> warningsRead,
            @Nullable String weather,
            @Nullable String light,
            @Nullable String manner,
            @Nullable LocalDate supportFeedingUntil,
            @Nullable Instant supportFeedingEndedAt,
            @Nullable String supportFeedingEndedBy,
            @Nullable String othersPresent,
            @Nullable Boolean raisedTogether,
            List<ReleasedAnimalView> animals,
            List<LiftedView> lifted,
            List<PhotographService.ReleasePhotographView> photographs,
            SightingService.AfterRelease afterRelease,
            Instant recordedAt,
            UUID recordedBy,
            RecordView record) {}

    /** A permit's document as it was handed in. */
    public record Document(String name, String mediaType, byte[] content) {}

    private final ReleaseRepositories.Releases releases;
    private final ReleaseRepositories.ReleasedAnimals animals;
    private final ReleaseRepositories.LiftedTests lifted;
    private final AssessmentService assessments;
    private final TestsInTheWay inTheWay;
    private final NonReleaseService nonReleases;
    private final PhotographService photographs;
    private final SightingService sightings;
    private final CaseService cases;
    private final RosterService roster;
    private final RegionService region;
    private final RecordViews records;
    private final Sight sight;
    private final Clock clock;

    ReleaseService(
            ReleaseRepositories.Releases releases,
            ReleaseRepositories.ReleasedAnimals animals,
            ReleaseRepositories.LiftedTests lifted,
            AssessmentService assessments,
            TestsInTheWay inTheWay,
            NonReleaseService nonReleases,
            PhotographService photographs,
            SightingService sightings,
            CaseService cases,
            RosterService roster,
            RegionService region,
            RecordViews records,
            Sight sight,
            Clock clock) {
        this.releases = releases;
        this.animals = animals;
        this.lifted = lifted;
        this.assessments = assessments;
        this.inTheWay = inTheWay;
        this.nonReleases = nonReleases;
        this.photographs = photographs;
        this.sightings = sightings;
        this.cases = cases;
        this.roster = roster;
        this.region = region;
        this.records = records;
        this.sight = sight;
        this.clock = clock;
    }

    /**
     * Records a release and ends its cases by it.
     *
     * @throws RefusedException with every test that stands in the way and what would lift it, or where the rules say
     *     something else today than when they were assessed
     */
    @Transactional
    public ReleaseView release(ReleaseEntry entry) {
        Instant now = clock.instant();
        Instant at = entry.at() == null ? now : entry.at();
        if (at.isAfter(now)) {
            throw InvalidException.of("at", "That has not happened yet.", "an instant that has passed");
        }
        if (entry.releasedByMemberId() != null) {
            roster.getMember(entry.releasedByMemberId());
        }
        List<Assessment> assessed =
                entry.assessmentIds().stream().map(assessments::require).toList();
        Target target = requireOneEach(entry, assessed);
        nonReleases.requireNoneStands(entry.caseIds());
        inTheWay.requireNothing(entry, assessed);

        var row = new Release(target, entry, at);
        requireRightFeeding(row);
        releases.persistAndFlush(row);
        for (Assessment assessment : assessed) {
            animals.persist(new ReleasedAnimal(row.id(), assessment.caseId, assessment.id(), at));
        }
        entry.permits().forEach(permit -> lifted.persist(LiftedTest.byPermit(row.id(), permit, at)));
        entry.overrides().forEach(override -> lifted.persist(LiftedTest.byOverride(row.id(), override, at)));
        releases.flush();
        for (Assessment assessment : assessed) {
            cases.endByRelease(assessment.caseId, row.id(), at);
        }
        return view(row);
    }

    @Transactional
    public ReleaseView getRelease(UUID id) {
        return view(require(id));
    }

    @Transactional
    public ReleaseView correct(UUID id, ReleaseCorrection correction) {
        Release row = require(id);
        UUID member = correction.releasedByMemberId().value();
        if (member != null) {
            roster.getMember(member);
        }
        row.correct(correction, clock);
        requireRightFeeding(row);
        releases.flush();
        return view(row);
    }

    /** The animals of a soft release are fed at the place no longer. */
    @Transactional
    public ReleaseView endSupportFeeding(UUID id, SupportFeedingEnd end) {
        Release row = require(id);
        Instant at = end.at() == null ? clock.instant() : end.at();
        if (at.isAfter(clock.instant())) {
            throw InvalidException.of("at", "That has not happened yet.", "an instant that has passed");
        }
        if (at.isBefore(row.at())) {
            throw InvalidException.of("at", "That was before they were let go.", "an instant after " + row.at());
        }
        row.endSupportFeeding(at, end.endedBy());
        releases.flush();
        return view(row);
    }

    private void requireRightFeeding(Release row) {
        if (row.supportFeedingUntil == null) {
            return;
        }
        if (!row.isSoft()) {
            throw InvalidException.of(
                    "supportFeedingUntil", "Only a soft release has support feeding.", "manner soft, or no such day");
        }
        LocalDate day = row.at().atZone(region.zone()).toLocalDate();
        if (row.supportFeedingUntil.isBefore(day)) {
            throw InvalidException.of(
                    "supportFeedingUntil", "That was before they were let go.", "a day from " + day + " on");
        }
    }

    /** Takes back that an animal was let go: its case goes on with whoever had it. */
    @Transactional
    public ReleaseView withdraw(UUID id, UUID caseId, String reason) {
        Release row = require(id);
        animals.find("releaseId = ?1 and caseId = ?2", id, caseId)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("animal of that release", caseId))
                .withdraw(clock.instant(), reason);
        cases.withdrawRelease(caseId, id, reason);
        animals.flush();
        return view(row);
    }

    private Release require(UUID id) {
        return releases.findByIdOptional(id).orElseThrow(() -> new NotFoundException("release", id));
    }

    @Transactional
    public Page<ReleaseView> listReleases(int limit, @Nullable UUID before) {
        List<Release> rows = sight.seesOwnOnly("release")
                ? releases.list("id in ?1 order by id desc", sight.listOwn("release", before, limit + 1, null))
                : releases.find("?1 is null or id < ?1 order by id desc", before)
                        .page(0, limit + 1)
                        .list();
        return Page.of(rows, limit, this::view, row -> row.id().toString());
    }

    @Transactional
    public Document getDocument(UUID releaseId, UUID liftedId) {
        LiftedTest row = lifted.find("id = ?1 and releaseId = ?2", liftedId, releaseId)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("document", liftedId));
        String name = row.documentName;
        String mediaType = row.documentMediaType;
        byte[] content = row.document;
        if (name == null || mediaType == null || content == null) {
            throw new NotFoundException("document", liftedId);
        }
        return new Document(name, mediaType, content);
    }

    /** Each case once with one assessment of its own, and all of one place. */
    private static Target requireOneEach(ReleaseEntry entry, List<Assessment> assessed) {
        Set<UUID> named = new HashSet<>(entry.caseIds());
        Set<UUID> of = assessed.stream().map(row -> row.caseId).collect(Collectors.toSet());
        boolean oneEach = named.size() == entry.caseIds().size() && assessed.size() == named.size();
        if (!oneEach || !named.equals(of)) {
            throw InvalidException.of(
                    "assessmentIds", "The assessments are not one of each case.", "one assessment of each of caseIds");
        }
        Target target = assessed.get(0).target();
        if (assessed.stream().anyMatch(row -> !row.target().equals(target))) {
            throw InvalidException.of(
                    "assessmentIds", "They were assessed for different places.", "assessments of one place");
        }
        return target;
    }

    private ReleaseView view(Release row) {
        return new ReleaseView(
                row.id(),
                row.siteId,
                row.decimalLatitude,
                row.decimalLongitude,
                row.coordinateUncertaintyInMeters,
                row.happenedAt(),
                row.approvedBy,
                row.releasedByMemberId,
                row.warningsRead,
                row.weather,
                row.light,
                row.manner,
                row.supportFeedingUntil,
                row.supportFeedingEndedAt,
                row.supportFeedingEndedBy,
                row.othersPresent,
                row.raisedTogether,
                animals.list("releaseId = ?1 order by id", row.id()).stream()
                        .map(animal -> new ReleasedAnimalView(
                                animal.caseId,
                                animal.assessmentId,
                                animal.withdrawnAt,
                                animal.withdrawnAt == null ? null : animal.revisionReason()))
                        .toList(),
                lifted.list("releaseId = ?1 order by id", row.id()).stream()
                        .map(ReleaseService::view)
                        .toList(),
                photographs.list(row.id()),
                sightings.afterRelease(row.id()),
                row.recordedAt(),
                row.recordedBy(),
                records.of(row));
    }

    private static LiftedView view(LiftedTest row) {
        return new LiftedView(
                row.id(),
                row.findingKey,
                row.kind,
                row.reason,
                row.agreedByMemberId,
                row.permitNumber,
                row.issuedBy,
                row.documentName,
                row.recordedBy(),
                row.recordedAt());
    }
}
