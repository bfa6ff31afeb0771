package org.culvert.call;

import io.micrometer.core.annotation.Counted;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.PlaceReading;
import org.culvert.taxon.CautionService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Takes calls. */
@ApplicationScoped
public class CallService {
    /** What was kept of a call. */
    public record Kept(UUID callId, UUID incidentId, long incidentNumber, Set<UUID> taxonGroupIds) {}

    private final Ledger.Places places;
    private final Ledger.People people;
    private final Ledger.Said said;
    private final Ledger.Calls calls;
    private final Ledger.Animals animals;
    private final Ledger.Incidents incidents;
    private final PlaceReading reading;
    private final TaxonService taxa;
    private final CautionService cautions;
    private final SameIncidentFinder finder;
    private final EntityManager entities;
    private final Clock clock;
    private final Set<String> knownCauses = ConcurrentHashMap.newKeySet();

    CallService(
            Ledger.Places places,
            Ledger.People people,
            Ledger.Said said,
            Ledger.Calls calls,
            Ledger.Animals animals,
            Ledger.Incidents incidents,
            PlaceReading reading,
            TaxonService taxa,
            CautionService cautions,
            SameIncidentFinder finder,
            EntityManager entities,
            Clock clock) {
        this.places = places;
        this.people = people;
        this.said = said;
        this.calls = calls;
        this.animals = animals;
        this.incidents = incidents;
        this.reading = reading;
        this.taxa = taxa;
        this.cautions = cautions;
        this.finder = finder;
        this.entities = entities;
        this.clock = clock;
    }

    /** Keeps a call and says what the dispatcher should hear: cautions, and incidents it may be about. */
    @Counted("culvert.calls.taken")
    @Transactional
    public CallReceipt receive(CallEntry entry) {
        Kept kept = keep(entry, null);
        return getReceipt(kept.callId());
    }

    /** What there is to say of a call as it is known now. */
    @Transactional
    public CallReceipt getReceipt(UUID callId) {
        Call call = calls.findByIdOptional(callId).orElseThrow(() -> new NotFoundException("call", callId));
        Incident incident = incidents.findById(call.incidentId);
        Place place = incident.placeId == null ? null : places.findById(incident.placeId);
        return new CallReceipt(
                callId,
                incident.id(),
                incident.number,
                place == null ? null : place.view(),
                peopleFirst(call.people()),
                cautionsFor(callId),
                finder.find(incident.id()));
    }

    private List<String> cautionsFor(UUID callId) {
        Set<UUID> groups = new LinkedHashSet<>();
        for (ReportedAnimal animal : animals.list("callId = ?1 order by id", callId)) {
            if (animal.taxonGroupId != null) {
                groups.add(animal.taxonGroupId);
            }
        }
        return cautions.listCautions(groups, "caller").stream()
                .map(CautionService.CautionView::words)
                .toList();
    }

    /** The sentences that whoever takes a call may have said of it. */
    Set<String> sayable(UUID callId) {
        Set<String> sentences = new LinkedHashSet<>();
        for (CallEntry.Answer hurt : CallEntry.Answer.values()) {
            for (CallEntry.Answer off : CallEntry.Answer.values()) {
                sentences.addAll(peopleFirst(new CallEntry.People(hurt, off, null)));
            }
        }
        sentences.addAll(cautionsFor(callId));
        return sentences;
    }

    /** Incidents that a call may be about that is not kept yet: near in space and time, and in kind where that is said. */
    @Transactional
    public List<CallReceipt.Candidate> listNear(Position position, double uncertaintyMetres, Set<UUID> taxonGroupIds) {
        return finder.find(position, uncertaintyMetres, clock.instant(), taxonGroupIds);
    }

    /** Why animals come to harm: keys with their words, in a stable order. */
    @Transactional
    public Map<String, String> listCauses() {
        List<?> rows = entities.createNativeQuery("select key, name from causes order by collision desc, name")
                .getResultList();
        Map<String, String> causes = new LinkedHashMap<>();
        rows.forEach(row -> causes.put((String) ((Object[]) row)[0], (String) ((Object[]) row)[1]));
        return causes;
    }

    /**
     * Keeps a call; a new incident is made unless the call names one.
     *
     * @param importId the file it came from, or null when it was typed
     */
    @Transactional
    public Kept keep(CallEntry entry, @Nullable UUID importId) {
        requireCause(entry.cause());
        Instant now = clock.instant();
        Instant receivedAt = entry.receivedAt() == null ? now : entry.receivedAt();
        if (receivedAt.isAfter(now.plusSeconds(300))) {
            throw InvalidException.of("receivedAt", "This lies in the future.", "an instant that has passed");
        }
        if (entry.happenedAt() != null && entry.happenedAt().isAfter(receivedAt.plusSeconds(300))) {
            throw InvalidException.of(
                    "happenedAt", "It cannot have happened after the call about it.", "an instant before receivedAt");
        }
        @Nullable UUID placeId = entry.place() == null ? null : keepPlace(entry.place(), importId);
        Incident incident = incidentOf(entry, placeId, receivedAt, importId);
        UUID callId = keepCall(entry, incident, placeId, receivedAt, importId);
        Set<UUID> groups = keepAnimals(entry, callId, importId);
        calls.flush();
        return new Kept(callId, incident.id(), incident.number, groups);
    }

