package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Corrects what was entered of calls and incidents; what it was before stays in the revisions. */
@ApplicationScoped
public class CallCorrector {
    private static final int LONGEST_WORDS = 20000;

    private final Ledger.Calls calls;
    private final Ledger.Incidents incidents;
    private final Ledger.Animals animals;
    private final Ledger.People people;
    private final Ledger.Said said;
    private final CallService service;
    private final TaxonService taxa;
    private final Clock clock;

    CallCorrector(
            Ledger.Calls calls,
            Ledger.Incidents incidents,
            Ledger.Animals animals,
            Ledger.People people,
            Ledger.Said said,
            CallService service,
            TaxonService taxa,
            Clock clock) {
        this.calls = calls;
        this.incidents = incidents;
        this.animals = animals;
        this.people = people;
        this.said = said;
        this.service = service;
        this.taxa = taxa;
        this.clock = clock;
    }

    @Transactional
    public void correctIncident(UUID id, CallCorrections.IncidentCorrection correction) {
        Incident incident = incidents.findByIdOptional(id).orElseThrow(() -> new NotFoundException("incident", id));
        requireCause(correction.cause().value());
        incident.correct(correction, clock);
        incidents.flush();
    }

    @Transactional
    public void correctCall(UUID id, CallCorrections.CallCorrection correction) {
        Call call = calls.findByIdOptional(id).orElseThrow(() -> new NotFoundException("call", id));
        requireCause(correction.cause().value());
        if (correction.caller().isMade()) {
            correctCaller(call, correction.caller().value(), correction.reason());
        }
        if (correction.words().isMade()) {
            correctWords(call, correction.words().value(), correction.reason());
        }
        call.correct(correction, clock);
        calls.flush();
    }

    @Transactional
    public void correctAnimal(UUID callId, UUID animalId, CallCorrections.ReportedAnimalCorrection correction) {
        ReportedAnimal row = animals.findByIdOptional(animalId)
                .filter(animal -> animal.callId.equals(callId))
                .orElseThrow(() -> new NotFoundException("animal of that call", animalId));
        if (correction.taxonGroup().isMade()) {
            String key = correction.taxonGroup().value();
            row.taxonGroupId =
                    key == null ? null : taxa.requireGroup("taxonGroup", key).id();
            row.taxonId = null;
        }
        if (correction.scientificName().isMade()) {
            identify(row, correction.scientificName().value());
        }
        row.correct(correction);
        animals.flush();
    }

    private void identify(ReportedAnimal row, @Nullable String scientificName) {
        if (scientificName == null) {
            row.taxonId = null;
            return;
        }
        TaxonService.TaxonView taxon = taxa.findByScientificName(scientificName)
                .orElseThrow(() -> InvalidException.of(
                        "scientificName", "There is no taxon " + scientificName + ".", "a name from /api/taxa"));
        row.taxonId = taxon.id();
        row.taxonGroupId = taxon.taxonGroupId();
    }

    private void correctCaller(Call call, CallEntry.@Nullable Caller caller, String reason) {
        Person known = call.callerId == null ? null : people.findById(call.callerId);
        if (known != null && known.erasedAt == null) {
            known.correct(caller, reason);
        } else if (caller != null) {
            Person person = Person.of(caller, java.util.Objects.requireNonNull(call.happenedAt()));
            people.persist(person);
            call.callerId = person.id();
        }
    }

    private void correctWords(Call call, @Nullable String words, String reason) {
        if (words != null && words.length() > LONGEST_WORDS) {
            throw InvalidException.of("words", "This is too long.", "at most " + LONGEST_WORDS + " characters");
        }
        Words known = call.wordsId == null ? null : said.findById(call.wordsId);
        if (known != null && known.erasedAt == null) {
            known.correct(words, reason);
        } else if (words != null && !words.isBlank()) {
            var row = new Words(words, java.util.Objects.requireNonNull(call.happenedAt()));
            said.persist(row);
            call.wordsId = row.id();
        }
    }

    private void requireCause(@Nullable String cause) {
        if (cause != null) {
            service.requireCause(cause);
        }
    }
}
