package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
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
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RefusedException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Records releases, once nothing stands in their way that nothing has lifted. */
@ApplicationScoped
public class ReleaseService {
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
    public ReleaseView release(ReleaseEntries.ReleaseEntry entry) {
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
    public ReleaseView correct(UUID id, ReleaseEntries.ReleaseCorrection correction) {
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
    public ReleaseView endSupportFeeding(UUID id, ReleaseEntries.SupportFeedingEnd end) {
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
    private static Target requireOneEach(ReleaseEntries.ReleaseEntry entry, List<Assessment> assessed) {
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
