package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.call.CallService;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.road.PlaceAsGiven;
import org.culvert.roster.Holder;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Corrects what was entered of cases and their animals; what it was before stays in the revisions. */
@ApplicationScoped
public class CaseCorrector {
    private final CaseRepositories.Animals animals;
    private final CaseRepositories.WhereaboutsRows whereabouts;
    private final CaseRepositories.Fates fates;
    private final CaseRepositories.Bodies bodies;
    private final CaseService cases;
    private final CustodyService custody;
    private final CallService calls;
    private final TaxonService taxa;
    private final Clock clock;

    CaseCorrector(
            CaseRepositories.Animals animals,
            CaseRepositories.WhereaboutsRows whereabouts,
            CaseRepositories.Fates fates,
            CaseRepositories.Bodies bodies,
            CaseService cases,
            CustodyService custody,
            CallService calls,
            TaxonService taxa,
            Clock clock) {
        this.animals = animals;
        this.whereabouts = whereabouts;
        this.fates = fates;
        this.bodies = bodies;
        this.cases = cases;
        this.custody = custody;
        this.calls = calls;
        this.taxa = taxa;
        this.clock = clock;
    }

    @Transactional
    public void correctAnimal(UUID id, CaseCorrections.AnimalCorrection correction) {
        Animal animal = animals.findByIdOptional(id).orElseThrow(() -> new NotFoundException("animal", id));
        UUID taxonId = animal.taxonId;
        if (correction.scientificName().isMade()) {
            String name = correction.scientificName().over("scientificName", "");
            taxonId = taxa.findByScientificName(name)
                    .orElseThrow(() -> InvalidException.of(
                            "scientificName", "There is no taxon " + name + ".", "a name from /api/taxa"))
                    .id();
        }
        UUID mother = correction.motherId().value();
        if (mother != null
                && (mother.equals(id) || animals.findByIdOptional(mother).isEmpty())) {
            throw InvalidException.of("motherId", "No other animal has this identifier.", "the mother's identifier");
        }
        animal.correct(correction, taxonId);
        Births.require("", animal.bornOn, animal.bornDoubtDays, clock);
        animals.flush();
    }

    @Transactional
    public void correctCase(UUID id, CaseCorrections.CaseCorrection correction) {
        Case row = cases.require(id);
        String cause = correction.cause().value();
        if (cause != null) {
            calls.requireKnownCause(cause);
        }
        if (correction.foundPlace().isMade()) {
            PlaceAsGiven place = correction.foundPlace().value();
            row.foundAt(place == null ? null : calls.keepFoundPlace(place), false);
        }
        row.correct(correction, clock);
        custody.requireNotBefore(id, Objects.requireNonNull(row.happenedAt()));
        animals.flush();
    }

    @Transactional
    public void correctWhereabouts(UUID id, CaseCorrections.WhereaboutsCorrection correction) {
        Whereabouts row = whereabouts.findByIdOptional(id).orElseThrow(() -> new NotFoundException("whereabouts", id));
        row.correct(correction, clock);
        if (row.organisationId == null && row.memberId == null && row.words == null) {
            throw InvalidException.of("words", "It does not say where.", "organisationId, memberId or words");
        }
        whereabouts.flush();
    }

    /** Corrects how a case ended; custody and the body follow where the time changes. */
    @Transactional
    public void correctFate(UUID caseId, CaseCorrections.FateCorrection correction) {
        Fate fate = requireFate(caseId);
        CaseEntries.FateKind before = CaseEntries.FateKind.valueOf(fate.fate);
        CaseEntries.FateKind kind =
                CaseEntries.FateKind.valueOf(Corrections.name("fate", correction.fate(), fate.fate));
        if (kind != before && (kind == CaseEntries.FateKind.released || before == CaseEntries.FateKind.released)) {
            throw InvalidException.of(
                    "fate", "A release is recorded at its site.", "another end, or POST /api/releases");
        }
        if (kind.dead() != before.dead()) {
            throw InvalidException.of(
                    "fate",
                    "A dead animal leaves a body, a living one does not.",
                    "an end of the same sort; else withdraw this one and record the right one");
        }
        Instant ended = Objects.requireNonNull(fate.happenedAt());
        Instant at = Corrections.known("at", correction.at(), ended, clock);
        if (at.isBefore(Objects.requireNonNull(cases.require(caseId).happenedAt()))) {
            throw InvalidException.of("at", "It ended before it began.", "an instant after the animal was found");
        }
        var entry = new CaseEntries.FateEntry(
                kind,
                at,
                Corrections.text("method", correction.method(), fate.method, 500),
                Corrections.text("authority", correction.authority(), fate.authority, 200),
                Corrections.text("approvedBy", correction.approvedBy(), fate.approvedBy, 200),
                correction.barbiturate().over("barbiturate", fate.barbiturate),
                Corrections.text("deathConfirmedBy", correction.deathConfirmedBy(), fate.deathConfirmedBy, 200),
                Corrections.past("deathConfirmedAt", correction.deathConfirmedAt(), fate.deathConfirmedAt, clock));
        CaseService.requireTold(entry, at);
        fate.correct(entry, at, correction.reason());
        custody.moveEnd(caseId, ended, at, correction.reason());
        findBody(caseId, body -> body.diedAt(at, CaseService.barbiturateIn(entry), correction.reason()));
        fates.flush();
    }

    /** Takes back that a case ended: it goes on with whoever had the animal. */
    @Transactional
    public void withdrawFate(UUID caseId, String reason) {
        Fate fate = requireFate(caseId);
        if (fate.releaseId != null) {
            throw new ConflictException("This case ended by a release: take its animal back from there.");
        }
        Instant now = clock.instant();
        fate.withdraw(now, reason);
        findBody(caseId, body -> body.withdraw(now, reason));
        custody.moveEnd(caseId, Objects.requireNonNull(fate.happenedAt()), null, reason);
        fates.flush();
    }

    @Transactional
    public void correctBody(UUID caseId, CaseCorrections.BodyCorrection correction) {
        Holder holder = correction.holder().value();
        if (holder != null) {
            custody.requireKnown("holder", Holder.require("holder", holder));
        }
        Body body = bodies.find("caseId = ?1 and withdrawnAt is null", caseId)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("body of case", caseId));
        body.correct(correction, clock);
        bodies.flush();
    }

    private Fate requireFate(UUID caseId) {
        custody.lock(caseId);
        return fates.find("caseId = ?1 and withdrawnAt is null", caseId)
                .firstResultOptional()
                .orElseThrow(() -> new ConflictException("That case has not ended."));
    }

    private void findBody(UUID caseId, java.util.function.Consumer<Body> change) {
        @Nullable
        Body body = bodies.find("caseId = ?1 and withdrawnAt is null", caseId).firstResult();
        if (body != null) {
            change.accept(body);
        }
    }
}
