package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.animal.referral.ReferralService;
import org.culvert.call.IncidentService;
import org.culvert.call.IncidentView;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.ReadTransaction;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.Holder;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Opens cases, follows where the animal is, and ends them. */
@ApplicationScoped
public class CaseService {
    /** A case that was opened, and its animal. */
    public record TakenIn(UUID caseId, UUID animalId) {}

    private static final String LATE = "exists (select 1 from cases c where c.id = h.id"
            + " and c.recorded_at > c.happened_at + interval '1 hour')";

    private final CaseRepositories.Animals animals;
    private final CaseRepositories.Cases cases;
    private final CaseRepositories.WhereaboutsRows whereabouts;
    private final CaseRepositories.Fates fates;
    private final CaseRepositories.Bodies bodies;
    private final CustodyService custody;
    private final CaseReader reader;
    private final IncidentService incidents;
    private final TaxonService taxa;
    private final Sight sight;
    private final Clock clock;
    private final ReadTransaction reading;

    CaseService(
            CaseRepositories.Animals animals,
            CaseRepositories.Cases cases,
            CaseRepositories.WhereaboutsRows whereabouts,
            CaseRepositories.Fates fates,
            CaseRepositories.Bodies bodies,
            CustodyService custody,
            CaseReader reader,
            IncidentService incidents,
            TaxonService taxa,
            Sight sight,
            Clock clock,
            ReadTransaction reading) {
        this.animals = animals;
        this.cases = cases;
        this.whereabouts = whereabouts;
        this.fates = fates;
        this.bodies = bodies;
        this.custody = custody;
        this.reader = reader;
        this.incidents = incidents;
        this.taxa = taxa;
        this.sight = sight;
        this.clock = clock;
        this.reading = reading;
    }

    /** Opens a case for an animal; its origin is its mother's found place when it has a mother, else its incident's. */
    @Transactional
    public CaseView open(CaseEntries.CaseEntry entry) {
        Instant foundAt = entry.foundAt() == null ? clock.instant() : entry.foundAt();
        Case row = begin(entry, foundAt);
        if (entry.holder() != null) {
            custody.begin(row.id(), Holder.require("holder", entry.holder()), foundAt);
        }
        return reader.view(row);
    }

    /**
     * Opens a case for an animal that was found at one time and came to its holder at another; who had it between is not
     * known. A dead one was dead when it was found, and the holder has its body.
     *
     * @param where it is from then on, in words
     */
    @Transactional
    public TakenIn takeIn(CaseEntries.CaseEntry entry, Instant foundAt, Instant takenInAt, boolean dead, String where) {
        Holder holder = Holder.require("holder", entry.holder());
        Case row = begin(entry, foundAt);
        if (dead) {
            CaseEntries.FateEntry fate = CaseEntries.FateEntry.of(CaseEntries.FateKind.deadWhenFound, foundAt);
            fates.persist(new Fate(row.id(), fate, null, foundAt));
            bodies.persist(new Body(row.id(), holder, barbiturateIn(fate), foundAt));
        } else {
            custody.begin(row.id(), holder, takenInAt);
            whereabouts.persist(new Whereabouts(
                    row.id(), new CaseEntries.WhereaboutsEntry(null, null, where, takenInAt), takenInAt));
        }
        return new TakenIn(row.id(), row.animalId);
    }

    private Case begin(CaseEntries.CaseEntry entry, Instant foundAt) {
        IncidentView incident = incidents.getIncident(entry.incidentId(), false);
        Animal animal = animalOf(entry);
        var row = new Case(animal.id(), entry.incidentId(), entry.attendanceId(), incident.cause(), foundAt);
        row.dependentYoung = entry.dependentYoung();
        Case motherCase = animal.motherId == null
                ? null
                : cases.find("animalId = ?1 order by happenedAt desc", animal.motherId)
                        .firstResult();
        if (!entry.originUnknown()) {
            if (motherCase != null) {
                row.foundAt(motherCase.foundPlaceId, true);
            } else if (incident.place() != null) {
                row.foundAt(incident.place().id(), false);
            }
        }
        cases.persistAndFlush(row);
        return row;
    }