    private Incident incidentOf(CallEntry entry, @Nullable UUID placeId, Instant receivedAt, @Nullable UUID importId) {
        UUID knownId = entry.incidentId();
        if (knownId != null) {
            Incident known =
                    incidents.findByIdOptional(knownId).orElseThrow(() -> new NotFoundException("incident", knownId));
            known.learn(placeId, entry.happenedAt(), entry.cause());
            return known;
        }
        var incident = new Incident(entry.cause(), placeId, entry.happenedAt(), entry.happenedNotBefore(), receivedAt);
        incident.importedBy(importId);
        incidents.persist(incident);
        return incident;
    }

    private UUID keepCall(
            CallEntry entry, Incident incident, @Nullable UUID placeId, Instant receivedAt, @Nullable UUID importId) {
        UUID callerId = null;
        if (entry.caller() != null) {
            Person person = Person.of(entry.caller(), receivedAt);
            person.importedBy(importId);
            people.persist(person);
            callerId = person.id();
        }
        UUID wordsId = null;
        if (entry.words() != null && !entry.words().isBlank()) {
            var words = new Words(entry.words(), receivedAt);
            words.importedBy(importId);
            said.persist(words);
            wordsId = words.id();
        }
        Call call = Call.of(entry, incident.id(), callerId, wordsId, placeId, receivedAt);
        call.importedBy(importId);
        calls.persist(call);
        return call.id();
    }

    private Set<UUID> keepAnimals(CallEntry entry, UUID callId, @Nullable UUID importId) {
        Set<UUID> groups = new LinkedHashSet<>();
        for (int i = 0; i < entry.animals().size(); i++) {
            ReportedAnimal row =
                    keepAnimal("animals." + i + ".", entry.animals().get(i), callId, importId);
            if (row.taxonGroupId != null) {
                groups.add(row.taxonGroupId);
            }
        }
        return groups;
    }

    private ReportedAnimal keepAnimal(String path, CallEntry.Animal animal, UUID callId, @Nullable UUID importId) {
        UUID taxonId = null;
        UUID groupId = null;
        if (animal.scientificName() != null) {
            TaxonService.TaxonView taxon = taxa.findByScientificName(animal.scientificName())
                    .orElseThrow(() -> InvalidException.of(
                            path + "scientificName",
                            "There is no taxon " + animal.scientificName() + ".",
                            "a name from /api/taxa, or leave it out and give taxonGroup or verbatimIdentification"));
            taxonId = taxon.id();
            groupId = taxon.taxonGroupId();
        } else if (animal.taxonGroup() != null) {
            groupId =
                    taxa.requireGroup(path + "taxonGroup", animal.taxonGroup()).id();
        }
        ReportedAnimal row = ReportedAnimal.of(animal, callId, taxonId, groupId);
        row.importedBy(importId);
        animals.persist(row);
        return row;
    }

    /** Keeps animals of a further kind that a caller tells of, as the conversation goes on. */
    @Transactional
    public UUID addAnimal(UUID callId, CallEntry.Animal animal) {
        if (calls.findByIdOptional(callId).isEmpty()) {
            throw new NotFoundException("call", callId);
        }
        UUID id = keepAnimal("", animal, callId, null).id();
        animals.flush();
        return id;
    }

    /**
     * Keeps where an animal was found after all.
     *
     * @return the place's identifier
     */
    @Transactional
    public UUID keepFoundPlace(PlaceAsGiven given) {
        return keepPlace(given, null);
    }

    /**
     * Keeps a place that something else in a request is called by.
     *
     * @param field what the place is called there
     * @return the place's identifier
     */
    @Transactional
    public UUID keepFoundPlace(String field, PlaceAsGiven given) {
        try {
            return keepPlace(given, null);
        } catch (InvalidException wrong) {
            throw new InvalidException(wrong.errors().stream()
                    .map(one -> new InvalidException.FieldError(
                            one.field().replaceFirst("^place", field), one.detail(), one.wanted(), one.otherReading()))
                    .toList());
        }
    }

    /** @throws InvalidException naming {@code cause} when there is none of that key */
    @Transactional
    public void requireKnownCause(String cause) {
        requireCause(cause);
    }

    UUID keepPlace(PlaceAsGiven given, @Nullable UUID importId) {
        Place place = Place.of(reading.understand(given));
        place.importedBy(importId);
        places.persist(place);
        return place.id();
    }

    /** Causes are never taken away, so that one seen once need not be asked for again. */
    void requireCause(String cause) {
        if (knownCauses.contains(cause)) {
            return;
        }
        List<?> known = entities.createNativeQuery("select key from causes where key = ?1")
                .setParameter(1, cause)
                .getResultList();
        if (known.isEmpty()) {
            List<?> all = entities.createNativeQuery("select key from causes order by key")
                    .getResultList();
            throw InvalidException.of(
                    "cause",
                    "There is no such cause.",
                    String.join(", ", all.stream().map(Object::toString).toList()));
        }
        knownCauses.add(cause);
    }

    private static List<String> peopleFirst(CallEntry.People people) {
        List<String> first = new ArrayList<>();
        if (people.anyoneHurt() != CallEntry.Answer.no) {
            first.add(
                    people.anyoneHurt() == CallEntry.Answer.yes
                            ? "Someone is hurt: the emergency number first. The animal waits."
                            : "Ask first: is anyone hurt?");
        }
        if (people.offTheRoad() != CallEntry.Answer.yes) {
            first.add(
                    people.offTheRoad() == CallEntry.Answer.no
                            ? "They are on the road: ask them to get well off it, hazard lights on, before anything else."
                            : "Ask: are you off the road and out of the traffic?");
        }
        return first;
    }
}
