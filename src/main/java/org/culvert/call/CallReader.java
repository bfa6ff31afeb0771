package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Shows calls, with or without the people in them. */
@ApplicationScoped
public class CallReader {
    private final Ledger.Calls calls;
    private final Ledger.Animals animals;
    private final Ledger.People people;
    private final Ledger.Said said;
    private final PlaceReader places;
    private final TaxonService taxa;
    private final RecordViews records;

    CallReader(
            Ledger.Calls calls,
            Ledger.Animals animals,
            Ledger.People people,
            Ledger.Said said,
            PlaceReader places,
            TaxonService taxa,
            RecordViews records) {
        this.calls = calls;
        this.animals = animals;
        this.people = people;
        this.said = said;
        this.places = places;
        this.taxa = taxa;
        this.records = records;
    }

    @Transactional
    public CallView getCall(UUID id, boolean showPeople) {
        Call call = calls.findByIdOptional(id).orElseThrow(() -> new NotFoundException("call", id));
        return views(List.of(call), showPeople).get(0);
    }

    @Transactional
    List<CallView> callsOf(Collection<UUID> incidentIds, boolean showPeople) {
        return views(calls.list("incidentId in ?1 order by happenedAt, id", incidentIds), showPeople);
    }

    private List<CallView> views(List<Call> rows, boolean showPeople) {
        if (rows.isEmpty()) {
            return List.of();
        }
        Map<UUID, List<ReportedAnimal>> told =
                animals
                        .list(
                                "callId in ?1 order by id",
                                rows.stream().map(Call::id).toList())
                        .stream()
                        .collect(Collectors.groupingBy(animal -> animal.callId));
        Map<UUID, TaxonService.TaxonView> taxaById = taxa.taxaById(told.values().stream()
                .flatMap(List::stream)
                .map(animal -> animal.taxonId)
                .filter(Objects::nonNull)
                .distinct()
                .toList());
        Map<UUID, String> groups = new HashMap<>();
        taxa.listGroups().forEach(group -> groups.put(group.id(), group.key()));
        Map<UUID, Person> callers = showPeople ? callers(rows) : Map.of();
        Map<UUID, String> words = showPeople ? words(rows, callers) : Map.of();
        Map<UUID, PlaceView> where = places.placesById(
                rows.stream().map(call -> call.placeId).filter(Objects::nonNull).toList());
        records.lookUp(rows);
        records.lookUp(told.values().stream().flatMap(List::stream).toList());
        return rows.stream()
                .map(call -> view(
                        call,
                        call.callerId == null ? null : callers.get(call.callerId),
                        call.wordsId == null ? null : words.get(call.wordsId),
                        call.placeId == null ? null : where.get(call.placeId),
                        told.getOrDefault(call.id(), List.of()).stream()
                                .map(animal -> view(animal, taxaById, groups))
                                .toList()))
                .toList();
    }

    private Map<UUID, Person> callers(List<Call> rows) {
        Set<UUID> ids = rows.stream()
                .map(call -> call.callerId)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        return ids.isEmpty()
                ? Map.of()
                : people.list("id in ?1", ids).stream().collect(Collectors.toMap(Person::id, Function.identity()));
    }

    /** What was said, but not by those who are hidden. */
    private Map<UUID, String> words(List<Call> rows, Map<UUID, Person> callers) {
        Set<UUID> ids = rows.stream()
                .filter(call -> call.callerId == null || !isHidden(callers.get(call.callerId)))
                .map(call -> call.wordsId)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        Map<UUID, String> words = new HashMap<>();
        if (!ids.isEmpty()) {
            said.list("id in ?1", ids).forEach(row -> words.put(row.id(), row.said));
        }
        return words;
    }

    private static boolean isHidden(@Nullable Person person) {
        return person != null && person.hiddenAt != null;
    }

    private CallView view(
            Call call,
            @Nullable Person person,
            @Nullable String words,
            @Nullable PlaceView place,
            List<CallView.AnimalView> shown) {
        boolean hidden = isHidden(person);
        var receivedAt = Objects.requireNonNull(call.happenedAt(), "a call has a time");
        return new CallView(
                call.id(),
                call.incidentId,
                receivedAt,
                call.recordedAt(),
                RecordViews.lateByHours(receivedAt, call.recordedAt()),
                call.anyoneHurt,
                call.offTheRoad,
                call.policeReference,
                call.cause,
                call.callerId,
                hidden,
                person == null || hidden
                        ? null
                        : new CallEntry.Caller(person.name, person.phone, person.email, person.address),
                words,
                place,
                shown,
                records.of(call));
    }

    private CallView.AnimalView view(
            ReportedAnimal animal, Map<UUID, TaxonService.TaxonView> taxaById, Map<UUID, String> groups) {
        TaxonService.@Nullable TaxonView taxon = animal.taxonId == null ? null : taxaById.get(animal.taxonId);
        return new CallView.AnimalView(
                animal.id(),
                animal.taxonId,
                taxon == null ? null : taxon.scientificName(),
                taxon == null ? null : taxon.vernacularName(),
                animal.taxonGroupId == null ? null : groups.get(animal.taxonGroupId),
                animal.verbatimIdentification,
                animal.identificationVerificationStatus,
                animal.individualCount,
                animal.vitality,
                animal.lifeStage,
                animal.sex,
                animal.condition,
                animal.pouchChecked,
                animal.carcassSigned,
                records.of(animal));
    }
}