    /** Hatchlings and other young of a known animal: each a case with its mother's found place. */
    @Transactional
    public CaseView openForYoung(UUID motherCaseId, CaseEntries.AnimalEntry young, Instant bornAt, Holder holder) {
        Case mother = require(motherCaseId);
        var entry = new CaseEntries.AnimalEntry(
                young.scientificName(),
                young.identificationVerificationStatus(),
                young.sex(),
                young.lifeStage(),
                mother.animalId,
                young.naturalMarks(),
                young.bornOn(),
                young.bornDoubtDays());
        Animal animal = Animal.of(entry, taxonId(entry.scientificName()));
        animals.persistAndFlush(animal);
        var row = new Case(animal.id(), mother.incidentId, null, mother.cause, bornAt);
        row.foundAt(mother.foundPlaceId, true);
        cases.persistAndFlush(row);
        custody.begin(row.id(), holder, bornAt);
        return reader.view(row);
    }

    @Transactional
    public CaseView getCase(UUID id) {
        return reading.once(List.of(CaseView.class, id), () -> reader.view(require(id)));
    }

    /** Some cases at once, by their identifiers; those that are not there are left out. */
    @Transactional
    public Map<UUID, CaseView> casesById(Collection<UUID> ids) {
        if (ids.isEmpty()) {
            return Map.of();
        }
        List<Case> rows = cases.list("id in ?1", ids);
        Function<Case, CaseView> viewer = reader.viewer(rows);
        return rows.stream().collect(Collectors.toMap(Case::id, viewer));
    }

    /** Numbers of the cases of an incident that have a found place of their own, and another one than this. */
    @Transactional
    public List<Long> numbersFoundElsewhere(UUID incidentId, UUID placeId) {
        return cases
                .list(
                        "incidentId = ?1 and origin = 'found' and foundPlaceId <> ?2 order by number",
                        incidentId,
                        placeId)
                .stream()
                .map(row -> row.number)
                .toList();
    }

    /**
     * Cases of other animals that may be the mother of that of a case: hers where she is known, those of the same incident,
     * then those of the same species that were found before it, the latest first.
     */
    @Transactional
    public List<CaseView> listPossibleMothers(UUID caseId, int most) {
        Case own = require(caseId);
        Animal young = animals.findById(own.animalId);
        UUID known = young.motherId == null ? young.id() : young.motherId;
        List<Case> rows = cases.find("""
                        select c from Case c join Animal a on a.id = c.animalId
                        where a.id <> ?1 and (a.id = ?2 or a.sex <> 'male'
                            and (c.incidentId = ?3 or a.taxonId = ?4 and c.happenedAt <= ?5))
                        order by case when a.id = ?2 then 0 when c.incidentId = ?3 then 1 else 2 end, c.happenedAt desc
                        """, young.id(), known, own.incidentId, young.taxonId, own.happenedAt())
                .page(0, most)
                .list();
        return rows.stream().map(reader.viewer(rows)).toList();
    }

    /** Cases of those who were taken in under a temporary number, newest first; a surge gives each number once. */
    @Transactional
    public Page<CaseView> listByTemporaryNumber(String temporaryNumber) {
        List<UUID> ids = reader.caseIdsByTemporaryNumber(temporaryNumber).stream()
                .filter(id -> !sight.seesOwnOnly("case") || sight.isOwn("case", id))
                .toList();
        List<Case> rows = ids.isEmpty() ? List.of() : cases.list("id in ?1 order by id desc", ids);
        return Page.of(rows, rows.size(), reader.viewer(rows), row -> row.id().toString());
    }

    /** The case that has a number in the network's own count, if the asker may see it. */
    @Transactional
    public Optional<UUID> findByNumber(long number) {
        return cases.find("number", number)
                .firstResultOptional()
                .map(Case::id)
                .filter(id -> !sight.seesOwnOnly("case") || sight.isOwn("case", id));
    }

    @Transactional
    public CaseView.AnimalView getAnimal(UUID id) {
        return reader.view(animals.findByIdOptional(id).orElseThrow(() -> new NotFoundException("animal", id)));
    }

    @Transactional
    public CaseView.WhereaboutsView getWhereabouts(UUID id) {
        return reader.view(
                whereabouts.findByIdOptional(id).orElseThrow(() -> new NotFoundException("whereabouts", id)));
    }

