package org.culvert.clinic;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.platform.ledger.RecordViews;

/** Shows visits. */
@ApplicationScoped
class VisitReader {
    private final ClinicService.Findings findings;
    private final ClinicService.FilmReadings readings;
    private final ClinicService.Procedures procedures;
    private final ClinicService.Discharges discharges;
    private final DrugOrders drugs;
    private final RecordViews records;

    VisitReader(
            ClinicService.Findings findings,
            ClinicService.FilmReadings readings,
            ClinicService.Procedures procedures,
            ClinicService.Discharges discharges,
            DrugOrders drugs,
            RecordViews records) {
        this.findings = findings;
        this.readings = readings;
        this.procedures = procedures;
        this.discharges = discharges;
        this.drugs = drugs;
        this.records = records;
    }

    Map<UUID, Discharge> dischargesOf(Collection<UUID> visitIds) {
        return discharges.list("visitId in ?1", visitIds).stream()
                .collect(Collectors.toMap(row -> row.visitId, Function.identity()));
    }

    VisitView view(Visit visit) {
        Discharge discharge = discharges.find("visitId", visit.id()).firstResult();
        return new VisitView(
                visit.id(),
                visit.caseId,
                visit.organisationId,
                visit.ofBody,
                Objects.requireNonNull(visit.happenedAt()),
                visit.leftAt,
                visit.stabilisedAt,
                visit.weightGrams,
                visit.bodyCondition,
                visit.gravid,
                visit.diagnosis,
                visit.causeOfDeath,
                findings.list("visitId = ?1 order by id", visit.id()).stream()
                        .map(row -> new VisitView.FindingView(
                                row.id(),
                                row.bodyPart,
                                ClinicService.Side.valueOf(row.side),
                                row.part,
                                row.kind == null ? null : ClinicService.FindingKind.valueOf(row.kind),
                                row.words,
                                records.of(row)))
                        .toList(),
                readings.list("visitId = ?1 order by id", visit.id()).stream()
                        .map(row -> new VisitView.ReadingView(
                                row.id(),
                                row.what,
                                row.counted,
                                row.reader,
                                ClinicService.Confidence.valueOf(row.confidence),
                                row.happenedAt(),
                                records.of(row)))
                        .toList(),
                procedures.list("visitId = ?1 order by id", visit.id()).stream()
                        .map(row -> new VisitView.ProcedureView(
                                row.id(),
                                row.words,
                                row.vetName,
                                row.vetRegistration,
                                row.happenedAt(),
                                records.of(row)))
                        .toList(),
                drugs.list(visit.id()),
                discharge == null
                        ? null
                        : new VisitView.DischargeView(
                                discharge.vetName,
                                discharge.vetRegistration,
                                discharge.words,
                                discharge.limits,
                                discharge.mayHold,
                                discharge.reviewOn,
                                discharge.happenedAt(),
                                records.of(discharge)),
                records.of(visit));
    }
}
