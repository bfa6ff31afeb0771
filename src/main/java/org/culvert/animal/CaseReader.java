package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.call.PlaceReader;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Shows cases; the state is derived here and kept nowhere. */
@ApplicationScoped
class CaseReader {
    private final CaseRepositories.Animals animals;
    private final CaseRepositories.WhereaboutsRows whereabouts;
    private final CaseRepositories.Fates fates;
    private final CaseRepositories.Bodies bodies;
    private final CustodyService custody;
    private final PlaceReader places;
    private final TaxonService taxa;

    CaseReader(
            CaseRepositories.Animals animals,
            CaseRepositories.WhereaboutsRows whereabouts,
            CaseRepositories.Fates fates,
            CaseRepositories.Bodies bodies,
            CustodyService custody,
            PlaceReader places,
            TaxonService taxa) {
        this.animals = animals;
        this.whereabouts = whereabouts;
        this.fates = fates;
        this.bodies = bodies;
        this.custody = custody;
        this.places = places;
        this.taxa = taxa;
    }

    CaseView view(Case row) {
        List<CaseView.CustodyView> chain = custody.chain(row.id()).stream()
                .map(link -> new CaseView.CustodyView(
                        link.holder, link.span().from(), link.span().to(), link.authorisation, link.recordedAt()))
                .toList();
        HandOver pending = custody.pending(row.id());
        Fate fate = fates.find("caseId", row.id()).firstResult();
        return new CaseView(
                row.id(),
                row.number,
                state(chain, pending, fate),
                animal(animals.findById(row.animalId)),
                row.incidentId,
                row.attendanceId,
                row.cause,
                Objects.requireNonNull(row.happenedAt()),
                row.recordedAt(),
                row.origin,
                row.foundPlaceId == null ? null : places.getPlace(row.foundPlaceId),
                row.dependentYoung,
                chain,
                gaps(chain),
                pending == null ? null : new CaseView.HandOverView(pending.id(), pending.taker, pending.happenedAt()),
                where(row.id()),
                fate == null ? null : view(fate),
                body(row.id()));
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

    private static List<CaseView.Gap> gaps(List<CaseView.CustodyView> chain) {
        List<CaseView.Gap> gaps = new ArrayList<>();
        for (int i = 1; i < chain.size(); i++) {
            Instant end = chain.get(i - 1).to();
            if (end != null && end.isBefore(chain.get(i).from())) {
                gaps.add(new CaseView.Gap(end, chain.get(i).from()));
            }
        }
        return gaps;
    }

    private CaseView.AnimalView animal(Animal animal) {
        TaxonService.TaxonView taxon = taxa.getTaxon(animal.taxonId);
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
                animal.naturalMarks);
    }

    private CaseView.@Nullable WhereaboutsView where(UUID caseId) {
        Whereabouts last = whereabouts
                .find("caseId = ?1 order by happenedAt desc, id desc", caseId)
                .firstResult();
        return last == null
                ? null
                : new CaseView.WhereaboutsView(last.organisationId, last.memberId, last.words, last.happenedAt());
    }

    private static CaseView.FateView view(Fate fate) {
        return new CaseView.FateView(
                fate.fate, fate.happenedAt(), fate.method, fate.approvedBy, fate.barbiturate, fate.releaseId);
    }

    private CaseView.@Nullable BodyView body(UUID caseId) {
        Body body = bodies.find("caseId", caseId).firstResult();
        return body == null
                ? null
                : new CaseView.BodyView(body.id(), body.holder, body.barbiturate, body.disposal, body.disposedAt);
    }
}