    @Transactional
    public CaseView.HandOverView getHandOver(UUID id) {
        return reader.view(custody.require(id));
    }

    /** Why the taker of a hand-over may not hold the animal, as far as is entered; nobody is refused for it. */
    @Transactional
    public List<ReferralService.ReferOutView> referOut(UUID caseId, CaseEntries.HandOverEntry entry) {
        return custody.isOfNetwork(entry.taker()) && entry.otherLicence() == null
                ? reader.view(require(caseId)).referOut()
                : List.of();
    }

    /** Where the animal of a case was, from the first on. */
    @Transactional
    public List<CaseView.WhereaboutsView> listWhereabouts(UUID caseId) {
        require(caseId);
        return whereabouts.list("caseId = ?1 order by happenedAt, id", caseId).stream()
                .map(row -> reader.view(row))
                .toList();
    }

    /**
     * Cases, newest first: of those who see only their own organisation's, these.
     *
     * @param lateOnly only those entered more than an hour after the animal was found
     */
    @Transactional
    public Page<CaseView> listCases(int limit, @Nullable UUID before, boolean lateOnly) {
        List<Case> rows = sight.seesOwnOnly("case")
                ? cases.list(
                        "id in ?1 order by id desc", sight.listOwn("case", before, limit + 1, lateOnly ? LATE : null))
                : cases.find(
                                "(?1 is null or id < ?1) and (?2 = false or recordedAt > happenedAt + 1 hour) order by id desc",
                                before,
                                lateOnly)
                        .page(0, limit + 1)
                        .list();
        return Page.of(rows, limit, reader.viewer(rows), row -> row.id().toString());
    }

    @Transactional
    public CaseView move(UUID caseId, CaseEntries.WhereaboutsEntry entry) {
        Case row = require(caseId);
        if (entry.organisationId() == null && entry.memberId() == null && entry.words() == null) {
            throw InvalidException.of("words", "It does not say where.", "organisationId, memberId or words");
        }
        whereabouts.persistAndFlush(new Whereabouts(caseId, entry, entry.at() == null ? clock.instant() : entry.at()));
        return reader.view(row);
    }

    /** Ends a case. A dead animal leaves a body, which stays with whoever had the animal. */
    @Transactional
    public CaseView end(UUID caseId, CaseEntries.FateEntry entry) {
        if (entry.fate() == CaseEntries.FateKind.released) {
            throw InvalidException.of(
                    "fate", "A release is recorded at its site.", "POST /api/releases, which ends the case");
        }
        return settle(caseId, entry, null);
    }

    /** Ends a case by a release that the room above has recorded. */
    @Transactional
    public CaseView endByRelease(UUID caseId, UUID releaseId, Instant at) {
        return settle(caseId, CaseEntries.FateEntry.of(CaseEntries.FateKind.released, at), releaseId);
    }

    /** Takes back that a release ended a case, for the room above: it goes on with whoever had the animal. */
    @Transactional
    public void withdrawRelease(UUID caseId, UUID releaseId, String reason) {
        custody.lock(caseId);
        Fate fate = fates.find("caseId = ?1 and releaseId = ?2 and withdrawnAt is null", caseId, releaseId)
                .firstResultOptional()
                .orElseThrow(() -> new ConflictException("That case did not end by this release."));
        fate.withdraw(clock.instant(), reason);
        custody.moveEnd(caseId, java.util.Objects.requireNonNull(fate.happenedAt()), null, reason);
        fates.flush();
    }

    /** Holds cases until the transaction ends, so that for the rooms above a release and what forbids it do not cross. */
    @Transactional
    public void hold(Collection<UUID> caseIds) {
        caseIds.stream().distinct().sorted().forEach(custody::lock);
    }

