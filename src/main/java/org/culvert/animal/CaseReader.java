package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.call.PlaceReader;
import org.culvert.platform.ledger.RecordViews;
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
    private final RecordViews records;

    CaseReader(
            CaseRepositories.Animals animals,
            CaseRepositories.WhereaboutsRows whereabouts,
            CaseRepositories.Fates fates,
            CaseRepositories.Bodies bodies,
            CustodyService custody,
            PlaceReader places,
            TaxonService taxa,
            RecordViews records) {
        this.animals = animals;
        this.whereabouts = whereabouts;
        this.fates = fates;
        this.bodies = bodies;
        this.custody = custody;
        this.places = places;
        this.taxa = taxa;
        this.records = records;
    }

    CaseView view(Case row) {
        List<CaseView.CustodyView> chain = custody.chain(row.id()).stream()
                .map(link -> new CaseView.CustodyView(
                        link.id(),
                        link.holder,
                        link.span().from(),
                        link.span().to(),
                        link.authorisation,
                        link.recordedAt(),
                        records.of(link)))
                .toList();
        HandOver pending = custody.pending(row.id());
        Fate fate = fates.find("caseId = ?1 and withdrawnAt is null", row.id()).firstResult();
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
                pending == null ? null : view(pending),
                where(row.id()),
                fate == null ? null : view(fate),
                body(row.id()),
                records.of(row));
    }

    CaseView.HandOverView view(HandOver row) {
        return new CaseView.HandOverView(
                row.id(),
                row.caseId,
                row.taker,
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

    CaseView.AnimalView animal(Animal animal) {
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
                animal.naturalMarks,
                records.of(animal));
    }

    private CaseView.@Nullable WhereaboutsView where(UUID caseId) {
        Whereabouts last = whereabouts
                .find("caseId = ?1 order by happenedAt desc, id desc", caseId)
                .firstResult();
        return last == null ? null : view(last);
    }

    private CaseView.FateView view(Fate fate) {
        return new CaseView.FateView(
                fate.fate,
                fate.happenedAt(),
                fate.method,
                fate.approvedBy,
                fate.barbiturate,
                fate.releaseId,
                records.of(fate));
    }

    private CaseView.@Nullable BodyView body(UUID caseId) {
        Body body = bodies.find("caseId = ?1 and withdrawnAt is null", caseId).firstResult();
        return body == null
                ? null
                : new CaseView.BodyView(
                        body.id(), body.holder, body.barbiturate, body.disposal, body.disposedAt, records.of(body));
    }
}
