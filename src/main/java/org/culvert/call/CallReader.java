package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Shows calls, with or without the people in them. */
@ApplicationScoped
class CallReader {
    private final Ledger.Calls calls;
    private final Ledger.Animals animals;
    private final Ledger.People people;
    private final Ledger.Said said;
    private final Ledger.Places places;
    private final TaxonService taxa;
    private final RecordViews records;

    CallReader(
            Ledger.Calls calls,
            Ledger.Animals animals,
            Ledger.People people,
            Ledger.Said said,
            Ledger.Places places,
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
    CallView getCall(UUID id, boolean showPeople) {
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
        return rows.stream()
                .map(call -> view(
                        call,
                        showPeople,
                        told.getOrDefault(call.id(), List.of()).stream()
                                .map(animal -> view(animal, taxaById, groups))
                                .toList()))
                .toList();
    }

    private CallView view(Call call, boolean showPeople, List<CallView.AnimalView> shown) {
        Person person = showPeople && call.callerId != null ? people.findById(call.callerId) : null;
        boolean hidden = person != null && person.hiddenAt != null;
        Words words = showPeople && !hidden && call.wordsId != null ? said.findById(call.wordsId) : null;
        Place place = call.placeId == null ? null : places.findById(call.placeId);
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
                words == null ? null : words.said,
                place == null ? null : place.view(),
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
