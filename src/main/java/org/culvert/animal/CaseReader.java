package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.animal.referral.ReferralService;
import org.culvert.call.PlaceReader;
import org.culvert.call.PlaceView;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Shows cases, a page of them in as many questions as one; the state is derived here and kept nowhere. */
@ApplicationScoped
class CaseReader {
    private final CaseRepositories.Animals animals;
    private final CaseRepositories.WhereaboutsRows whereabouts;
    private final CaseRepositories.Fates fates;
    private final CaseRepositories.Bodies bodies;
    private final CaseRepositories.CustodyLinks links;
    private final CaseRepositories.HandOvers handOvers;
    private final PlaceReader places;
    private final TaxonService taxa;
    private final EntityManager entities;
    private final RecordViews records;
    private final ReferralService referrals;

    CaseReader(
            CaseRepositories.Animals animals,
            CaseRepositories.WhereaboutsRows whereabouts,
            CaseRepositories.Fates fates,
            CaseRepositories.Bodies bodies,
            CaseRepositories.CustodyLinks links,
            CaseRepositories.HandOvers handOvers,
            PlaceReader places,
            TaxonService taxa,
            EntityManager entities,
            RecordViews records,
            ReferralService referrals) {
        this.animals = animals;
        this.whereabouts = whereabouts;
        this.fates = fates;
        this.bodies = bodies;
        this.links = links;
        this.handOvers = handOvers;
        this.places = places;
        this.taxa = taxa;
        this.entities = entities;
        this.records = records;
        this.referrals = referrals;
    }

    CaseView view(Case row) {
        return viewer(List.of(row)).apply(row);
    }

    /** Reads at once what the views of some cases need. */
    Function<Case, CaseView> viewer(List<Case> rows) {
        if (rows.isEmpty()) {
            return this::view;
        }
        List<UUID> ids = rows.stream().map(Case::id).toList();
        List<Animal> individuals = animals.list(
                "id in ?1", rows.stream().map(row -> row.animalId).distinct().toList());
        List<CustodyLink> chains = links.list("caseId in ?1 order by happenedAt", ids);
        List<HandOver> pending = handOvers.list("caseId in ?1 and acceptedAt is null and refusedAt is null", ids);
        List<Whereabouts> where = where(ids);
        List<Fate> ends = fates.list("caseId in ?1 and withdrawnAt is null", ids);
        List<Body> left = bodies.list("caseId in ?1 and withdrawnAt is null", ids);
        Map<UUID, TaxonService.TaxonView> taxaById = taxa.taxaById(
                individuals.stream().map(animal -> animal.taxonId).distinct().toList());
        Map<UUID, PlaceView> placesById = places.placesById(rows.stream()
                .map(row -> row.foundPlaceId)
                .filter(Objects::nonNull)
                .toList());
        records.lookUp(Stream.of(rows, individuals, chains, pending, where, ends, left)
                .flatMap(List::stream)
                .toList());
        Map<UUID, Animal> animalById = byKey(individuals, Animal::id);
        Map<UUID, List<CustodyLink>> chainOf = chains.stream().collect(Collectors.groupingBy(link -> link.caseId));
        Map<UUID, HandOver> pendingOf = byKey(pending, row -> row.caseId);
        Map<UUID, Whereabouts> whereOf = byKey(where, row -> row.caseId);
        Map<UUID, Fate> fateOf = byKey(ends, row -> row.caseId);
        Map<UUID, Body> bodyOf = byKey(left, row -> row.caseId);
        Map<UUID, String> temporaryNumberOf = temporaryNumbers(ids);
        ReferralService.Today referOut = referrals.today();
        return row -> {
            Animal animal = require(animalById, "animal", row.animalId);
            return view(
                    row,
                    temporaryNumberOf.get(row.id()),
                    referOut,
                    view(animal, require(taxaById, "taxon", animal.taxonId)),
                    row.foundPlaceId == null ? null : require(placesById, "place", row.foundPlaceId),
                    chainOf.getOrDefault(row.id(), List.of()),
                    pendingOf.get(row.id()),
                    whereOf.get(row.id()),
                    fateOf.get(row.id()),
                    bodyOf.get(row.id()));
        };
    }

    private CaseView view(
            Case row,
            @Nullable String temporaryNumber,
            ReferralService.Today referOut,
            CaseView.AnimalView animal,
            @Nullable PlaceView foundPlace,
            List<CustodyLink> links,
            @Nullable HandOver pending,
            @Nullable Whereabouts where,
            @Nullable Fate fate,
            @Nullable Body body) {
        List<CaseView.CustodyView> chain = links.stream()
                .map(link -> new CaseView.CustodyView(
                        link.id(),
                        link.holder,
                        link.span().from(),
                        link.span().to(),
                        link.authorisation,
                        Licence.view(link.licence),
                        link.recordedAt(),
                        records.of(link)))
                .toList();
        return new CaseView(
                row.id(),
                row.number,
                temporaryNumber,
                state(chain, pending, fate),
                animal,
                row.incidentId,
                row.attendanceId,
                row.cause,
                Objects.requireNonNull(row.happenedAt()),
                row.recordedAt(),
                row.origin,
                foundPlace,
                row.dependentYoung,
                chain,
                gaps(chain, fate),
                fate == null ? referOut.of(animal.taxonGroupId(), animal.scientificName()) : List.of(),
                pending == null ? null : view(pending),
                where == null ? null : view(where),
                fate == null ? null : view(fate),
                body == null ? null : view(body),
                records.of(row));
    }

