package org.culvert.release;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.call.CallEntry.Answer;
import org.culvert.call.IncidentService;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.jspecify.annotations.Nullable;

/** What is seen and heard of animals after their release. */
@ApplicationScoped
public class SightingService {
    /** How it is known that it is an animal of the release. */
    public enum KnownBy {
        photographOrNaturalMarks,
        foundByPerson,
        tracked,
        guessed
    }

    /**
     * A sighting.
     *
     * @param caseId which of the release's animals it was; null where nobody knows which
     * @param at when; now when left out
     * @param alive no: it was found dead
     * @param coordinateUncertaintyInMeters radius around the position within which it was
     * @param newCaseId the case of its coming in again, of the same animal
     * @param incidentId the collision that killed it
     */
    public record SightingEntry(
            @Nullable UUID caseId,
            @Nullable Instant at,
            @NotNull KnownBy knownBy,
            Answer alive,
            @Nullable @DecimalMin("-90") @DecimalMax("90") Double decimalLatitude,
            @Nullable @DecimalMin("-180") @DecimalMax("180") Double decimalLongitude,
            @Nullable @Positive Double coordinateUncertaintyInMeters,
            @Nullable @Size(max = 2000) String words,
            @Nullable UUID newCaseId,
            @Nullable UUID incidentId) {
        public SightingEntry {
            alive = alive == null ? Answer.unknown : alive;
        }
    }