    private CaseView settle(UUID caseId, CaseEntries.FateEntry entry, @Nullable UUID releaseId) {
        custody.lock(caseId);
        Case row = require(caseId);
        if (fates.count("caseId = ?1 and withdrawnAt is null", caseId) > 0) {
            throw new ConflictException("That case has ended already.");
        }
        if (custody.pending(caseId) != null) {
            throw new ConflictException("A hand-over is pending: let it be accepted or refused first.");
        }
        Instant at = entry.at() == null ? clock.instant() : entry.at();
        requireTold(entry, at);
        if (row.happenedAt() != null && at.isBefore(row.happenedAt())) {
            throw InvalidException.of("at", "It ended before it began.", "an instant after " + row.happenedAt());
        }
        Holder holder = custody.findHolder(caseId, at).orElse(null);
        custody.end(caseId, at);
        fates.persistAndFlush(new Fate(caseId, entry, releaseId, at));
        if (entry.fate().dead()) {
            bodies.persistAndFlush(new Body(caseId, holder, barbiturateIn(entry), at));
        }
        return reader.view(row);
    }

    @Transactional
    public CaseView dispose(UUID caseId, CaseEntries.DisposalEntry entry) {
        Case row = require(caseId);
        Body body = bodies.find("caseId = ?1 and withdrawnAt is null", caseId)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("body of case", caseId));
        if (body.disposal != null) {
            throw new ConflictException("What became of that body is recorded already: " + body.disposal + ".");
        }
        body.dispose(entry.disposal(), entry.at() == null ? clock.instant() : entry.at());
        bodies.flush();
        return reader.view(row);
    }

    /** @param at when it ended */
    static void requireTold(CaseEntries.FateEntry entry, Instant at) {
        if (entry.fate() == CaseEntries.FateKind.euthanased) {
            requireTold("method", entry.method(), "how");
            requireTold("authority", entry.authority(), "under what authority, such as a vet's registration");
            requireTold("approvedBy", entry.approvedBy(), "who approved it");
            requireTold("deathConfirmedBy", entry.deathConfirmedBy(), "who confirmed that it is dead");
        }
        if (entry.deathConfirmedBy() != null && !entry.fate().dead()) {
            throw InvalidException.of("deathConfirmedBy", "It did not die.", "nothing, or an end in death");
        }
        Instant confirmed = entry.deathConfirmedAt();
        if (confirmed != null && entry.deathConfirmedBy() == null) {
            throw InvalidException.of("deathConfirmedBy", "It does not say by whom.", "who confirmed that it is dead");
        }
        if (confirmed != null && confirmed.isBefore(at)) {
            throw InvalidException.of("deathConfirmedAt", "That was before it died.", "an instant from " + at + " on");
        }
    }

    private static void requireTold(String field, @Nullable String told, String wanted) {
        if (isBlank(told)) {
            throw InvalidException.of(
                    field,
                    "Euthanasia needs its method, its authority, who approved it, and who confirmed that it is dead.",
                    wanted);
        }
    }

    /** Unless told otherwise a body of an animal that was put down may have barbiturate in it. */
    static String barbiturateIn(CaseEntries.FateEntry entry) {
        if (entry.barbiturate()) {
            return "yes";
        }
        return entry.fate() == CaseEntries.FateKind.euthanased ? "unknown" : "no";
    }

    private Animal animalOf(CaseEntries.CaseEntry entry) {
        if ((entry.animalId() == null) == (entry.animal() == null)) {
            throw InvalidException.of("animal", "A case is of one animal.", "either animalId or animal");
        }
        UUID knownId = entry.animalId();
        if (knownId != null) {
            return animals.findByIdOptional(knownId).orElseThrow(() -> new NotFoundException("animal", knownId));
        }
        CaseEntries.AnimalEntry told = java.util.Objects.requireNonNull(entry.animal());
        if (told.motherAnimalId() != null
                && animals.findByIdOptional(told.motherAnimalId()).isEmpty()) {
            throw new NotFoundException("animal", told.motherAnimalId());
        }
        Births.require("animal.", told.bornOn(), told.bornDoubtDays(), clock);
        Animal animal = Animal.of(told, taxonId(told.scientificName()));
        animals.persistAndFlush(animal);
        return animal;
    }

    private UUID taxonId(String scientificName) {
        return taxa.findByScientificName(scientificName)
                .orElseThrow(() -> InvalidException.of(
                        "animal.scientificName", "There is no taxon " + scientificName + ".", "a name from /api/taxa"))
                .id();
    }

    Case require(UUID id) {
        return cases.findByIdOptional(id).orElseThrow(() -> new NotFoundException("case", id));
    }

    private static boolean isBlank(@Nullable String text) {
        return text == null || text.isBlank();
    }
}