    private static <K, T> Map<K, T> byKey(List<T> rows, Function<T, K> key) {
        return rows.stream().collect(Collectors.toMap(key, Function.identity(), (one, other) -> one));
    }

    private static <T> T require(Map<UUID, T> found, String what, UUID id) {
        T one = found.get(id);
        if (one == null) {
            throw new NotFoundException(what, id);
        }
        return one;
    }

    /** Under what number each of some animals was taken in, where that was in a surge. */
    private Map<UUID, String> temporaryNumbers(List<UUID> caseIds) {
        List<?> found = entities.createNativeQuery(
                        "select case_id, temporary_number from surge_intakes where case_id in (:ids)")
                .setParameter("ids", caseIds)
                .getResultList();
        return found.stream().map(row -> (Object[]) row).collect(Collectors.toMap(row -> (UUID) row[0], row ->
                (String) row[1]));
    }

    /** However it is written, in any surge. */
    List<UUID> caseIdsByTemporaryNumber(String temporaryNumber) {
        List<?> found = entities.createNativeQuery(
                        "select case_id from surge_intakes where upper(temporary_number) = upper(:number)")
                .setParameter("number", temporaryNumber.strip())
                .getResultList();
        return found.stream().map(UUID.class::cast).toList();
    }

    /** Where the animals of some cases are last said to be. */
    private List<Whereabouts> where(List<UUID> caseIds) {
        return entities.createNativeQuery("""
                        select distinct on (case_id) * from whereabouts where case_id in (:ids)
                        order by case_id, happened_at desc, id desc
                        """, Whereabouts.class)
                .setParameter("ids", caseIds)
                .getResultList();
    }

    CaseView.HandOverView view(HandOver row) {
        return new CaseView.HandOverView(
                row.id(),
                row.caseId,
                row.taker,
                Licence.view(row.licence),
                row.happenedAt(),
                row.acceptedAt,
                row.refusedAt,
                row.refusedReason,
                records.of(row));
    }

    CaseView.WhereaboutsView view(Whereabouts row) {
        return new CaseView.WhereaboutsView(
                row.id(), row.organisationId, row.memberId, row.words, row.happenedAt(), records.of(row));
    }

    private static String state(List<CaseView.CustodyView> chain, @Nullable HandOver pending, @Nullable Fate fate) {
        if (fate != null) {
            return "ended";
        }
        if (pending != null) {
            return "handOverPending";
        }
        return chain.isEmpty() ? "found" : "inCare";
    }

    private static List<CaseView.Gap> gaps(List<CaseView.CustodyView> chain, @Nullable Fate fate) {
        List<CaseView.Gap> gaps = new ArrayList<>();
        for (int i = 1; i < chain.size(); i++) {
            Instant end = chain.get(i - 1).to();
            if (end != null && end.isBefore(chain.get(i).from())) {
                gaps.add(new CaseView.Gap(end, chain.get(i).from()));
            }
        }
        Instant last = chain.isEmpty() ? null : chain.get(chain.size() - 1).to();
        Instant ended = fate == null ? null : fate.happenedAt();
        if (last != null && (ended == null || last.isBefore(ended))) {
            gaps.add(new CaseView.Gap(last, ended));
        }
        return gaps;
    }

    CaseView.AnimalView view(Animal animal) {
        return view(animal, taxa.getTaxon(animal.taxonId));
    }

    private CaseView.AnimalView view(Animal animal, TaxonService.TaxonView taxon) {
        return new CaseView.AnimalView(
                animal.id(),
                animal.taxonId,
                taxon.scientificName(),
                taxon.vernacularName(),
                taxon.taxonGroup(),
                taxon.taxonGroupId(),
                animal.identificationVerificationStatus,
                animal.sex,
                animal.lifeStage,
                animal.motherId,
                animal.naturalMarks,
                animal.bornOn,
                animal.bornDoubtDays,
                records.of(animal));
    }

    private CaseView.FateView view(Fate fate) {
        return new CaseView.FateView(
                fate.fate,
                fate.happenedAt(),
                fate.method,
                fate.authority,
                fate.approvedBy,
                fate.barbiturate,
                fate.deathConfirmedBy,
                fate.deathConfirmedAt,
                fate.releaseId,
                records.of(fate));
    }

    private CaseView.BodyView view(Body body) {
        return new CaseView.BodyView(
                body.id(), body.holder, body.barbiturate, body.disposal, body.disposedAt, records.of(body));
    }
}