    public record ReleaseSightingView(
            UUID id,
            @Nullable UUID caseId,
            @Nullable Instant at,
            String knownBy,
            String alive,
            @Nullable Double decimalLatitude,
            @Nullable Double decimalLongitude,
            @Nullable Double coordinateUncertaintyInMeters,
            @Nullable String words,
            @Nullable UUID newCaseId,
            @Nullable UUID incidentId,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    /**
     * What is known of a release's animals since. Guesses do not count as sightings of an animal.
     *
     * @param animals those whose release stands
     * @param seenAlive how many of them were seen alive at some time since
     * @param foundDead how many were found dead
     * @param cameInAgain how many came into care again
     * @param nothingKnown how many nobody has seen since
     * @param unidentifiedAlive sightings alive of which nobody knows which animal it was
     * @param unidentifiedDead likewise dead
     * @param guessed sightings of which it is a guess that it was one of these animals
     */
    public record AfterRelease(
            int animals,
            int seenAlive,
            int foundDead,
            int cameInAgain,
            int nothingKnown,
            int unidentifiedAlive,
            int unidentifiedDead,
            int guessed,
            String saidPlainly) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<ReleaseSighting, UUID> {}

    private final Rows rows;
    private final ReleaseRepositories.Releases releases;
    private final ReleaseRepositories.ReleasedAnimals animals;
    private final CaseService cases;
    private final IncidentService incidents;
    private final RecordViews records;
    private final Sight sight;
    private final Clock clock;

    SightingService(
            Rows rows,
            ReleaseRepositories.Releases releases,
            ReleaseRepositories.ReleasedAnimals animals,
            CaseService cases,
            IncidentService incidents,
            RecordViews records,
            Sight sight,
            Clock clock) {
        this.rows = rows;
        this.releases = releases;
        this.animals = animals;
        this.cases = cases;
        this.incidents = incidents;
        this.records = records;
        this.sight = sight;
        this.clock = clock;
    }

    @Transactional
    public ReleaseSightingView record(UUID releaseId, SightingEntry entry) {
        Release release = require(releaseId);
        Instant released = release.at();
        Instant at = entry.at() == null ? clock.instant() : entry.at();
        if (at.isAfter(clock.instant())) {
            throw InvalidException.of("at", "That has not happened yet.", "an instant that has passed");
        }
        if (at.isBefore(released)) {
            throw InvalidException.of("at", "That was before they were let go.", "an instant after " + released);
        }
        requireWholePlace(entry);
        UUID incident = entry.incidentId();
        if (incident != null) {
            if (entry.alive() != Answer.no) {
                throw InvalidException.of(
                        "incidentId", "An incident is named of a death.", "alive no, or leave the incident out");
            }
            sight.requireSeen("incident", incident);
            incidents.getIncident(incident, false);
        }
        UUID animal = entry.caseId() == null ? null : requireReleased(releaseId, entry.caseId());
        if (entry.newCaseId() != null) {
            requireSameAnimal(entry, animal, released);
        }
        var row = new ReleaseSighting(release, animal, entry, at);
        rows.persistAndFlush(row);
        return view(row);
    }

    /** Sightings of a release, those that were taken back among them, by when they were. */
    @Transactional
    public List<ReleaseSightingView> listSightings(UUID releaseId) {
        require(releaseId);
        return rows.list("releaseId = ?1 order by happenedAt, id", releaseId).stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public void withdraw(UUID releaseId, UUID id, String reason) {
        rows.find("id = ?1 and releaseId = ?2", id, releaseId)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("sighting", id))
                .withdraw(clock.instant(), reason);
        rows.flush();
    }

    AfterRelease afterRelease(UUID releaseId) {
        Set<UUID> standing = animals.list("releaseId = ?1 and withdrawnAt is null", releaseId).stream()
                .map(row -> row.caseId)
                .collect(Collectors.toSet());
        List<ReleaseSighting> told = rows.list("releaseId = ?1 and withdrawnAt is null", releaseId).stream()
                .filter(row -> row.caseId == null || standing.contains(row.caseId))
                .toList();
        List<ReleaseSighting> known =
                told.stream().filter(row -> !row.isGuessed()).toList();
        Set<UUID> alive = identified(known, ReleaseSighting::isAlive);
        Set<UUID> dead = identified(known, ReleaseSighting::isDead);
        Set<UUID> again = identified(known, row -> row.newCaseId != null);
        Set<UUID> silent = new HashSet<>(standing);
        silent.removeAll(identified(known, row -> true));
        return new AfterRelease(
                standing.size(),
                alive.size(),
                dead.size(),
                again.size(),
                silent.size(),
                unidentified(known, ReleaseSighting::isAlive),
                unidentified(known, ReleaseSighting::isDead),
                told.size() - known.size(),
                inWords(standing.size(), alive.size(), dead.size(), silent.size()));
    }

    private static String inWords(int all, int alive, int dead, int silent) {
        return "Of " + all + " let go here, " + alive + " were seen alive since and " + dead
                + " were found dead. Nobody has told of " + silent
                + ": who is not seen is not known to be dead, nor to be alive.";
    }

    private static Set<UUID> identified(List<ReleaseSighting> told, Predicate<ReleaseSighting> which) {
        return told.stream()
                .filter(which)
                .map(row -> row.caseId)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
    }

    private static int unidentified(List<ReleaseSighting> told, Predicate<ReleaseSighting> which) {
        return (int) told.stream()
                .filter(row -> row.caseId == null && which.test(row))
                .count();
    }

    private static void requireWholePlace(SightingEntry entry) {
        boolean whole = entry.decimalLatitude() != null
                && entry.decimalLongitude() != null
                && entry.coordinateUncertaintyInMeters() != null;
        boolean none = entry.decimalLatitude() == null
                && entry.decimalLongitude() == null
                && entry.coordinateUncertaintyInMeters() == null;
        if (!whole && !none) {
            throw InvalidException.of(
                    "coordinateUncertaintyInMeters",
                    "The place is half told.",
                    "decimalLatitude, decimalLongitude and coordinateUncertaintyInMeters, or none of them");
        }
    }

    /** The animal of a case that was let go then. */
    private UUID requireReleased(UUID releaseId, UUID caseId) {
        ReleasedAnimal released = animals.find("releaseId = ?1 and caseId = ?2", releaseId, caseId)
                .firstResultOptional()
                .orElseThrow(() -> InvalidException.of(
                        "caseId", "That case is not of this release.", "a case of its animals, or none"));
        if (released.withdrawnAt != null) {
            throw new ConflictException("It was taken back that this animal was let go.");
        }
        return cases.getCase(caseId).animal().id();
    }

    private void requireSameAnimal(SightingEntry entry, @Nullable UUID animal, Instant released) {
        UUID id = Objects.requireNonNull(entry.newCaseId());
        if (animal == null) {
            throw InvalidException.of(
                    "caseId", "Who came in again is known by its new case.", "the case by which it was let go");
        }
        sight.requireSeen("case", id);
        CaseView again = cases.getCase(id);
        if (id.equals(entry.caseId())
                || !again.animal().id().equals(animal)
                || again.foundAt().isBefore(released)) {
            throw InvalidException.of(
                    "newCaseId",
                    "That is no later case of the same animal.",
                    "a case that was opened for animal " + animal + " when it was found again");
        }
    }

    private Release require(UUID id) {
        return releases.findByIdOptional(id).orElseThrow(() -> new NotFoundException("release", id));
    }

    private ReleaseSightingView view(ReleaseSighting row) {
        return new ReleaseSightingView(
                row.id(),
                row.caseId,
                row.happenedAt(),
                row.knownBy,
                row.alive,
                row.decimalLatitude,
                row.decimalLongitude,
                row.coordinateUncertaintyInMeters,
                row.words,
                row.newCaseId,
                row.incidentId,
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }
}
